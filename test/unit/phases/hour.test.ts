import { describe, expect, it } from 'vitest';
import { defaultScenario, driverChanges, shippedStint } from '../../../engine/scenario/library.ts';
import { changed, corner, driven } from '../../support/stints.ts';

describe('the hour that ships', () => {
  const scenario = shippedStint('hour');
  const result = driven(scenario);
  const front = corner(result, 'front');
  const kinds = result.phases.map(({ kind }) => kind);

  it('lasts 58 to 62 minutes, with the stop and with what it stands at its end', () => {
    for (const end_s of [result.laps.at(-1)!.end_s, result.clock.time_s.at(-1)!]) {
      expect(end_s / 60).toBeGreaterThanOrEqual(58);
      expect(end_s / 60).toBeLessThanOrEqual(62);
    }
  });

  it('takes tape off, fuel on and another driver at its stop', () => {
    const stop = result.phases[kinds.indexOf('stand')]!;
    expect(stop.changed).toEqual(['blanking_pct', 'fuel_kg', 'driver']);
    const { driver } = changed(driverChanges('early-soft', defaultScenario()));
    expect(stop.driver).toEqual(driver);
  });

  it('stays in the window until the stop, one panel more closed than after it', () => {
    const before = front.laps.filter(({ lap, in: isIn }) => lap < 14 && isIn !== null);
    expect(before.length).toBeGreaterThan(6);
    expect(before.every((lap) => lap.in)).toBe(true);
    const panels = scenario.brakes.front.duct!.panels_pct;
    const [closed, open] = [0, 4].map((i) => panels.indexOf(result.phases[i]!.blanking_pct.front));
    expect(closed).toBe(open! + 1);
  });

  it('has its coldest hard stops after the safety car, and a wet track that leaves the front cold', () => {
    const restart = result.laps.findIndex(
      ({ kind }, i) => kind === 'push' && result.laps[i - 1]?.kind === 'safety',
    );
    const starts = front.laps.slice(2).map(({ coldestStop_K }) => coldestStop_K ?? Infinity);
    expect(front.laps[restart]!.coldestStop_K).toBe(Math.min(...starts));
    const wet = front.laps.filter(({ kind }, i) => kind === 'push' && result.laps[i]!.wet);
    expect(wet).toHaveLength(6);
    expect(wet.every(({ tooCold }) => tooCold)).toBe(true);
    expect(front.verdict.status).toBe('cold');
  });
});
