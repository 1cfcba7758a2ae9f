import { describe, expect, it } from 'vitest';
import type { Changes, Scenario, Verdict } from '../../../engine/index.ts';
import { defaultScenario, withCar, withCircuit } from '../../../engine/scenario/library.ts';
import { withChanges } from '../../../engine/scenario/changes.ts';
import { differenceOf } from '../../../web/display/difference.ts';
import { pinnedName, pinnedNames } from '../../../web/display/pinned-name.ts';
import { textWidth } from '../../../web/charts/text-width.ts';
import { endName } from '../../../web/pages/stint/over-chart.ts';
import { corner, resultOf } from '../../support/verdicts.ts';

const now = defaultScenario();
const pinned = (changes: Changes): Scenario => withChanges(now, changes);

function difference(
  before: Partial<Verdict>,
  after: Partial<Verdict>,
  changes: Changes = { 'blanking_pct.front': 50 },
): string {
  const run = (scenario: Scenario, verdict: Partial<Verdict>) => ({
    scenario,
    result: resultOf(corner('front', verdict)),
  });
  return differenceOf(run(pinned(changes), before), run(now, after), 'front').replaceAll('\u00a0', ' ');
}

describe('the difference to the pinned run', () => {
  it('is said in words', () => {
    const before = {
      facePeak_K: 898,
      coldestStop_K: 706,
      firstLapOut: null,
      hotMargin_K: 25,
      coldMargin_K: 33,
    };
    const after = { facePeak_K: 955, coldestStop_K: 764, firstLapOut: 5, hotMargin_K: -32, coldMargin_K: 91 };
    expect(difference(before, after)).toBe(
      'Against pinned 50 %: face peak 57 K hotter, coldest stop 58 K warmer, out from lap 5 instead of in throughout.',
    );
  });

  it('goes the other way too', () => {
    const before = {
      facePeak_K: 955,
      coldestStop_K: 764,
      firstLapOut: 5,
      hotMargin_K: -32,
      coldMargin_K: 91,
    };
    const after = {
      facePeak_K: 898,
      coldestStop_K: 706,
      firstLapOut: null,
      hotMargin_K: 25,
      coldMargin_K: 33,
    };
    expect(difference(before, after)).toBe(
      'Against pinned 50 %: face peak 57 K cooler, coldest stop 58 K colder, in throughout instead of out from lap 5.',
    );
  });

  it('says so where nothing is left of it', () => {
    expect(difference({}, { facePeak_K: 880.2 })).toBe('Against pinned 50 %: the front is the same.');
  });

  it('leaves out a coldest stop that one of them does not have', () => {
    expect(difference({ coldestStop_K: null }, { facePeak_K: 900 })).not.toContain('coldest stop');
  });

  it('tells of a limit what the face alone does not', () => {
    // the window is another one: the same face is nearer to it
    expect(difference({ hotMargin_K: 43 }, { hotMargin_K: 13 })).toContain(': hot limit 30 K nearer.');
    expect(difference({ coldMargin_K: 99 }, { coldMargin_K: 119 })).toContain(': cold limit 20 K further.');
    expect(difference({ coldMargin_K: Infinity }, { facePeak_K: 890, hotMargin_K: 33 })).not.toContain(
      'limit',
    );
  });

  it('tells of the swing and of the fluid', () => {
    const run = (fluidPeak_K: number, fluidMargin_K: number) => ({
      scenario: now,
      result: resultOf(corner('front', {}, { fluidPeak_K, fluidMargin_K })),
    });
    const said = differenceOf(run(400, 30), run(440, -10), 'front', null, 'pinned');
    expect(said.replaceAll('\u00a0', ' ')).toBe(
      'Against pinned: fluid 40 K hotter, past its wet boiling point.',
    );
    expect(difference({ swing_K: 108 }, { swing_K: 120 })).toContain('swing 12 K wider');
  });
});

describe('the name of the pinned run', () => {
  it.each([
    [{ 'blanking_pct.front': 50 }, 'pinned 50 %'],
    [{ 'conditions.ambient_C': 20 }, 'pinned at ambient 20 °C'],
    [{ 'conditions.wet': true }, 'pinned wet'],
    [{ 'traffic.gap_m': 8 }, 'pinned at gap to the car ahead 8 m'],
    [{ 'blanking_pct.rear': 20 }, 'pinned at rear blanking 20 %'],
    [{}, 'pinned'],
  ])('for %o is "%s"', (changes, name) => {
    expect(pinnedName(pinned(changes as Changes), now, 'front').replaceAll('\u00a0', ' ')).toBe(name);
  });

  it('is that of another car or circuit first of all', () => {
    expect(pinnedName(withCar(now, 'light'), now, 'front')).toBe('pinned Light club car');
    expect(pinnedName(withCircuit(now, 'slow'), now, 'front')).toBe(
      `pinned ${withCircuit(now, 'slow').circuit.name}`,
    );
  });
});

describe('the names of several pinned runs', () => {
  const names = (...changes: Changes[]): string[] =>
    pinnedNames(changes.map(pinned), now, 'front').map((name) => name.replaceAll('\u00a0', ' '));

  it('tell them from now', () => {
    expect(names({ 'blanking_pct.front': 50 }, { 'conditions.wet': true })).toEqual([
      'pinned 50 %',
      'pinned wet',
    ]);
  });

  it('tell them from each other', () => {
    expect(
      names({ 'blanking_pct.front': 50 }, { 'blanking_pct.front': 50, 'conditions.ambient_C': 20 }),
    ).toEqual(['pinned 50 %, ambient 26 °C', 'pinned 50 %, ambient 20 °C']);
  });

  it('are numbered where nothing a person would name tells them apart', () => {
    expect(names({}, { 'brakes.front.duct.leak_cm2': 30 })).toEqual(['pinned', 'pinned (2)']);
  });
});

describe('the name at a line’s end', () => {
  it('is cut to the room that is there', () => {
    expect(endName('pinned 50 %', 84)).toBe('pinned 50 %');
    expect(endName('pinned at ambient 20 °C', 100)).toBe('ambient 20 °C');
    const cut = endName('pinned 50 %, ambient 20 °C', 84);
    expect(cut).toMatch(/^50 %, .*…$/);
    expect(textWidth(cut)).toBeLessThanOrEqual(84);
  });
});
