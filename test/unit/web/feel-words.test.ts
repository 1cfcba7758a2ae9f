import { describe, expect, it } from 'vitest';
import type { CornerResult, Damage, PedalRange } from '../../../engine/index.ts';
import { feelRows } from '../../../web/display/feel-words.ts';
import { corner } from '../../support/verdicts.ts';

const damage: Damage = {
  largestDifference_K: 205.6,
  place: 'turn 11',
  lap: 2,
  stopsAbove200: 18,
  stops: 161,
  aboveFacePeak_s: 6.28,
  belowBite_s: 0,
  aboveBulk_s: 0,
};
const pedal: PedalRange = {
  middle_K: 798.15,
  highest: 1.124,
  place: 'turn 7',
  lap: 10,
  lowest: 0.979,
  lowestPlace: 'turn 1',
  lowestLap: 5,
};
const fluid = { caliperPeak_K: 378, fluidPeak_K: 378, fluidPeakAt_s: 2420 };
const margins = { fluidMargin_K: 75.2, fluidClassMargin_K: 75.2, fluidCall: 'comfortable' as const };

function told(name: string, changes: Partial<CornerResult> = {}): string {
  const laps = [{ in: true }] as CornerResult['laps'];
  const rows = feelRows(corner('front', {}, { laps, damage, pedal, ...fluid, ...margins, ...changes }));
  return rows.find((row) => row.name === name)!.text.replaceAll('\u00A0', ' ');
}

describe('face over core', () => {
  const of = (changes: Partial<Damage>) => told('Face over core', { damage: { ...damage, ...changes } });

  it('names the largest difference, its place, and how many brakings are harsh', () => {
    expect(of({})).toBe(
      'At most 206 K, at turn 11 on lap 2; above 200 K in 18 of all 161 brakings, hard or not.',
    );
    expect(of({ stopsAbove200: 0 })).toMatch(/; above 200 K in none of all 161 brakings, hard or not\.$/);
  });
});

describe('past the window', () => {
  const of = (changes: Partial<Damage>) => told('Past the window', { damage: { ...damage, ...changes } });

  it('gives the seconds, minutes where they are many, and says when there are none', () => {
    expect(of({})).toBe('On counted laps 6.3 s above face peak, none above bulk, no braking below bite.');
    expect(of({ aboveBulk_s: 1534, belowBite_s: 19.4 })).toBe(
      'On counted laps 6.3 s above face peak, 26 min above bulk, 19 s of braking below bite.',
    );
    expect(of({ aboveFacePeak_s: 0 })).toBe('On counted laps never.');
  });

  it('says that it is of all laps where none counts', () => {
    const laps = [{ in: null }] as CornerResult['laps'];
    expect(told('Past the window', { laps })).toMatch(/^On all laps, for none counts, 6\.3 s above/);
  });
});

describe('the pedal', () => {
  const of = (changes: Partial<PedalRange>) => told('Pedal', { pedal: { ...pedal, ...changes } });

  it('is told in percent against the middle of the window, heaviest and lightest', () => {
    expect(of({})).toBe(
      '12 % heavier at turn 7 on lap 10 than in the middle of the window, 525 °C; 2 % lighter at turn 1 on lap 5.',
    );
    expect(of({ lowest: 1.03 })).toMatch(/; 3 % heavier at turn 1 on lap 5\.$/);
  });

  it('is as heavy where it does not differ by a percent', () => {
    expect(of({ highest: 1.004 })).toBe(
      'As heavy at turn 7 on lap 10 as in the middle of the window, 525 °C; 2 % lighter at turn 1 on lap 5.',
    );
    expect(of({ lowest: 1 })).toMatch(/; as heavy at turn 1 on lap 5\.$/);
    expect(of({ highest: 1, lowest: 1 })).toBe('As in the middle of the window, 525 °C, in all hard stops.');
  });

  it('is not told without a hard stop', () => {
    expect(told('Pedal', { pedal: null })).toBe('No hard stop counts, so nothing is said of the pedal.');
  });
});

describe('caliper and fluid', () => {
  const of = (changes: Partial<CornerResult>) => told('Caliper and fluid', changes);

  it('are told with their peaks and what is left to wet boiling', () => {
    expect(of({})).toBe(
      'Caliper peaks at 105 °C, fluid at 105 °C after 40 min, 75 K below its wet boiling point: comfortable.',
    );
    expect(of({ fluidMargin_K: 45, fluidClassMargin_K: 45, fluidCall: 'nothing' })).toMatch(
      /, 45 K below its wet boiling point\.$/,
    );
    expect(of({ fluidMargin_K: -6, fluidClassMargin_K: null, fluidCall: 'do not run' })).toMatch(
      /, 6 K above its wet boiling point: do not run\.$/,
    );
  });

  it('name the least of the class only where the label promises something else', () => {
    expect(of({ fluidMargin_K: 95 })).toMatch(
      /, 95 K below its wet boiling point, 75 K below the least of its class: comfortable\.$/,
    );
  });
});
