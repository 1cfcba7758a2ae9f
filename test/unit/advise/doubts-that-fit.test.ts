import { describe, expect, it } from 'vitest';
import { finished } from '../../../engine/advise/finished.ts';
import { sensitivity } from '../../../engine/advise/sensitivity.ts';
import { spread } from '../../../engine/advise/spread.ts';
import { supposing } from '../../../engine/advise/supposing.ts';
import { unknownsOf } from '../../../engine/advise/unknowns.ts';
import { valueAt } from '../../../engine/scenario/tree.ts';
import { checkScenario } from '../../../engine/scenario/parse.ts';
import { problemLine } from '../../../engine/scenario/problem.ts';
import type { Scenario } from '../../../engine/scenario/schema.ts';
import { changed, withPhases } from '../../support/stints.ts';
import { doubting, toyStint, type Ranges } from '../../support/toy-stint.ts';

const CHEEK = 'brakes.front.disc.cheek_mm';
const THICKNESS = 'brakes.front.disc.thickness_mm';

function linesOf(key: string, [low, high]: readonly [number, number], scenario = toyStint({})): string[] {
  const checked = checkScenario({ ...scenario, doubt: { [key]: { low, high, reason: 'for a test' } } });
  return checked.ok ? [] : checked.problems.map(problemLine);
}

describe('a doubt whose end does not fit the rest of the scenario', () => {
  it.each([
    ['disc.cheek_mm', [8.5, 9.2], 'low: expected a value with which brakes.front.disc.thickness_mm is', 8.5],
    ['disc.thickness_mm', [35.5, 40], 'high: expected a value with which .*thickness_mm is two cheeks', 40],
    ['disc.inner_mm', [250, 399], 'high: expected a value with which .* is less than outer_mm, 380', 399],
    ['disc.vane_mm', [4, 20], 'high: expected a value with which .*vanes is fewer than fill the inner', 20],
    ['window.bite_C', [380, 660], 'high: expected a value with which .* is less than face_peak_C', 660],
    ['fluid.wet_boiling_C', [170, 300], 'high: expected a value with which .* is at most dry_boiling_C', 300],
    ['pad.friction.1.face_C', [10, 250], 'low: expected a value with which .* the point before it, 20', 10],
  ] as const)('is refused in one line: %s %j', (key, range, line, value) => {
    const whole = `brakes.front.${key}`;
    const found = linesOf(whole, range);
    expect(found).toHaveLength(1);
    expect(found[0]).toMatch(new RegExp(`^doubt\\.${whole}\\.${line}.*, got ${value}$`));
  });

  it.each(['disc.vanes', 'duct.hoses', 'window.from_lap'])(
    'is refused where numbers are whole: %s',
    (key) => {
      const whole = `brakes.front.${key}`;
      expect(linesOf(whole, [1, 3])).toEqual([
        `doubt.${whole}: expected the key of a number that need not be whole, got '${whole}'`,
      ]);
    },
  );

  it('is refused where only a side does not fit', () => {
    const uneven: Scenario = {
      ...toyStint({}),
      sides: { front_left: { fluid: { dry_boiling_C: 230 } } },
    };
    expect(linesOf('brakes.front.fluid.wet_boiling_C', [180, 240], toyStint({}))).toEqual([]);
    expect(linesOf('brakes.front.fluid.wet_boiling_C', [180, 240], uneven)[0]).toMatch(
      /^doubt\..*\.high: expected a value with which sides\.front_left\.fluid\.wet_boiling_C is at most/,
    );
  });

  it('is none where it fits, and where another problem stands already', () => {
    expect(linesOf(CHEEK, [9, 9.4])).toEqual([]);
    const broken = {
      ...toyStint({}),
      brakes: { ...toyStint({}).brakes, rear: { ...toyStint({}).brakes.rear, duct: 3 } },
    };
    expect(linesOf(CHEEK, [8.5, 10], broken as unknown as Scenario).join()).not.toContain('cheek_mm');
  });
});

describe('doubts that fit one by one and not together', () => {
  const ranges: Ranges = {
    [CHEEK]: [8.95, 9.45],
    [THICKNESS]: [35, 36],
    'brakes.front.wheel.crossflow': [0.4, 1],
  };
  const toy = toyStint(ranges);
  const [cheek, thickness, crossflow] = [CHEEK, THICKNESS, 'brakes.front.wheel.crossflow'].map((key) =>
    unknownsOf(toy).find((one) => one.key === key)!,
  );

  it('are pulled towards the likely, and nothing else is', () => {
    const moved = supposing(toy, [
      [cheek!, 9.45],
      [thickness!, 35],
      [crossflow!, 0.45],
    ]);
    expect(valueAt(moved, CHEEK)).toBeCloseTo((cheek!.likely + 9.45) / 2, 12);
    expect(valueAt(moved, THICKNESS)).toBeCloseTo((thickness!.likely + 35) / 2, 12);
    expect(valueAt(moved, 'brakes.front.wheel.crossflow')).toBe(0.45);
    const fit = supposing(toy, [[cheek!, 9.45]]);
    expect(valueAt(fit, CHEEK)).toBe(9.45);
  });

  it('are left as they are in a scenario where nothing of the way fits', () => {
    const thick = changed({ [CHEEK]: 15, [THICKNESS]: 47 }, withPhases([{ kind: 'push', laps: 3 }], 3));
    const moved = supposing({ ...thick, doubt: {} }, [[cheek!, 9.45]]);
    expect(valueAt(moved, CHEEK)).toBe(15);
  });

  it('do not end the spread or what to measure first', () => {
    const both = doubting(toy, ranges);
    expect(finished(spread(both, { draws: 12, seed: 1 })).corners[0]!.hottest_K).toHaveLength(12);
    expect(finished(sensitivity(both))[0]!.effects).toHaveLength(3);
  });
});
