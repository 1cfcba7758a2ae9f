import { areaPaths, FillRule, intersect, type Path64 } from 'clipper2-ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { areaBefore, partsBefore } from '../../../engine/duct/half-plane.ts';
import { areaLoop, circle, placed, reversed } from '../../../engine/duct/loop.ts';
import { mouthOutline } from '../../../engine/duct/mouth-outline.ts';
import { shareSegment } from '../../../engine/duct/segment.ts';
import { sweepOf, turnedBack, turnedTo } from '../../../engine/duct/sweep.ts';
import { anyMouth, anySide, measured, pointsOf } from './mouths.ts';

const anySize = fc.double({ min: 10, max: 400, noNaN: true });
const anyShare = fc.double({ min: 0.001, max: 0.999, noNaN: true });

/**
 * Of a circle of radius 1: angle, height and area of segments, to the digits that Machinery's Handbook prints in its
 * table "Segments of Circles for Radius = 1". Not copied from it: computed by scipy 1.17 (quad over 2 √(1 − x²)).
 */
const SEGMENTS = [
  [30, 0.03407, 0.0118],
  [60, 0.13397, 0.0906],
  [90, 0.29289, 0.2854],
  [120, 0.5, 0.6142],
  [150, 0.74118, 1.059],
  [180, 1, 1.5708],
] as const;

describe('a straight edge over a round mouth', () => {
  const round = mouthOutline({ mouth_shape: 'round', mouth_width_mm: 100, mouth_height_mm: 60 });

  it.each([
    // share, what the trade's table says, and scipy 1.17 (brentq over the quadrature of the circle)
    [10, 0.1565, 0.1564755869],
    [25, 0.298, 0.2980136234],
    [50, 0.5, 0.5],
    [75, 0.702, 0.7019863766],
  ])('covers %d %% at %d of its diameter', (pct, table, solved) => {
    const depth_mm = sweepOf(round, 'outboard').depthFor((round.area_mm2 * pct) / 100);
    expect(Math.abs(depth_mm / 100 / table - 1)).toBeLessThan(0.001);
    expect(depth_mm / 100).toBeCloseTo(solved, 9);
  });

  it.each(SEGMENTS)(
    'cuts off the segment of %d degrees, %d high with an area of %d',
    (_angle, height, area) => {
      expect(Math.PI * shareSegment(height / 2)).toBeCloseTo(area, 4);
      expect(areaBefore(circle(1, 1, 2), height)).toBeCloseTo(area, 4);
    },
  );

  it('covers the same of an oval at the same share of the way across, along either axis', () => {
    const oval = mouthOutline({ mouth_shape: 'oval', mouth_width_mm: 120, mouth_height_mm: 50 });
    const at = (side: 'inboard' | 'top'): number =>
      sweepOf(oval, side).coveredAt(0.298 * sweepOf(oval, side).across_mm);
    expect(at('inboard') / oval.area_mm2).toBeCloseTo(0.25, 4);
    expect(at('top')).toBeCloseTo(at('inboard'), 6);
  });
});

describe('the outline of a mouth', () => {
  it('holds the area of its shape, runs counter-clockwise and has its box at the origin', () => {
    fc.assert(
      fc.property(anyMouth, (mouth) => {
        const { loop, area_mm2, width_mm, height_mm } = mouthOutline(mouth);
        expect(Math.abs(areaLoop(loop) / area_mm2 - 1)).toBeLessThan(2e-5);
        expect(Math.abs(measured([loop]) / area_mm2 - 1)).toBeLessThan(1e-3);
        const points = pointsOf(loop);
        for (const [axis, extent] of [width_mm, height_mm].entries()) {
          const of = points.map((point) => point[axis]!);
          expect(Math.min(...of)).toBeCloseTo(0, 2);
          expect(Math.max(...of)).toBeCloseTo(extent, 2);
        }
      }),
    );
  });

  it('an oval is nowhere farther than 0.005 mm from its ellipse', () => {
    fc.assert(
      fc.property(anySize, anySize, (width, height) => {
        const { loop } = mouthOutline({
          mouth_shape: 'oval',
          mouth_width_mm: width,
          mouth_height_mm: height,
        });
        for (const [x, y] of pointsOf(loop, 8)) {
          const [u, v] = [(2 * x) / width - 1, (2 * y) / height - 1];
          const slope = 2 * Math.hypot((2 * u) / width, (2 * v) / height);
          expect(Math.abs(u * u + v * v - 1) / slope).toBeLessThan(0.0055);
        }
      }),
      { numRuns: 40 },
    );
  });

  it('a round mouth has no height of its own', () => {
    const { height_mm } = mouthOutline({ mouth_shape: 'round', mouth_width_mm: 80, mouth_height_mm: 20 });
    expect(height_mm).toBe(80);
  });

  it('a clockwise trace is the same mouth', () => {
    const there: [number, number][] = [
      [5, 5],
      [60, 8],
      [40, 70],
    ];
    const trace = (mouth_outline_mm: [number, number][]) =>
      mouthOutline({ mouth_shape: 'outline', mouth_width_mm: 10, mouth_height_mm: 10, mouth_outline_mm });
    const back = trace(there.toReversed());
    expect(back.area_mm2).toBe(trace(there).area_mm2);
    expect(areaLoop(back.loop)).toBeCloseTo(back.area_mm2, 9);
  });
});

