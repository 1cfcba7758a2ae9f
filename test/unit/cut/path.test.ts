import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { movedOutward, roundedByMoving } from '../../../engine/cut/offset.ts';
import {
  boxOf,
  flattened,
  insideOf,
  longest_mm,
  loopLength_mm,
  mirroredLoop,
} from '../../../engine/cut/path.ts';
import { roundedCorners } from '../../../engine/cut/round-corners.ts';
import { areaLoop, circle, corner, reversed, type Loop } from '../../../engine/duct/loop.ts';
import { mouthOutline } from '../../../engine/duct/mouth-outline.ts';
import { MOUTHS, panelOf } from '../../support/cut.ts';

const square = [corner(0, 0), corner(40, 0), corner(40, 40), corner(0, 40)];
/** An L: five corners to the left, one to the right. */
const angle = [corner(0, 0), corner(50, 0), corner(50, 20), corner(20, 20), corner(20, 50), corner(0, 50)];
const plates: Loop[] = Object.values(MOUTHS).map((keys) => panelOf(keys, {}).plates[0]!.edge);

describe('a path of lines and arcs', () => {
  it('is itself when it is mirrored twice, and keeps its area and its sense when it is mirrored once', () => {
    for (const plate of plates) {
      expect(mirroredLoop(mirroredLoop(plate))).toEqual(plate);
      expect(areaLoop(mirroredLoop(plate))).toBeCloseTo(areaLoop(plate), 8);
      expect(boxOf([mirroredLoop(plate)]).left_mm).toBeCloseTo(-boxOf([plate]).right_mm, 9);
    }
  });

  it('has a box that holds its arcs', () => {
    expect(boxOf([circle(10, 5, 8)])).toEqual({ left_mm: 6, bottom_mm: 1, right_mm: 14, top_mm: 9 });
    for (const plate of plates) {
      const [box, points] = [boxOf([plate]), flattened(plate)];
      expect(Math.max(...points.map((p) => p.x_mm))).toBeCloseTo(box.right_mm, 2);
      expect(Math.min(...points.map((p) => p.y_mm))).toBeCloseTo(box.bottom_mm, 2);
    }
  });

  it('knows what lies inside and how long it is at most', () => {
    const isInside = insideOf(angle);
    expect([isInside({ x_mm: 10, y_mm: 40 }), isInside({ x_mm: 30, y_mm: 40 })]).toEqual([true, false]);
    expect(longest_mm(square)).toBeCloseTo(40 * Math.SQRT2, 9);
    expect(longest_mm(circle(0, 0, 76))).toBeCloseTo(76, 1);
  });
});

describe('round corners', () => {
  it('take from a square what they must, and give to a corner that turns inwards', () => {
    const lost = (1 - Math.PI / 4) * 9;
    expect(areaLoop(roundedCorners(square, 3)!)).toBeCloseTo(1600 - 4 * lost, 9);
    expect(areaLoop(roundedCorners(angle, 3)!)).toBeCloseTo(areaLoop(angle) - 4 * lost, 9); // five lose, one gains
    expect(areaLoop(roundedCorners(reversed(angle), 3)!)).toBeCloseTo(-areaLoop(angle) + 4 * lost, 9);
  });

  it('agree with a polygon that is moved in and out', () => {
    for (const keys of Object.values(MOUTHS)) {
      const { loop } = mouthOutline(keys);
      expect(areaLoop(roundedCorners(loop, 6)!)).toBeCloseTo(areaLoop(roundedByMoving(loop, 6)), 0);
    }
  });

  it('make a circle of a square where nothing is left of its sides, and find no room beyond', () => {
    expect(areaLoop(roundedCorners(square, 20)!)).toBeCloseTo(Math.PI * 400, 6);
    expect(roundedCorners(square, 20.5)).toBeNull();
  });

  it('reach over a side that is shorter than they are', () => {
    const chamfered = [corner(0, 0), corner(40, 0), corner(40, 40), corner(0.3, 40), corner(0, 39.95)];
    const rounded = roundedCorners(chamfered, 5)!;
    expect(rounded).not.toBeNull();
    expect(areaLoop(rounded)).toBeCloseTo(areaLoop(roundedCorners(square, 5)!), 1);
  });
});

describe('a path moved sideways', () => {
  it('grows by its length times the way, and by a circle', () => {
    fc.assert(
      fc.property(
        fc.constantFrom<Loop>(square, angle, ...plates),
        fc.double({ min: 0.01, max: 1, noNaN: true }),
        (loop, d) => {
          const rounded = roundedCorners(loop, 3) ?? loop;
          const grown = areaLoop(rounded) + loopLength_mm(rounded) * d + Math.PI * d * d;
          expect(areaLoop(movedOutward(rounded, d))).toBeCloseTo(grown, 1);
        },
      ),
    );
  });

  it('is exact for a circle, and smaller for a hole, which runs the other way', () => {
    expect(areaLoop(movedOutward(circle(3, 4, 10), 0.1))).toBeCloseTo(Math.PI * 5.1 ** 2, 9);
    expect(areaLoop(movedOutward(reversed(circle(3, 4, 10)), 0.1))).toBeCloseTo(-Math.PI * 4.9 ** 2, 9);
  });

  it('has sharp corners turned into arcs outwards, and sharp ones inwards', () => {
    expect(areaLoop(movedOutward(square, 1))).toBeCloseTo(1600 + 160 + Math.PI, 9);
    expect(areaLoop(movedOutward(square, -1))).toBeCloseTo(38 * 38, 9);
  });

  it('still moves where an arc would vanish', () => {
    const notched = roundedCorners(angle, 3)!;
    const moved = movedOutward(notched, 5); // the corner that turns inwards has a radius of 3
    const lost = 5 * (1 - Math.PI / 4) * (8 ** 2 - 5 ** 2); // arcs of 8 instead of 5 in the five others
    expect(areaLoop(moved)).toBeCloseTo(areaLoop(movedOutward(angle, 5)) - lost, 0);
    expect(boxOf([moved]).left_mm).toBeCloseTo(-5, 2);
  });
});
