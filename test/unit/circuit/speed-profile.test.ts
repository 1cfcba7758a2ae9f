import { describe, expect, it } from 'vitest';
import { brakeHeat } from '../../../engine/car/brake-heat.ts';
import { layoutCircuit } from '../../../engine/circuit/layout.ts';
import { speedProfile } from '../../../engine/circuit/speed-profile.ts';
import { kmhFromMps, mpsFromKmh } from '../../../engine/units.ts';
import { circuits, heavyCar, heavyDriver, straight, warmDay } from '../../support/driving.ts';

const layout = layoutCircuit(circuits.sorrelby);
const request = { layout, car: heavyCar, driver: heavyDriver, air: warmDay };
const flying = speedProfile(request);
const lapTime = (profile: { time_s: Float64Array }): number => profile.time_s.at(-1)!;

describe('a flying lap', () => {
  it('ends as fast as it began', () => {
    expect(flying.speed_mps.at(-1)).toBeCloseTo(flying.speed_mps[0]!, 9);
  });

  it('never leaves the grip that the driver uses', () => {
    const lift = (warmDay.density_kgpm3 * heavyCar.downforceArea_m2) / (2 * heavyCar.mass_kg);
    flying.speed_mps.forEach((v, i) => {
      const allowed = heavyCar.grip * heavyDriver.corneringShare * (9.80665 + lift * v * v);
      expect(v * v * Math.abs(flying.curvature_pm[i]!)).toBeLessThanOrEqual(allowed * (1 + 1e-9));
    });
  });

  it('has accelerations that integrate to its speeds and times', () => {
    flying.accel_mps2.slice(0, -1).forEach((a, i) => {
      const dt = flying.time_s[i + 1]! - flying.time_s[i]!;
      expect(flying.speed_mps[i]! + a * dt).toBeCloseTo(flying.speed_mps[i + 1]!, 9);
    });
  });

  it('changes little on a finer grid', () => {
    const fine = speedProfile({ ...request, layout: layoutCircuit(circuits.sorrelby, { step_m: 1 }) });
    const heat = (p: typeof fine): number => brakeHeat(p, heavyCar, warmDay).total_J;
    expect(Math.abs(lapTime(flying) / lapTime(fine) - 1)).toBeLessThan(0.002);
    expect(Math.abs(heat(flying) / heat(fine) - 1)).toBeLessThan(0.01);
  });

  it('moves smoothly with the driver: no jump as a braking point crosses a node', () => {
    const shares = Array.from({ length: 41 }, (_, i) => 0.7 + i * 0.002);
    const times = shares.map((brakingShare) =>
      lapTime(speedProfile({ ...request, driver: { ...heavyDriver, brakingShare } })),
    );
    const steps = times.slice(1).map((t, i) => times[i]! - t);
    expect(Math.min(...steps)).toBeGreaterThan(0);
    expect(Math.max(...steps)).toBeLessThan(2.5 * Math.min(...steps));
  });
});

describe('the driver', () => {
  const stop = { ...request, layout: straight(900), speedCap_mps: 60, entry_mps: 60, exit_mps: 25 };

  it('coasts, then builds the brake force up, before a stop', () => {
    const profile = speedProfile(stop);
    const power_W = brakeHeat(profile, heavyCar, warmDay).power_W;
    const lifted = profile.accel_mps2.findIndex((a) => a < -1);
    const braked = power_W.findIndex((p) => p > 0);
    const full = profile.accel_mps2.findIndex((a) => a < -14);
    const coast_s = profile.time_s[braked]! - profile.time_s[lifted]!;
    const buildUp_s = profile.time_s[full]! - profile.time_s[braked]!;
    expect(Math.abs(coast_s - heavyDriver.coast_s)).toBeLessThan(0.06);
    expect(Math.abs(buildUp_s - heavyDriver.buildUp_s)).toBeLessThan(0.06);
  });

  it('brakes earlier with a lower share of the grip, and loses time', () => {
    const softer = speedProfile({ ...request, driver: { ...heavyDriver, brakingShare: 0.666 } });
    const loss_s = lapTime(softer) - lapTime(flying);
    // Common practice, no source: 10 % softer costs 0.2-0.5 s; four short stops are at the low end.
    expect(loss_s).toBeGreaterThan(0.1);
    expect(loss_s).toBeLessThan(0.5);
  });

  it('makes about 2 MJ of a stop from 230 to 90 km/h', () => {
    const [from, to] = [mpsFromKmh(230), mpsFromKmh(90)];
    const heavyStop = speedProfile({ ...stop, speedCap_mps: from, entry_mps: from, exit_mps: to });
    const heat_MJ = brakeHeat(heavyStop, heavyCar, warmDay).total_J / 1e6;
    // Common practice, no source: 1.9-2.1 MJ.
    expect(heat_MJ).toBeGreaterThan(1.9);
    expect(heat_MJ).toBeLessThan(2.1);
  });
});