describe('a straight edge over any mouth', () => {
  it('covers what is asked, and the parts on both sides of it are the whole', () => {
    fc.assert(
      fc.property(anyMouth, anySide, anyShare, (mouth, from, share) => {
        const outline = mouthOutline(mouth);
        const sweep = sweepOf(outline, from);
        const depth_mm = sweep.depthFor(share * outline.area_mm2);
        expect(sweep.coveredAt(depth_mm) / outline.area_mm2).toBeCloseTo(share, 7);
        const turned = turnedTo(outline.loop, from, outline);
        const whole = areaLoop(outline.loop);
        const before = partsBefore(turned, depth_mm);
        expect(Math.abs(before.reduce((sum, part) => sum + areaLoop(part), 0) / whole - share)).toBeLessThan(
          1e-4,
        );
        expect(Math.abs(measured(before) / whole - share)).toBeLessThan(1e-3);
      }),
    );
  });

  it('covers more the deeper it is, and finds its depth again', () => {
    fc.assert(
      fc.property(anyMouth, anySide, anyShare, anyShare, (mouth, from, one, other) => {
        const outline = mouthOutline(mouth);
        const { depthFor, coveredAt, across_mm } = sweepOf(outline, from);
        const [low, high] = [Math.min(one, other), Math.max(one, other)];
        const rounding = 1e-9 * outline.area_mm2;
        expect(coveredAt(low * across_mm)).toBeLessThanOrEqual(coveredAt(high * across_mm) + rounding);
        expect(depthFor(low * outline.area_mm2)).toBeLessThanOrEqual(
          depthFor(high * outline.area_mm2) + 1e-6,
        );
        // where the mouth is a point wide, depth is badly told by area
        const [shallow, deep] = [0.1 + 0.8 * low, 0.1 + 0.8 * high];
        for (const depth of [shallow, deep])
          expect(depthFor(coveredAt(depth * across_mm)) / across_mm).toBeCloseTo(depth, 5);
      }),
    );
  });

  it('from the one side leaves open what it covers from the other', () => {
    fc.assert(
      fc.property(anyMouth, fc.boolean(), anyShare, (mouth, isUpright, share) => {
        const outline = mouthOutline(mouth);
        const [near, far] = isUpright ? (['bottom', 'top'] as const) : (['outboard', 'inboard'] as const);
        const { coveredAt, across_mm } = sweepOf(outline, near);
        const rest = sweepOf(outline, far).coveredAt((1 - share) * across_mm);
        expect((coveredAt(share * across_mm) + rest) / outline.area_mm2).toBeCloseTo(1, 7);
      }),
    );
  });

  it('covers of a mirrored mouth from inboard what it covers of the mouth from outboard', () => {
    fc.assert(
      fc.property(
        anyMouth.filter((mouth) => mouth.mouth_shape === 'outline'),
        anyShare,
        (mouth, share) => {
          const mirrored = mouth.mouth_outline_mm!.map(([x, y]): [number, number] => [-x, y]);
          const [one, other] = [mouth, { ...mouth, mouth_outline_mm: mirrored }].map(mouthOutline);
          const depth = (share: number, at: typeof one, side: 'outboard' | 'inboard'): number =>
            sweepOf(at!, side).depthFor(share * at!.area_mm2);
          expect(depth(share, one, 'outboard')).toBeCloseTo(depth(share, other, 'inboard'), 6);
        },
      ),
    );
  });

  it('cuts off what a clipping library cuts off', () => {
    const scale = 1e4;
    const path = (points: [number, number][]): Path64 =>
      points.map(([x, y]) => ({ x: Math.round(scale * x), y: Math.round(scale * y) }));
    fc.assert(
      fc.property(anyMouth, anyShare, (mouth, share) => {
        const { loop, width_mm } = mouthOutline(mouth);
        const [at, far] = [share * width_mm, 1000];
        const half = path([
          [-far, -far],
          [at, -far],
          [at, far],
          [-far, far],
        ]);
        const clipped = intersect([path(pointsOf(loop))], [half], FillRule.NonZero);
        const own = areaBefore(loop, at);
        expect(Math.abs(areaPaths(clipped) / scale ** 2 - own) / areaLoop(loop)).toBeLessThan(2e-4);
      }),
    );
  });

  it('cuts a mouth with two horns into as many parts as it meets horns', () => {
    const two: [number, number][] = [
      [0, 0],
      [40, 0],
      [40, 60],
      [25, 20],
      [15, 20],
      [0, 60],
    ];
    const outline = mouthOutline({
      mouth_shape: 'outline',
      mouth_width_mm: 1,
      mouth_height_mm: 1,
      mouth_outline_mm: two,
    });
    expect(partsBefore(turnedTo(outline.loop, 'top', outline), 30)).toHaveLength(2);
    expect(partsBefore(turnedTo(outline.loop, 'bottom', outline), 50)).toHaveLength(1);
  });
});

describe('a loop', () => {
  it('turned to a side and back is where it was', () => {
    fc.assert(
      fc.property(anyMouth, anySide, (mouth, side) => {
        const outline = mouthOutline(mouth);
        const back = turnedBack(turnedTo(outline.loop, side, outline), side, outline);
        for (const [i, { x_mm, y_mm, bulge }] of back.entries()) {
          const at = outline.loop[i]!;
          expect(
            [x_mm - at.x_mm, y_mm - at.y_mm, bulge - at.bulge].every((off) => Math.abs(off) < 1e-9),
          ).toBe(true);
        }
      }),
    );
  });

  it('the other way round has the same area below zero, and moved it has the same', () => {
    fc.assert(
      fc.property(anyMouth, (mouth) => {
        const { loop } = mouthOutline(mouth);
        expect(areaLoop(reversed(loop)) / areaLoop(loop)).toBeCloseTo(-1, 9);
        expect(areaLoop(placed(loop, { scale: 2, right_mm: 7, up_mm: -3 })) / areaLoop(loop)).toBeCloseTo(
          4,
          9,
        );
      }),
    );
  });
});
