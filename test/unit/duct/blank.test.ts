import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { blankFor, blankOf, leastCovered, pointsPerMm, type Blank } from '../../../engine/duct/blank.ts';
import { reachFromCentre } from '../../../engine/duct/centre.ts';
import { insetOf } from '../../../engine/duct/inset.ts';
import { mouthOutline, type MouthOutline } from '../../../engine/duct/mouth-outline.ts';
import { anyMouth, anySide, measured, pointsOf } from './mouths.ts';

const anyBlank: fc.Arbitrary<Blank> = fc.record({
  kind: fc.constantFrom('edge', 'hole', 'slots', 'perforated'),
  from: anySide,
  slots: fc.integer({ min: 1, max: 6 }),
  hole_mm: fc.double({ min: 8, max: 20, noNaN: true }),
});
const anyPercent = fc.double({ min: 0.5, max: 99.5, noNaN: true });
const rectangle = mouthOutline({ mouth_width_mm: 110, mouth_height_mm: 100 });

/** Of an area, by other means than the blank's own: 0.1 %, and what little the many points cut off of round openings. */
const AS_ASKED = 1e-3;

const isPossible = (outline: MouthOutline, blank: Blank, pct: number): boolean =>
  pct >= leastCovered(outline, blank);

describe('a blank of any kind over a mouth of any shape', () => {
  it('covers the share that is asked, and what it covers and leaves open is the whole', () => {
    fc.assert(
      fc.property(anyMouth, anyBlank, anyPercent, (mouth, blank, pct) => {
        const outline = mouthOutline(mouth);
        fc.pre(isPossible(outline, blank, pct));
        const { pieces, openings, covered_pct, covered_mm2 } = blankFor(outline, blank, pct);
        expect(covered_pct).toBeCloseTo(pct, 6);
        expect(covered_mm2 / outline.area_mm2).toBeCloseTo(pct / 100, 8);
        expect(Math.abs(measured(pieces) / outline.area_mm2 - pct / 100)).toBeLessThan(AS_ASKED);
        expect(Math.abs(measured(openings) / outline.area_mm2 - (1 - pct / 100))).toBeLessThan(AS_ASKED);
      }),
      { numRuns: 80 },
    );
  });

  it('is nothing at 0 and the whole mouth at 100 %', () => {
    fc.assert(
      fc.property(anyMouth, anyBlank, (mouth, blank) => {
        const outline = mouthOutline(mouth);
        expect(blankFor(outline, blank, 0)).toMatchObject({
          pieces: [],
          openings: [outline.loop],
          covered_pct: 0,
        });
        expect(blankFor(outline, blank, 100)).toMatchObject({
          pieces: [outline.loop],
          openings: [],
          covered_pct: 100,
        });
      }),
      { numRuns: 30 },
    );
  });

  it('asked for less than it can cover covers the least it can', () => {
    fc.assert(
      fc.property(anyMouth, anyBlank, anyPercent, (mouth, blank, pct) => {
        const outline = mouthOutline(mouth);
        const least = leastCovered(outline, blank);
        fc.pre(pct < least);
        expect(blankFor(outline, blank, pct).covered_pct).toBeCloseTo(least, 6);
      }),
      { numRuns: 30 },
    );
  });

  it('has smaller openings, or an edge farther in, the more it covers', () => {
    fc.assert(
      fc.property(anyMouth, anyBlank, anyPercent, anyPercent, (mouth, blank, one, other) => {
        const outline = mouthOutline(mouth);
        const [low, high] = [Math.min(one, other), Math.max(one, other)];
        // the number of holes changes too, so their size alone tells nothing
        fc.pre(isPossible(outline, blank, low) && blank.kind !== 'perforated');
        const [less, more] = [low, high].map((pct) => blankFor(outline, blank, pct));
        if (blank.kind === 'edge') expect(more!.edge_mm!).toBeGreaterThanOrEqual(less!.edge_mm! - 1e-9);
        else expect(more!.opening_mm!).toBeLessThanOrEqual(less!.opening_mm! + 1e-9);
      }),
    );
  });
});

describe('a hole', () => {
  it('is round in a round mouth and in its middle', () => {
    const round = mouthOutline({ mouth_shape: 'round', mouth_width_mm: 100, mouth_height_mm: 1 });
    const { openings, opening_mm } = blankFor(round, blankOf({ blank: 'hole' }), 75);
    expect(opening_mm).toBeCloseTo(50, 9);
    for (const [x, y] of pointsOf(openings[0]!)) expect(Math.hypot(x - 50, y - 50)).toBeCloseTo(25, 9);
  });

  it('has no room where a side turns its back to the centre', () => {
    const hooked: [number, number][] = [
      [0, 0],
      [100, 0],
      [100, 80],
      [90, 80],
      [90, 10],
      [0, 10],
    ];
    const outline = mouthOutline({
      mouth_shape: 'outline',
      mouth_width_mm: 1,
      mouth_height_mm: 1,
      mouth_outline_mm: hooked,
    });
    expect(reachFromCentre(outline)).toBeLessThan(0);
    expect(leastCovered(outline, blankOf({ blank: 'hole' }))).toBe(100);
    expect(leastCovered(outline, blankOf({ blank: 'edge' }))).toBe(0);
  });
});

