import { describe, expect, it } from 'vitest';
import type { CornerResult, Restart, Soak } from '../../../engine/index.ts';
import type { Phase } from '../../../engine/scenario/schema.ts';
import { driverLine } from '../../../web/display/driver-line.ts';
import { plainText, sentenceOf, type Advice } from '../../../web/display/sentence.ts';
import { kelvin } from '../../../web/display/units.ts';
import { shipped } from '../../support/shipped.ts';
import { changed, driven, withPhases } from '../../support/stints.ts';
import { corner, resultOf } from '../../support/verdicts.ts';

const advice: Advice = { spans: [], spread: null };

const restart = (changes: Partial<Restart>): Restart => ({
  lap: 14,
  after: 'safety car',
  firstStop_K: kelvin(155),
  firstStopPlace: 'turn 1',
  firstStopLap: 14,
  underBite_K: 245,
  brakesToWarm: 5,
  lapsToWarm: 0,
  warmLap: 14,
  warmPlace: 'turn 7',
  ...changes,
});
const start = (brakesToWarm: number | null): Restart => restart({ lap: 1, after: 'start', brakesToWarm });
const soak = (changes: Partial<Soak> = {}): Soak => ({
  lap: 20,
  standing_s: 900,
  brakeHeld: false,
  caliper: { start_K: kelvin(95), peak_K: kelvin(130), rise_K: 35, peakAfter_s: 480 },
  fluid: { start_K: kelvin(95), peak_K: kelvin(125), rise_K: 30, peakAfter_s: 540 },
  caliperMargin_K: 70,
  fluidMargin_K: 75,
  discStart_K: kelvin(350),
  discEnd_K: kelvin(240),
  discFirstMinute_K: 20,
  ...changes,
});
const read = (...corners: CornerResult[]): string =>
  driverLine(resultOf(...corners)).replaceAll('\u00a0', ' ');
const front = (more: Partial<CornerResult>): CornerResult =>
  corner('front', {}, { fluidPeak_K: kelvin(125), ...more });
const rear = (more: Partial<CornerResult> = {}): CornerResult => corner('rear', {}, more);

describe('the restart', () => {
  it('says where the first hard stop is, how cold it starts and how long until warm', () => {
    expect(read(front({ restarts: [restart({})] }), rear())).toBe(
      'Restart on lap 14: front starts its first hard stop, turn 1, at 155 °C, 245 K under bite; five corners to warm.',
    );
  });

  it('is told of the axle that starts further under bite', () => {
    const worse = rear({ restarts: [restart({ underBite_K: 260, brakesToWarm: 1 })] });
    const line = read(front({ restarts: [restart({})] }), worse);
    expect(line).toMatch(/^Restart on lap 14: rear starts .* 260 K under bite; one corner to warm\.$/);
  });

  it('names the coldest of several', () => {
    const restarts = [restart({}), restart({ lap: 20, firstStopLap: 21, underBite_K: 250 })];
    expect(read(front({ restarts }), rear())).toMatch(
      /^Restart, coldest on lap 20: front starts its first hard stop, turn 1 on lap 21, at/,
    );
  });

  it('says so when the discs never get warm, and when it comes after a stop', () => {
    const cold = { after: 'stop', brakesToWarm: null } as const;
    expect(read(front({ restarts: [restart(cold)] }), rear())).toMatch(
      /^Back from the stop on lap 14: .*; it stays cold\.$/,
    );
  });

  it('is not worth a word when it starts at bite', () => {
    expect(read(front({ restarts: [restart({ underBite_K: 0 })] }), rear())).toBe('');
  });

  it('gives way to the start of the stint when there is none, of the axle that takes longer', () => {
    const both = [front({ restarts: [start(22)] }), rear({ restarts: [start(16)] })];
    expect(read(...both)).toBe('From cold the front takes 22 corners to warm.');
    expect(read(both[0]!, rear({ restarts: [start(null)] }))).toBe('From cold the rear never gets warm.');
    expect(read(front({ restarts: [start(22), restart({})] }), rear())).toMatch(/^Restart/);
  });
});

