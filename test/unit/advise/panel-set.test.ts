import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bestSet, millionths, type Candidates, type Tried } from '../../../engine/advise/panel-set.ts';

/** Margins on a coarse grid, so that sets often tie and every rule of the order is needed. */
const tried = fc.record({
  status: fc.constantFrom('in', 'in', 'hot', 'cold', 'not judged'),
  weighed_K: fc.integer({ min: -6, max: 12 }).map((k) => k / 2),
}) as fc.Arbitrary<Tried>;

const table = fc.integer({ min: 3, max: 8 }).chain((candidates) =>
  fc.record({
    rows: fc.array(fc.array(tried, { minLength: candidates, maxLength: candidates }), {
      minLength: 1,
      maxLength: 7,
    }),
    steps: fc.array(fc.integer({ min: 0, max: 5 }), { minLength: candidates, maxLength: candidates }),
    weight: fc.array(fc.integer({ min: 1, max: 4 }), { minLength: 7, maxLength: 7 }),
    panels: fc.integer({ min: 2, max: Math.min(5, candidates - 1) }),
  }),
);

type Table = typeof table extends fc.Arbitrary<infer T> ? T : never;

function candidatesOf({ rows, steps, weight }: Table): Candidates {
  const own = weight.slice(0, rows.length);
  const total = own.reduce((sum, each) => sum + each, 0);
  const heats_K = steps.map((_, i) => steps.slice(0, i + 1).reduce((sum, step) => sum + 10 * step, 700));
  return { rows, weights: own.map((each) => each / total), heats_K };
}

/** All subsets by their bits, judged one quality at a time: who is best by the first, of these by the second, and so on. */
function byHand({ rows, weights, heats_K }: Candidates, panels: number): number[] {
  const n = heats_K.length;
  const subsets: number[][] = [];
  for (let bits = 0; bits < 1 << n; bits += 2) {
    const places = heats_K.flatMap((_, i) => (bits & (1 << i) ? [i] : []));
    if (places.length === panels) subsets.push(places);
  }
  const inside = (row: readonly Tried[], places: number[]): Tried[] =>
    [0, ...places].map((i) => row[i]!).filter(({ status }) => status === 'in');
  const share = (places: number[]): number =>
    rows.reduce((sum, row, c) => sum + (inside(row, places).length > 0 ? millionths(weights[c]!) : 0), 0);
  const worst = (places: number[]): number => {
    const margins = rows
      .map((row) => Math.max(...inside(row, places).map(({ weighed_K }) => weighed_K)))
      .filter((margin) => margin > -Infinity);
    return margins.length === 0 ? 0 : Math.floor(Math.min(...margins));
  };
  const even = (places: number[]): number => {
    const steps = places.map((place, i) => heats_K[place]! - heats_K[i === 0 ? 0 : places[i - 1]!]!);
    const mean = steps.reduce((sum, step) => sum + step, 0) / steps.length;
    return -Math.round(steps.reduce((sum, step) => sum + (step - mean) ** 2, 0) * 1000);
  };
  const inOrder = (a: number[], b: number[]): number => a.map((x, i) => x - b[i]!).find((d) => d !== 0) ?? 0;
  const left = [share, worst, even].reduce((sets, quality) => {
    const most = Math.max(...sets.map(quality));
    return sets.filter((places) => quality(places) === most);
  }, subsets);
  return left.sort(inOrder)[0]!;
}

describe('the set of panels', () => {
  it('is the one that trying every set by hand finds', () => {
    fc.assert(
      fc.property(table, (drawn) => {
        const candidates = candidatesOf(drawn);
        expect(bestSet(candidates, drawn.panels).places).toEqual(byHand(candidates, drawn.panels));
      }),
      { numRuns: 1000, seed: 7 },
    );
  });

  const hot: Tried = { status: 'hot', weighed_K: -20 };
  const spare = (weighed_K: number): Tried => ({ status: 'in', weighed_K });

  it('covers what is likelier before it leaves more to spare', () => {
    const rows = [
      [hot, spare(1), hot, hot],
      [hot, hot, spare(90), spare(1)],
      [hot, hot, hot, spare(2)],
    ];
    const found = bestSet({ rows, weights: [0.5, 0.3, 0.2], heats_K: [0, 10, 20, 30] }, 2);
    expect(found.places).toEqual([1, 3]);
    expect(found.covered).toBe(1e6);
    expect(found.worst_K).toBe(1);
  });

  it('steps evenly in kelvin, not in percent, where nothing else decides', () => {
    const rows = [Array.from({ length: 6 }, () => spare(10))];
    expect(bestSet({ rows, weights: [1], heats_K: [0, 5, 12, 30, 60, 61] }, 2).places).toEqual([3, 4]);
  });

  it('says that it keeps nothing in where nothing can be kept in', () => {
    const found = bestSet({ rows: [[hot, hot, hot]], weights: [1], heats_K: [0, 1, 2] }, 2);
    expect(found).toMatchObject({ covered: 0, worst_K: null });
  });
});
