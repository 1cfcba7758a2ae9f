import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bestSet, type Candidates, type Tried } from '../../engine/advise/panel-set.ts';
import { ruleFinder, type Seen } from '../../engine/advise/fitting-rule.ts';
import { costsOf } from '../../engine/advise/regret.ts';
import type { Fitted } from '../../engine/advise/panel-table.ts';

const PERCENTS = [0, 30, 40, 50, 60, 70, 80];

/** Discs that heat up with blanking in their own way, in a window of its own width, under random conditions. */
const days = fc.record({
  rises: fc.array(fc.integer({ min: 1, max: 30 }), {
    minLength: PERCENTS.length,
    maxLength: PERCENTS.length,
  }),
  ambients: fc.array(fc.integer({ min: 0, max: 60 }), { minLength: 1, maxLength: 9 }),
  width_K: fc.integer({ min: 1, max: 60 }),
});

type Days = typeof days extends fc.Arbitrary<infer T> ? T : never;

function rowsOf({ rises, ambients }: Days, width_K: number): Fitted[][] {
  const heats = rises.map((_, i) => rises.slice(0, i + 1).reduce((sum, rise) => sum + rise, 0));
  return ambients.map((ambient) =>
    heats.map((heat): Fitted => {
      const hottest_K = 800 + ambient + heat;
      const [hotMargin_K, coldMargin_K] = [900 + width_K / 2 - hottest_K, hottest_K - 900 + width_K / 2];
      const status = hotMargin_K < 0 ? 'hot' : coldMargin_K < 0 ? 'cold' : 'in';
      return { status, hotMargin_K, coldMargin_K, weighed_K: Math.min(hotMargin_K, coldMargin_K), hottest_K };
    }),
  );
}

const candidatesOf = (rows: readonly (readonly Tried[])[]): Candidates => ({
  rows,
  weights: rows.map(() => 1 / rows.length),
  heats_K: PERCENTS,
});

describe('a set of panels', () => {
  it('never covers less with one panel more', () => {
    fc.assert(
      fc.property(days, fc.integer({ min: 2, max: 4 }), (drawn, panels) => {
        const candidates = candidatesOf(rowsOf(drawn, drawn.width_K));
        const [fewer, more] = [bestSet(candidates, panels), bestSet(candidates, panels + 1)];
        expect(more.covered).toBeGreaterThanOrEqual(fewer.covered);
      }),
      { seed: 7 },
    );
  });

  it('never covers less in a wider window', () => {
    fc.assert(
      fc.property(days, (drawn) => {
        const coveredIn = (width_K: number): number =>
          bestSet(candidatesOf(rowsOf(drawn, width_K)), 3).covered;
        expect(coveredIn(drawn.width_K + 10)).toBeGreaterThanOrEqual(coveredIn(drawn.width_K));
      }),
      { seed: 7 },
    );
  });
});

describe('a fitting rule', () => {
  it('never costs more with one distinction more, and nothing with enough of them where panels cover all', () => {
    fc.assert(
      fc.property(days, (drawn) => {
        const rows = rowsOf(drawn, drawn.width_K);
        const seen = rows.map((row, cell): Seen => {
          return { cell, isFollowing: false, isWet: false, costs: costsOf(row, 1 / rows.length) };
        });
        const rules = ruleFinder(seen);
        const costs = [0, 1, 2, 3, 9].map((most) => rules(most).cost);
        for (const [i, { lost, regret }] of costs.slice(1).entries()) {
          const before = costs[i]!;
          expect(lost < before.lost || (lost === before.lost && regret <= before.regret)).toBe(true);
        }
        expect(costs.at(-1)).toEqual({ lost: 0, regret: 0 });
      }),
      { seed: 7 },
    );
  });
});
