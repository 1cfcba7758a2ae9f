import { describe, expect, it } from 'vitest';
import type { TraceColumns } from '../../../engine/circuit/trace.ts';
import { printed } from '../../../engine/said.ts';
import { defaultScenario } from '../../../engine/scenario/library.ts';
import type { Phase } from '../../../engine/scenario/schema.ts';
import { compile } from '../../../engine/stint/compile.ts';
import { traceOf } from '../../support/logger.ts';
import { unexplained } from '../../support/ledger.ts';
import { changed, corner, driven, withPhases } from '../../support/stints.ts';

const BAR = 1e5;
const time_s = Float64Array.from({ length: 801 }, (_, i) => i / 20);

/**
 * Acceleration over a lap of two stops: at 10 s from 60 m/s after a lift in too low a gear, and at 25 s. The lift is short: one
 * that took more than 2 % of the heat would speak against the pressure.
 */
const accelAt = (t: number): number => {
  if (t >= 9 && t < 10) return -2.8;
  if (t >= 10 && t < 12) return -11;
  if (t >= 12 && t < 25) return 1.5;
  if (t >= 25 && t < 28) return -6;
  return t >= 28 && t < 40 ? 2.2 : 0;
};
let speed = 60;
const speed_mps = time_s.map((t) => (t === 0 ? speed : (speed += accelAt(t - 0.025) / 20)));
const isOn = (t: number): boolean => (t >= 10 && t < 12) || (t >= 25 && t < 28);
const line = (first: number, second: number): Float64Array =>
  time_s.map((t) => BAR * (isOn(t) ? (t < 20 ? first : second) : 0));

const lap = (
  columns: Omit<TraceColumns, 'speed_mps'>,
  phases: Phase[] = [{ kind: 'push', laps: 1 }],
  laps = 1,
) => withPhases(phases, laps, { ...defaultScenario(), trace: traceOf({ time_s, speed_mps, ...columns }) });
const heatOf = (columns: Omit<TraceColumns, 'speed_mps'>): number => driven(lap(columns)).brakeEnergyPerLap_J;