describe('what holds a plate together', () => {
  it('is a rim of 4 mm: no opening of hole, slots or holes comes nearer to the edge', () => {
    fc.assert(
      fc.property(anyMouth, anyBlank, anyPercent, (mouth, blank, pct) => {
        const outline = mouthOutline(mouth);
        fc.pre(blank.kind !== 'edge' && isPossible(outline, blank, pct));
        const edge = pointsOf(outline.loop, 24);
        const rim = blankFor(outline, blank, pct).openings.flatMap((opening) =>
          pointsOf(opening, 3).map((at) =>
            Math.min(...edge.map((from, i) => away(at, from, edge[(i + 1) % edge.length]!))),
          ),
        );
        expect(Math.min(...rim)).toBeGreaterThan(3.9);
      }),
      { numRuns: 30 },
    );
  });

  it('is 3 mm between holes, which are never larger than asked', () => {
    fc.assert(
      fc.property(anyMouth, anyBlank, anyPercent, (mouth, drawn, pct) => {
        const outline = mouthOutline(mouth);
        const blank = { ...drawn, kind: 'perforated' as const };
        fc.pre(isPossible(outline, blank, pct));
        const { openings, opening_mm } = blankFor(outline, blank, pct);
        expect(opening_mm).toBeLessThanOrEqual(blank.hole_mm + 1e-9);
        const middles = openings.map(([a, b]) => [(a!.x_mm + b!.x_mm) / 2, (a!.y_mm + b!.y_mm) / 2] as const);
        for (const [i, [x, y]] of middles.entries())
          for (const [otherX, otherY] of middles.slice(0, i))
            expect(Math.hypot(x - otherX, y - otherY)).toBeGreaterThan(opening_mm! + 3 - 1e-6);
      }),
      { numRuns: 30 },
    );
  });

  it('is 3 mm between slots at their widest, and a rim at their ends', () => {
    const blank = blankOf({ blank: 'slots', blank_slots: 4 });
    // 102 mm inside the rim: four times 25.5, less a bar; 92 mm high
    expect(leastCovered(rectangle, blank)).toBeCloseTo(100 * (1 - (4 * 22.5 * 92) / 11000), 9);
    expect(blankFor(rectangle, blank, 60).openings).toHaveLength(4);
    expect(
      leastCovered(rectangle, blankOf({ blank: 'slots', blank_slots: 20, blank_from: 'top' })),
    ).toBeGreaterThan(60);
  });

  it('leaves nothing of a mouth that is all rim', () => {
    const small = mouthOutline({ mouth_width_mm: 60, mouth_height_mm: 8 });
    expect(insetOf(small)).toBeNull();
    for (const blank of ['hole', 'slots', 'perforated'] as const)
      expect(leastCovered(small, blankOf({ blank }))).toBe(100);
  });
});

describe('a millimetre', () => {
  it('of an edge over 110 mm is 0.91 points anywhere', () => {
    for (const pct of [10, 50, 90])
      expect(pointsPerMm(rectangle, blankOf({}), pct)).toBeCloseTo(100 / 110, 9);
  });

  it('of an edge over a round mouth is worth most in its middle', () => {
    const round = mouthOutline({ mouth_shape: 'round', mouth_width_mm: 100, mouth_height_mm: 1 });
    // a chord of the middle is 100 mm long: 100 of 7854 mm²
    expect(pointsPerMm(round, blankOf({}), 50)).toBeCloseTo(10000 / 7853.98, 3);
    expect(pointsPerMm(round, blankOf({}), 10)).toBeLessThan(1);
  });

  it('of a hole, of slots and of holes is what widening them by one opens', () => {
    for (const kind of ['hole', 'slots', 'perforated'] as const) {
      const blank = blankOf({ blank: kind });
      const at = blankFor(rectangle, blank, 80);
      const wider = measured(at.openings.map((opening) => grown(opening, at.opening_mm!, kind)));
      const points = (100 * (wider - measured(at.openings))) / rectangle.area_mm2;
      expect(pointsPerMm(rectangle, blank, 80)).toBeGreaterThan(0.9 * points);
      expect(pointsPerMm(rectangle, blank, 80)).toBeLessThan(1.001 * points);
    }
  });

  it('is worth nothing where nothing or all is covered', () => {
    for (const pct of [0, 100]) expect(pointsPerMm(rectangle, blankOf({}), pct)).toBe(0);
  });
});

/** An opening that is a millimetre wider; a slot is no longer for that. */
function grown(opening: MouthOutline['loop'], width_mm: number, kind: string): MouthOutline['loop'] {
  const points = pointsOf(opening, 100);
  const middle = ([0, 1] as const).map(
    (axis) => points.reduce((sum, at) => sum + at[axis], 0) / points.length,
  );
  const by = 1 + 1 / width_mm;
  return points.map(([x, y]) => ({
    x_mm: middle[0]! + by * (x - middle[0]!),
    y_mm: middle[1]! + (kind === 'slots' ? 1 : by) * (y - middle[1]!),
    bulge: 0,
  }));
}

type Point = [x: number, y: number];

function away([x, y]: Point, [ax, ay]: Point, [bx, by]: Point): number {
  const [dx, dy] = [bx - ax, by - ay];
  const length2 = dx * dx + dy * dy;
  const at = length2 === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / length2));
  return Math.hypot(x - ax - at * dx, y - ay - at * dy);
}
