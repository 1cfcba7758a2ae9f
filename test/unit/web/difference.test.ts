import { describe, expect, it } from 'vitest';
import type { Changes, Scenario, Verdict } from '../../../engine/index.ts';
import { defaultScenario, withCar, withCircuit } from '../../../engine/scenario/library.ts';
import { withChanges } from '../../../engine/scenario/changes.ts';
import { differenceOf } from '../../../web/display/difference.ts';
import { pinnedName } from '../../../web/display/pinned-name.ts';
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
    const before = { facePeak_K: 898, coldestStop_K: 706, firstLapOut: null };
    const after = { facePeak_K: 955, coldestStop_K: 764, firstLapOut: 5 };
    expect(difference(before, after)).toBe(
      'Against pinned 50 %: face peak 57 K hotter, coldest stop 58 K warmer, first lap out 5 instead of none.',
    );
  });

  it('goes the other way too', () => {
    const before = { facePeak_K: 955, coldestStop_K: 764, firstLapOut: 5 };
    const after = { facePeak_K: 898, coldestStop_K: 706, firstLapOut: null };
    expect(difference(before, after)).toContain(
      'face peak 57 K cooler, coldest stop 58 K colder, first lap out none instead of 5',
    );
  });

  it('says what stayed the same', () => {
    expect(difference({}, {})).toContain('face peak the same, coldest stop the same, no lap out in either');
  });

  it('leaves out a coldest stop that one of them does not have', () => {
    expect(difference({ coldestStop_K: null }, {})).not.toContain('coldest stop');
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