describe('the other laps', () => {
  it('an out-lap starts at the pit lane speed and ends as a flying lap does', () => {
    const out = speedProfile({ ...request, entry_mps: mpsFromKmh(60) });
    expect(kmhFromMps(out.speed_mps[0]!)).toBeCloseTo(60, 9);
    expect(out.speed_mps.at(-1)).toBeCloseTo(flying.speed_mps.at(-1)!, 2);
    expect(lapTime(out)).toBeGreaterThan(lapTime(flying) + 2);
  });

  it('an in-lap starts flying and is down to the pit lane speed at its end', () => {
    const home = speedProfile({ ...request, exit_mps: mpsFromKmh(60) });
    expect(home.speed_mps[0]).toBeCloseTo(flying.speed_mps[0]!, 9);
    expect(kmhFromMps(home.speed_mps.at(-1)!)).toBeCloseTo(60, 6);
  });

  it('drives the lane at its end no faster than it ends', () => {
    const [home, lane] = [0, 300].map((lane_m) => speedProfile({ ...request, exit_mps: 16, lane_m }));
    const first = lane!.distance_m.findIndex((at) => at >= lane!.distance_m.at(-1)! - 300);
    expect(lane!.speed_mps.subarray(first).every((v) => v <= 16 + 1e-9)).toBe(true);
    expect(home!.speed_mps[first]).toBeGreaterThan(30);
  });

  it('a car that comes in too fast brakes down to the lap, as hard as its driver brakes', () => {
    const slow = { ...request, speedCap_mps: 40 };
    const [late, steady] = [speedProfile({ ...slow, entry_mps: 70 }), speedProfile(slow)];
    const met = late.speed_mps.findIndex((v, i) => i > 0 && v <= steady.speed_mps[i]! + 1e-9);
    expect(late.speed_mps[0]).toBe(70);
    expect(late.distance_m[met]).toBeGreaterThan(80);
    expect(late.distance_m[met]).toBeLessThan(200);
    expect(late.speed_mps.subarray(met)).toEqual(steady.speed_mps.subarray(met));
  });

  it('starts from standing without a value that is not a number', () => {
    const start = speedProfile({ ...request, entry_mps: 0 });
    for (const column of [start.speed_mps, start.time_s, start.accel_mps2]) {
      expect(column.every(Number.isFinite)).toBe(true);
    }
    expect(start.speed_mps[0]).toBe(0);
  });

  it('keeps to the cap behind a safety car', () => {
    const cap_mps = mpsFromKmh(110);
    const behind = speedProfile({ ...request, speedCap_mps: cap_mps });
    expect(Math.max(...behind.speed_mps)).toBeLessThanOrEqual(cap_mps + 1e-9);
    expect(brakeHeat(behind, heavyCar, warmDay).total_J).toBeLessThan(1e6);
  });
});

describe('air and road', () => {
  const topOf = (changed: object): number => Math.max(...speedProfile({ ...request, ...changed }).speed_mps);

  it('thinner air takes speed from an engine that follows it', () => {
    const thin = { density_kgpm3: 0.95, powerFactor: 0.776, dragFactor: 1 };
    expect(topOf({ air: thin })).toBeLessThan(topOf({}));
    expect(topOf({ air: { ...thin, powerFactor: 1 } })).toBeGreaterThan(topOf({}));
  });

  it('a tow raises the approach speed', () => {
    expect(topOf({ air: { ...warmDay, dragFactor: 0.85 } })).toBeGreaterThan(topOf({}) + 0.5);
  });

  it('a stop downhill makes more heat than one uphill', () => {
    const heat = (slope_pct: number): number => {
      const run = { ...request, layout: straight(900, slope_pct), speedCap_mps: 60, entry_mps: 60 };
      return brakeHeat(speedProfile({ ...run, exit_mps: 25 }), heavyCar, warmDay).total_J;
    };
    expect(heat(-5)).toBeGreaterThan(1.05 * heat(5));
  });
});

describe('a car beyond reason', () => {
  it.each([
    ['without the grip to climb or to hold a slope', { grip: 0.02 }],
    ['lighter than its lift', { mass_kg: 200, downforceArea_m2: -0.5, power_W: 1e6 }],
    ['about to turn over backwards', { cgHeight_m: 3, grip: 3 }],
    ['without power', { power_W: 0 }],
  ])('%s still gives numbers', (_, changed) => {
    const car = { ...heavyCar, ...changed };
    const lap = speedProfile({ ...request, layout: layoutCircuit(circuits.long), car });
    expect(lap.time_s.every(Number.isFinite)).toBe(true);
    expect(brakeHeat(lap, car, warmDay).power_W.every(Number.isFinite)).toBe(true);
  });
});
