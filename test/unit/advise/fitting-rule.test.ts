import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bestRule, panelBy, ruleFinder, type Cost, type Seen } from '../../../engine/advise/fitting-rule.ts';
import { ruleLines } from '../../../engine/advise/rule-lines.ts';

const CELLS = 4;
const PANELS = 3;

const cost = fc.record({ lost: fc.constantFrom(0, 0, 0, 5), regret: fc.integer({ min: 0, max: 6 }) });
const seen: fc.Arbitrary<Seen[]> = fc
  .array(
    fc.record({
      cell: fc.integer({ min: 0, max: CELLS - 1 }),
      isFollowing: fc.boolean(),
      isWet: fc.boolean(),
      costs: fc.array(cost, { minLength: PANELS, maxLength: PANELS }),
    }),
    { minLength: 1, maxLength: 12 },
  )
  .map((drawn) => [...drawn, { cell: CELLS - 1, isFollowing: false, isWet: false, costs: free() }]);

/** A condition that makes the last cell be there and costs nothing. */
const free = (): Cost[] => Array.from({ length: PANELS }, () => ({ lost: 0, regret: 0 }));

type Tree = null | { says: (of: Seen) => boolean; yes: Tree; no: Tree };

const questions = [
  ...[1, 2, 3].map((at) => (of: Seen) => of.cell < at),
  (of: Seen) => of.isFollowing,
  (of: Seen) => of.isWet,
];

/** Every tree of just so many questions. */
function trees(count: number): Tree[] {
  if (count === 0) return [null];
  return Array.from({ length: count }, (_, first) => first).flatMap((first) =>
    trees(first).flatMap((yes) =>
      trees(count - 1 - first).flatMap((no) => questions.map((says) => ({ says, yes, no }))),
    ),
  );
}
const all = [0, 1, 2, 3].flatMap(trees);

const leafOf = (tree: Tree, of: Seen, path = ''): string =>
  tree === null ? path : tree.says(of) ? leafOf(tree.yes, of, `${path}y`) : leafOf(tree.no, of, `${path}n`);

const compare = (a: Cost, b: Cost): number => a.lost - b.lost || a.regret - b.regret;
const total = (costs: readonly Cost[]): Cost => ({
  lost: costs.reduce((sum, { lost }) => sum + lost, 0),
  regret: costs.reduce((sum, { regret }) => sum + regret, 0),
});

/** What a tree costs with the best panel in each of its leaves. */
function costOf(tree: Tree, conditions: readonly Seen[]): Cost {
  const leaves = new Map<string, Seen[]>();
  for (const of of conditions) {
    const leaf = leafOf(tree, of);
    leaves.set(leaf, [...(leaves.get(leaf) ?? []), of]);
  }
  return total(
    [...leaves.values()].map((there) => {
      const each = Array.from({ length: PANELS }, (_, panel) =>
        total(there.map(({ costs }) => costs[panel]!)),
      );
      return each.sort(compare)[0]!;
    }),
  );
}

describe('the fitting rule', () => {
  it('costs as little as the best of every tree of at most three questions', () => {
    fc.assert(
      fc.property(seen, (conditions) => {
        const least = all.map((tree) => costOf(tree, conditions)).sort(compare)[0];
        expect(ruleFinder(conditions)(3).cost).toEqual(least);
      }),
      { numRuns: 150, seed: 7 },
    );
  });

  it('costs what its own lines cost, and makes no more distinctions than it may', () => {
    fc.assert(
      fc.property(seen, fc.integer({ min: 0, max: 3 }), (conditions, most) => {
        const rule = ruleFinder(conditions)(most);
        expect(total(conditions.map((of) => of.costs[panelBy(rule, of)]!))).toEqual(rule.cost);
        expect(rule.thresholds).toBeLessThanOrEqual(most);
        expect(rule.leaves).toHaveLength(rule.thresholds + 1);
      }),
      { numRuns: 300, seed: 7 },
    );
  });

  const at = (cell: number, isFollowing: boolean, best: number): Seen => ({
    cell,
    isFollowing,
    isWet: false,
    costs: [0, 1, 2].map((panel) => ({ lost: 0, regret: 1e8 * Math.abs(panel - best) })),
  });
  const weekend = [
    ...[2, 2, 1, 0].map((best, cell) => at(cell, false, best)),
    ...[0, 0, 0, 0].map((best, cell) => at(cell, true, best)),
  ];
  const borders_C = [12, 16, 20, 24, 28];

  it('reads as plain lines, the most closed panel first', () => {
    const rule = bestRule(weekend);
    expect(rule.cost).toEqual({ lost: 0, regret: 0 });
    const dry = { isWet: null };
    expect(ruleLines(rule, { seen: weekend, borders_C })).toEqual([
      { panel: 2, when: [{ above_C: null, below_C: 20, isFollowing: false, ...dry }] },
      { panel: 1, when: [{ above_C: 20, below_C: 24, isFollowing: false, ...dry }] },
      {
        panel: 0,
        when: [
          { above_C: null, below_C: null, isFollowing: true, ...dry },
          { above_C: 24, below_C: null, isFollowing: null, ...dry },
        ],
      },
    ]);
  });

  it('says in its lines what it does, on every day that could come', () => {
    fc.assert(
      fc.property(seen, (conditions) => {
        const rule = ruleFinder(conditions)(3);
        const lines = ruleLines(rule, { seen: conditions, borders_C: [0, 1, 2, 3, 4] });
        for (const of of conditions) {
          const said = lines.filter(({ when }) =>
            when.some(
              ({ above_C, below_C, isFollowing, isWet }) =>
                of.cell >= (above_C ?? 0) &&
                of.cell < (below_C ?? CELLS) &&
                (isFollowing ?? of.isFollowing) === of.isFollowing &&
                (isWet ?? of.isWet) === of.isWet,
            ),
          );
          expect(said.map(({ panel }) => panel)).toEqual([panelBy(rule, of)]);
        }
      }),
      { numRuns: 300, seed: 7 },
    );
  });

  it('leaves a distinction out that would save less than a kelvin on average', () => {
    const little = weekend.map((each) => ({
      ...each,
      costs: each.costs.map(({ regret }) => ({ lost: 0, regret: regret / 1e3 })),
    }));
    expect(bestRule(little).thresholds).toBe(0);
  });

  it('leaves none out that would keep more in', () => {
    const rare = weekend.map((each) => ({
      ...each,
      costs: each.costs.map(({ regret }) => ({ lost: regret > 0 ? 1 : 0, regret: 0 })),
    }));
    expect(bestRule(rare).thresholds).toBe(3);
  });
});