describe('a lap with logged brake pressure', () => {
  const front = line(50, 30);
  const once = driven(lap({ brakeFront_Pa: front }));

  it('makes no brake heat of a lift that slows the car more than the balance explains', () => {
    const alone = driven(lap({}));
    const lift_J = alone.brakeEnergyPerLap_J - once.brakeEnergyPerLap_J;
    expect(lift_J).toBeGreaterThan(1e4);
    once.clock.time_s.forEach((t, i) => {
      if (t <= 9.9 || (t > 12.2 && t < 24.9)) expect(once.clock.brakePower_W[i], `${t} s`).toBe(0);
    });
  });

  it('keeps the heat of its stops: what drag, rolling and engine leave of the kinetic energy', () => {
    const [m, slip] = [defaultScenario().car.mass_kg, defaultScenario().car.braking_slip];
    const kinetic = (from: number, to: number): number =>
      (speed_mps[20 * from]! ** 2 - speed_mps[20 * to]! ** 2) / 2;
    const most_J = 1.05 * (m + 75) * (kinetic(10, 12) + kinetic(25, 28)) * (1 - slip);
    expect(once.brakeEnergyPerLap_J / most_J).toBeGreaterThan(0.8);
    expect(once.brakeEnergyPerLap_J / most_J).toBeLessThan(1);
  });

  it('starts and ends its stops where the pressure does', () => {
    const { stops } = corner(once, 'front');
    expect(stops.map(({ start_s }) => Math.abs(start_s - (start_s < 20 ? 10 : 25)) < 0.051)).toEqual([
      true,
      true,
    ]);
    expect(stops.map(({ end_s }) => Math.abs(end_s - (end_s < 20 ? 12 : 28)) < 0.051)).toEqual([true, true]);
  });

  it('shares one set of powers between the axles unless both lines are logged', () => {
    const plans = [{}, { brakeFront_Pa: front }, { brakeFront_Pa: front, brakeRear_Pa: front }].map(
      (columns) => compile(lap(columns)).passages[0]!.plan as { axles?: Record<string, object> },
    );
    expect(plans.map(({ axles }) => axles!.front === axles!.rear)).toEqual([true, true, false]);
  });

  it('splits by the brake balance where the lines keep their ratio', () => {
    const level = driven(lap({ brakeFront_Pa: front, brakeRear_Pa: line(25, 15) }));
    for (const axle of ['front', 'rear'] as const) {
      const apart = corner(level, axle).facePeak_K - corner(once, axle).facePeak_K;
      expect(Math.abs(apart)).toBeLessThan(0.05);
    }
  });

  it('moves heat to the axle whose line has more, and loses none', () => {
    const moving = driven(lap({ brakeFront_Pa: front, brakeRear_Pa: line(22, 17) }));
    const [a, b] = [corner(moving, 'front'), corner(moving, 'rear')];
    const [c, d] = [corner(once, 'front'), corner(once, 'rear')];
    expect(a.stops[0]!.peakFace_K).toBeGreaterThan(c.stops[0]!.peakFace_K + 5);
    expect(b.stops[0]!.peakFace_K).toBeLessThan(d.stops[0]!.peakFace_K - 5);
    expect(b.stops[1]!.peakFace_K - b.stops[1]!.startFace_K).toBeGreaterThan(
      d.stops[1]!.peakFace_K - d.stops[1]!.startFace_K + 5,
    );
    const even = driven(lap({ brakeFront_Pa: line(50.4, 32.9), brakeRear_Pa: line(21.6, 14.1) }));
    const sumOf = ({ corners }: typeof even): number =>
      corners.reduce((sum, { ledger_J }) => sum + ledger_J.brakeHeat, 0);
    expect(sumOf(moving) / sumOf(even)).toBeCloseTo(1, 6);
    for (const { ledger_J } of [a, b]) expect(unexplained(ledger_J)).toBeLessThanOrEqual(1e-9);
  });

  it('keeps its places on slower laps', () => {
    const phases: Phase[] = [
      { kind: 'out', laps: 1 },
      { kind: 'safety', laps: 1 },
      { kind: 'push', laps: 1 },
      { kind: 'in', laps: 1 },
    ];
    const { laps, clock } = driven(lap({ brakeFront_Pa: front }, phases, 4));
    const placesOf = ({ firstSample, lastSample }: (typeof laps)[number]): number[] =>
      Array.from({ length: lastSample - firstSample }, (_, n) => firstSample + n + 1)
        .filter((i) => clock.brakePower_W[i]! > 2000)
        .map((i) => clock.distance_m[i]!);
    const push = placesOf(laps[2]!);
    for (const slower of [laps[0]!, laps[1]!, laps[3]!]) {
      const places = placesOf(slower);
      expect(places.length).toBeGreaterThan(0);
      expect(Math.min(...places)).toBeGreaterThanOrEqual(Math.min(...push) - 5);
      expect(Math.max(...places)).toBeLessThanOrEqual(Math.max(...push) + 5);
    }
  });
});

describe('a trace without pressure', () => {
  it('counts an equal column of rest as none', () => {
    expect(heatOf({ brakeFront_Pa: time_s.map(() => 0.4 * BAR) })).toBe(heatOf({}));
  });
});

describe('a channel that is not this lap’s', () => {
  const [late, plain] = [time_s.map((t) => (isOn(t - 5) ? 50 * BAR : 0)), driven(lap({}))];

  it.each([
    ['pressure', { brakeFront_Pa: late }, /pressure .* not used/],
    ['acceleration', { accel_mps2: time_s.map((t) => -accelAt(t)) }, /acceleration .* not used/],
  ])('is left out and named: %s', (_, columns, says) => {
    const result = driven(lap(columns));
    expect(result.brakeEnergyPerLap_J).toBe(plain.brakeEnergyPerLap_J);
    expect(
      result.notices.filter(({ kind }) => kind === 'trace').map(({ said }) => says.test(printed(said))),
    ).toEqual([true]);
  });

  it('is not named where it serves', () => {
    const right = driven(lap({ brakeFront_Pa: line(50, 30), accel_mps2: time_s.map(accelAt) }));
    expect(right.notices.filter(({ kind }) => kind === 'trace')).toEqual([]);
  });
});

