import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fieldAt } from '../../../engine/scenario/keys.ts';
import { shippedStint, withCar, withCircuit } from '../../../engine/scenario/library.ts';
import { override } from '../../../engine/scenario/override.ts';
import { checkScenario } from '../../../engine/scenario/parse.ts';
import { isTree, valueAt } from '../../../engine/scenario/tree.ts';
import type { Scenario } from '../../../engine/scenario/schema.ts';
import { fragmentOf, LONGEST_LINK, scenarioOf } from '../../../web/state/share-link.ts';
import { differenceOf, differing } from '../../../web/state/tree-difference.ts';
import { anyScenario } from '../../support/random-scenario.ts';
import { shipped } from '../../support/shipped.ts';

const [, first] = shipped[0]!;

/** What the page's own address may take of a link [characters] */
const ADDRESS = 100;

/** Dotted keys of all numbers that have a range, lists of phases and of a circuit's segments among them. */
function numbersIn(tree: unknown, prefix = ''): string[] {
  if (typeof tree === 'number') return fieldAt(prefix)?.max === undefined ? [] : [prefix];
  if (!isTree(tree) && !Array.isArray(tree)) return [];
  return Object.entries(tree).flatMap(([key, value]) => numbersIn(value, prefix ? `${prefix}.${key}` : key));
}

/** The scenario with values anywhere in their range that the rules accept. */
function changedIn(scenario: Scenario, changes: readonly (readonly [string, number])[]): Scenario {
  return changes.reduce((before, [key, share]) => {
    const { min = 0, max = 0, whole } = fieldAt(key)!;
    const value = min + share * (max - min);
    const tried = override(before, { [key]: whole ? Math.round(value) : value });
    return tried.ok ? tried.scenario : before;
  }, scenario);
}

const countOfOthers = (a: Scenario, b: Scenario): number =>
  numbersIn(a).filter((key) => valueAt(a, key) !== valueAt(b, key)).length;

describe('a link', () => {
  it.each(shipped)('brings back %s', async (_, scenario) => {
    const fragment = await fragmentOf(scenario);
    expect(await scenarioOf(fragment)).toEqual({ ok: true, scenario, notes: [] });
    expect(fragment.length).toBeLessThan(150);
  });

  it('brings back any scenario', async () => {
    await fc.assert(
      fc.asyncProperty(anyScenario, async (scenario) => {
        const linked = await scenarioOf(await fragmentOf(scenario));
        expect(linked).toEqual({ ok: true, scenario: JSON.parse(JSON.stringify(scenario)), notes: [] });
      }),
      { numRuns: 25, seed: 7 },
    );
  });

  it('is short enough with forty values of full length that differ, whatever car and circuit', async () => {
    const bases = ['heavy', 'light'].flatMap((car) =>
      ['sorrelby', 'long', 'slow'].map((circuit) => withCircuit(withCar(shippedStint('hour'), car), circuit)),
    );
    const lengths: number[] = [];
    const counts: number[] = [];
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom(...bases),
        fc.infiniteStream(fc.double({ min: 0.1, max: 0.9, noNaN: true })),
        fc.infiniteStream(fc.nat()),
        async (base, shares, places) => {
          const keys = numbersIn(base).filter((key) => !key.startsWith('doubt.'));
          let scenario = base;
          let differing = 0;
          while (differing < 40) {
            const key = keys[places.next().value % keys.length]!;
            const next = changedIn(scenario, [[key, shares.next().value]]);
            if (next !== scenario) differing = countOfOthers(base, (scenario = next));
          }
          counts.push(differing);
          lengths.push((await fragmentOf(scenario)).length);
        },
      ),
      { numRuns: 12, seed: 3 },
    );
    expect(Math.min(...counts)).toBe(40);
    expect(Math.max(...lengths)).toBeLessThan(LONGEST_LINK - ADDRESS);
  });

  it('keeps what no schema knows, and what is gone', async () => {
    const { rear: _, ...blanking_pct } = first.blanking_pct;
    const scenario = { ...first, note: { wind: ['west', 3] }, blanking_pct: { ...blanking_pct, rear: 12 } };
    expect(await scenarioOf(await fragmentOf(scenario))).toMatchObject({ ok: true, scenario });
  });

  it('that lost or changed a letter on the way is refused', async () => {
    const whole = await fragmentOf(changedIn(first, [['conditions.ambient_C', 0.7]]));
    const flip = (at: number): string =>
      whole.slice(0, at) + (whole[at] === 'A' ? 'B' : 'A') + whole.slice(at + 1);
    const broken = [whole.slice(0, -6), whole.slice(0, 12), '#s=', '#s=%%', '#s=AAAA', flip(10), flip(30)];
    for (const fragment of broken) expect(await scenarioOf(fragment)).toMatchObject({ ok: false });
  });

  it('is checked as a file is', async () => {
    const scenario = { ...first, conditions: { ...first.conditions, ambient_C: 295 } };
    expect(await scenarioOf(await fragmentOf(scenario))).toEqual({
      ok: false,
      why: 'conditions.ambient_C: expected -30 to 55, got 295 (kelvin?)',
    });
  });
});

describe('a difference of two trees', () => {
  it('makes the one from the other, for any two', () => {
    const tree = fc.object({
      maxDepth: 3,
      values: [fc.integer(), fc.string(), fc.constant(null), fc.boolean()],
    });
    fc.assert(
      fc.property(tree, tree, (from, to) => {
        const told = JSON.parse(JSON.stringify(differenceOf(from, to))) as unknown;
        expect(differing(from, told)).toEqual(to);
      }),
      { numRuns: 300, seed: 5 },
    );
  });

  it('is empty between equals, and names one changed item of a list', () => {
    expect(differenceOf({ a: [1, { b: 2 }] }, { a: [1, { b: 2 }] })).toEqual({});
    const list = Array.from({ length: 9 }, (_, i) => ({ i }));
    expect(differenceOf(list, list.with(4, { i: 7 }))).toEqual({ 4: { i: [7] } });
  });

  it.each([[{ a: { b: [1] } }], [3], [null], [{ list: { 9: [1] } }], [[1, 2]]])('refuses %j', (told) => {
    expect(() => differing({ a: 1, list: [1] }, told)).toThrow();
  });
});

it('every shipped scenario passes the check, or the tests above prove nothing', () => {
  for (const [, scenario] of shipped) expect(checkScenario(scenario).ok).toBe(true);
});