describe('the soak', () => {
  const told = (changes: Partial<Soak>, more: Partial<CornerResult> = {}): string =>
    read(front({ soak: soak(changes), ...more }), rear());
  const quiet = { caliper: { ...soak().caliper, rise_K: 9.9 }, fluid: { ...soak().fluid, rise_K: 9.9 } };

  it('says what peaks how high and how long after parking', () => {
    expect(told({ fluidMargin_K: 120 })).toBe(
      'Parked, front caliper peaks at 130 °C in 8 min, fluid at 125 °C in 9 min.',
    );
  });

  it('is not worth a word below 10 K and far from the limits', () => {
    expect(told(quiet)).toBe('');
    expect(told({ ...quiet, caliper: { ...quiet.caliper, rise_K: 10 } })).toMatch(/^Parked/);
  });

  // 90, 60, 40 and 20 K: common practice, no source.
  it.each([
    [91, /in 9 min\.$/],
    [90, /, 90 K from wet boiling, comfortable\.$/],
    [60, /, 60 K from wet boiling, comfortable\.$/],
    [59, /, 59 K from wet boiling\.$/],
    [40, /, 40 K from wet boiling\.$/],
    [39, /, 39 K from wet boiling: act\.$/],
    [20, /, 20 K from wet boiling: act\.$/],
    [19, /, 19 K from wet boiling: do not run\.$/],
    [-5, /, 5 K above wet boiling: do not run\.$/],
  ])('with %i K left to the wet boiling point says what that asks for', (fluidMargin_K, words) => {
    expect(told({ fluidMargin_K })).toMatch(words);
  });

  it('near a limit is told however little it rises', () => {
    expect(told({ ...quiet, fluidMargin_K: 59 })).toMatch(/59 K from wet boiling/);
    expect(told({ ...quiet, caliperMargin_K: 19 })).toContain('(19 K from its caution)');
    expect(told({ ...quiet, caliperMargin_K: -4 })).toContain('(4 K above its caution)');
  });

  it('does not call a fluid comfortable that was hotter on the way or still rises', () => {
    expect(told({}, { fluidPeak_K: kelvin(140) })).not.toContain('comfortable');
    expect(told({ fluid: { ...soak().fluid, peakAfter_s: 900 } })).toMatch(
      /fluid still rises past 125 °C after 15 min\.$/,
    );
  });

  it('says what only cools', () => {
    const fluid = { start_K: kelvin(95), peak_K: kelvin(95), rise_K: 0, peakAfter_s: 0 };
    expect(told({ fluid, fluidMargin_K: 120 })).toMatch(/fluid cools from 95 °C\.$/);
  });

  it('is told of the corner nearest to a limit, and of a long stop between laps', () => {
    const hotter = corner('rear', {}, { side: 'left', stopSoaks: [soak({ lap: 8, fluidMargin_K: 30 })] });
    expect(read(front({ soak: soak() }), hotter)).toBe(
      'Standing after lap 8, rear left caliper peaks at 130 °C in 8 min, fluid at 125 °C in 9 min, 30 K from wet boiling: act.',
    );
  });

  it('warns of the brake held on a disc above 300 °C only', () => {
    const warning = /Do not hold the brake on a hot disc\.$/;
    expect(told({ brakeHeld: true })).toMatch(warning);
    expect(told({ brakeHeld: true, discStart_K: kelvin(299) })).not.toMatch(warning);
    expect(told({ brakeHeld: false })).not.toMatch(warning);
  });

  it('does not warn of a brake held for a moment, as when setting off', () => {
    const held = (standing_s: number): string =>
      told({ brakeHeld: true, discStart_K: kelvin(400), standing_s });
    expect(held(9)).not.toContain('hold the brake');
    expect(held(10)).toMatch(/Do not hold the brake on a hot disc\.$/);
  });

  it('leaves comfort out beside a restart, to stay short', () => {
    const line = told({}, { restarts: [restart({})] });
    expect(line).toMatch(/^Restart on lap 14: .* to warm\. Parked, .* in 9 min\.$/);
  });
});

describe('the line of a stint that was run', () => {
  it.each(shipped)('%s says the numbers of its result, in one line', (_, scenario) => {
    const result = driven(scenario);
    const line = driverLine(result).replaceAll('\u00a0', ' ');
    expect(line.length).toBeLessThanOrEqual(190);
    const again = result.corners.flatMap(({ restarts }) => restarts.filter(({ after }) => after !== 'start'));
    const coldest = again.sort((a, b) => b.underBite_K - a.underBite_K)[0];
    if (!coldest) expect(line).toMatch(/^From cold/);
    else expect(line).toContain(`, ${coldest.underBite_K.toFixed(0)} K under bite; `);
    expect(plainText(sentenceOf(result, scenario, advice)).endsWith(driverLine(result))).toBe(true);
  });

  it('warns a driver who parks hot and stands on the pedal', () => {
    const phases: Phase[] = [
      { kind: 'push', laps: 6 },
      { kind: 'stand', duration_s: 600, brake_held: true },
    ];
    const result = driven(withPhases(phases, 6, changed({ 'conditions.ambient_C': 35 })));
    expect(driverLine(result)).toMatch(/Parked, front caliper .* Do not hold the brake on a hot disc\.$/);
  });
});