describe('a hill', () => {
  const HEIGHT_M = 20;
  const SLIP = defaultScenario().car.braking_slip;
  const GRAVITY = 9.80665;
  /** A long stop from 65 to 17 m/s, and the hill well inside it. */
  const braking_mps = time_s.map((t) => 65 - 3.4 * Math.min(14, Math.max(0, t - 10)));
  let s = 0;
  const distance_m = braking_mps.map((v, i) => (s += i === 0 ? 0 : (v + braking_mps[i - 1]!) / 40));
  const [from_m, to_m] = [distance_m[20 * 13]!, distance_m[20 * 20]!];
  /** Height of a smooth slope down: half a cosine between two places. */
  const along = (d: number): number => Math.min(1, Math.max(0, (d - from_m) / (to_m - from_m)));
  const height = (d: number): number => (HEIGHT_M / 2) * (1 + Math.cos(Math.PI * along(d)));
  const slope = (d: number): number =>
    (-HEIGHT_M / 2) * (Math.PI / (to_m - from_m)) * Math.sin(Math.PI * along(d));
  const onHill = (columns: Omit<TraceColumns, 'speed_mps'>): number => {
    const trace = traceOf({ time_s, speed_mps: braking_mps, ...columns });
    return driven(withPhases([{ kind: 'push', laps: 1 }], 1, { ...defaultScenario(), trace }))
      .brakeEnergyPerLap_J;
  };
  const plan = compile(lap({})).passages[0]!.plan as { mass_kg: number };
  const expected_J = plan.mass_kg * GRAVITY * HEIGHT_M * (1 - SLIP);
  const level_J = onHill({});
  let state = 7;
  const noise = (): number => ((state = (state * 48271) % 2147483647) / 2147483647 - 0.5) * 2 * 0.17;

  it.each([
    ['slope', { slope: distance_m.map(slope) }],
    ['altitude', { height_m: distance_m.map(height) }],
    ['altitude that wanders by a decimetre', { height_m: distance_m.map((d) => height(d) + noise()) }],
  ])('gives its m g h to the brakes within 2 percent, by a logged %s', (_, columns) => {
    expect(Math.abs((onHill(columns) - level_J) / expected_J - 1)).toBeLessThan(0.02);
  });

  it('is not counted twice where an accelerometer feels it as well', () => {
    const slopes = distance_m.map(slope);
    const felt = time_s.map((t, i) => (t >= 10 && t < 24 ? -3.4 : 0) + GRAVITY * slopes[i]!);
    const both_J = onHill({ slope: slopes, accel_mps2: felt });
    expect(Math.abs((both_J - level_J) / expected_J - 1)).toBeLessThan(0.02);
  });

  it('that nothing but an accelerometer feels is not taken for braking', () => {
    const felt = time_s.map((t, i) => (t >= 10 && t < 24 ? -3.4 : 0) + GRAVITY * slope(distance_m[i]!));
    expect(Math.abs(onHill({ accel_mps2: felt }) / level_J - 1)).toBeLessThan(0.02);
  });
});

it('brake balance moved by a phase moves a logged lap as well', () => {
  const logged = lap({ brakeFront_Pa: line(50, 30), brakeRear_Pa: line(20, 24) });
  const forward = driven(changed({ 'car.brake_balance_front': 0.7 }, logged));
  expect(corner(forward, 'front').facePeak_K).toBeGreaterThan(corner(driven(logged), 'front').facePeak_K);
});
