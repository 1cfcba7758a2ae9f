import { describe, expect, it } from 'vitest';
import { defaultScenario, driverChanges, drivers, shippedStint } from '../../../engine/scenario/library.ts';
import type { Phase, Scenario } from '../../../engine/scenario/schema.ts';
import type { LapSummary } from '../../../engine/stint/result.ts';
import { changed, corner, driven, settled, withPhases } from '../../support/stints.ts';

interface Lap extends LapSummary {
  lap_s: number;
}

function lapOf(scenario: Scenario): Lap {
  const result = driven(scenario);
  return { ...settled(result, 'front'), lap_s: result.lapTime_s };
}

const style = (id: string, scenario = defaultScenario()): Lap =>
  lapOf(changed(driverChanges(id, scenario), scenario));
const own = style('own');

function expectWithin(value: number, [low, high]: readonly [number, number]): void {
  expect(value).toBeGreaterThanOrEqual(low);
  expect(value).toBeLessThanOrEqual(high);
}

describe('the driving styles that ship', () => {
  it('begin with the car’s own, which changes nothing', () => {
    expect(drivers[0]!.id).toBe('own');
    for (const id of ['sorrelby-20', 'club-evening']) {
      const scenario = shippedStint(id);
      expect(changed(driverChanges('own', scenario), scenario)).toEqual(scenario);
    }
  });

  it.each(drivers.map(({ id }) => [id]))('%s names every field of a driver, within its range', (id) => {
    const keys = Object.keys(defaultScenario().driver).map((key) => `driver.${key}`);
    expect(Object.keys(driverChanges(id)).sort()).toEqual(keys.sort());
    expect(() => changed(driverChanges(id))).not.toThrow();
  });

  it('leave the corners as fast: only braking differs', () => {
    for (const { id } of drivers) {
      const { driver } = changed(driverChanges(id));
      expect(driver).toMatchObject({ grip_share_cornering: 0.9, grip_share_traction: 0.85 });
    }
  });
});

describe('early and soft on the heavy car (common practice, no source)', () => {
  const soft = style('early-soft');

  it('lowers the face peak by 20 to 45 K and the lap mean by 10 to 25 K', () => {
    expectWithin(own.faceMax_K - soft.faceMax_K, [20, 45]);
    expectWithin(own.faceMean_K - soft.faceMean_K, [10, 25]);
  });

  it('costs 0.2 to 0.5 s a lap', () => expectWithin(soft.lap_s - own.lap_s, [0.2, 0.5]));
});

describe.each(['sorrelby-20', 'club-evening'])('on %s', (id) => {
  it('late and hard is faster and hotter, gentle slower and cooler than early and soft', () => {
    const laps = ['late-hard', 'own', 'early-soft', 'gentle'].map((one) => style(one, shippedStint(id)));
    laps.slice(1).forEach((lap, i) => {
      expect(lap.faceMax_K).toBeLessThan(laps[i]!.faceMax_K - 10);
      expect(lap.lap_s).toBeGreaterThan(laps[i]!.lap_s);
    });
  });
});

describe('a driver change at a stop', () => {
  const stop = (set: Phase['set']): Phase => ({
    kind: 'stand',
    duration_s: 60,
    brake_held: false,
    ...(set && { set }),
  });
  const push: Phase = { kind: 'push', laps: 6 };
  const [same, other] = [undefined, driverChanges('early-soft') as Phase['set']].map((set) =>
    driven(withPhases([push, stop(set), push, push], 18)),
  );
  const peak = (result: typeof same, lap: number): number =>
    corner(result!, 'front').laps[lap - 1]!.faceMax_K;

  it('holds from there on, through the phases after', () => {
    expect(peak(other, 6)).toBe(peak(same, 6));
    expectWithin(peak(same, 12) - peak(other, 12), [20, 45]);
    expectWithin(peak(same, 18) - peak(other, 18), [20, 45]);
  });

  it('is named where it happens', () => {
    expect(other!.phases.map(({ changed }) => changed)).toEqual([[], ['driver'], [], []]);
    expect(other!.phases[3]!.driver.grip_share_braking_dry).toBe(0.63);
  });
});
