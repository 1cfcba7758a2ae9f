import { describe, expect, it } from 'vitest';
import { axleHeat } from '../../engine/car/axle-heat.ts';
import { brakeHeat } from '../../engine/car/brake-heat.ts';
import type { ChannelName } from '../../engine/circuit/channel-check.ts';
import { cleanTrace } from '../../engine/circuit/clean-trace.ts';
import { layoutCircuit } from '../../engine/circuit/layout.ts';
import { speedProfile } from '../../engine/circuit/speed-profile.ts';
import type { TraceColumns } from '../../engine/circuit/trace.ts';
import { trustedLap } from '../../engine/stint/measured-lap.ts';
import { GRAVITY_MPS2 } from '../../engine/units.ts';
import { clipped, holds, late, negated, noise, offset, type Fault } from '../support/channel-faults.ts';
import { circuits, heavyCar, heavyDriver, lightCar, lightDriver, warmDay } from '../support/driving.ts';
import { loggedChannels } from '../support/logger.ts';

const RATE_HZ = 10;
const BALANCE = 0.64;
const BAR = 1e5;

const driven = [
  ['sorrelby', heavyCar, heavyDriver],
  ['long', heavyCar, heavyDriver],
  ['slow', lightCar, lightDriver],
] as const;

const laps = driven.map(([id, car, driver], seed) => {
  const lap = speedProfile({ layout: layoutCircuit(circuits[id]), car, driver, air: warmDay });
  const heat = brakeHeat(lap, car, warmDay);
  const columns = loggedChannels(lap, {
    rate_Hz: RATE_HZ,
    speedNoise_mps: 0.1,
    seed: seed + 1,
    accel: { offset_g: 0.02, noise_g: 0.05 },
    brakes: { heat, noise_bar: 0.3, rest_bar: 0.4 },
  });
  const slope = columns.time_s.map(
    (t) =>
      lap.slope[
        Math.max(
          0,
          lap.time_s.findIndex((at) => at >= t),
        )
      ]!,
  );
  const plain: TraceColumns & { time_s: Float64Array } = {
    time_s: columns.time_s,
    speed_mps: columns.speed_mps,
    slope,
  };
  const alone_J = brakeHeat(cleanTrace(plain), car, warmDay).total_J;
  return { name: id, car, columns, plain, alone_J, true_J: heat.total_J };
});

type Lap = (typeof laps)[number];

/** The lap read with some of its channels, one or more of them wrong. */
function read(
  { columns, plain, car }: Lap,
  logged: readonly ChannelName[],
  wrong: ChannelName[],
  fault: Fault,
) {
  const put = logged.map((name) => [
    name,
    wrong.includes(name) ? fault(columns[name]!, RATE_HZ) : columns[name]!,
  ]);
  const lap = trustedLap({ ...plain, ...Object.fromEntries(put) }, car);
  return { lap, heat: brakeHeat(lap, car, warmDay) };
}

/** Heat is right within 2 %, against the driven lap or against the speed alone. */
function expectRight({ name, alone_J, true_J }: Lap, { total_J }: { total_J: number }): void {
  const off = Math.min(Math.abs(total_J / alone_J - 1), Math.abs(total_J / true_J - 1));
  expect(off, name).toBeLessThan(0.02);
}

const isLeftOut = ({ findings }: ReturnType<typeof read>['lap'], name: ChannelName): boolean =>
  findings.some(({ channel, leftOut }) => channel === name && leftOut !== undefined);

const lines = ['brakeFront_Pa', 'brakeRear_Pa'] as const;
const delays = [0.1, 0.2, 0.5, 0.8, -0.3];

const sometimesHarmless: [string, Fault][] = [
  ['dead after 97 percent of the lap', holds(0.97, 0.4 * BAR)],
  ['dead after 90 percent of the lap', holds(0.9, 0.4 * BAR)],
  ['stuck at a high value for the last percent', holds(0.99, 30 * BAR)],
  ['clipped at 0.8', clipped(0.8)],
  ['clipped at half', clipped(0.5)],
  ['offset by 20 bar', offset(20 * BAR)],
];
const useless: [string, Fault][] = [
  ['dead after half the lap', holds(0.5, 0.4 * BAR)],
  ['dead after three quarters', holds(0.75, 0.4 * BAR)],
  ['stuck at one value', holds(0, 20 * BAR)],
  ['stuck at a high value for the last tenth', holds(0.9, 30 * BAR)],
  ['noise', noise(60 * BAR)],
  ['small noise', noise(4 * BAR)],
  ['negated', negated],
  ['late by 1.3 s', late(1.3)],
];

describe.each([
  ['both lines', [...lines]],
  ['the rear line', ['brakeRear_Pa']],
] as [string, ChannelName[]][])('a fault in %s', (_, wrong) => {
  it.each(sometimesHarmless)('%s: heat stays right, and each axle’s', (_, fault) => {
    for (const each of laps) {
      const { lap, heat } = read(each, lines, wrong, fault);
      expectRight(each, heat);
      const { front, rear } = lap.brakes ?? {};
      if (!front || !rear) continue;
      const axles = axleHeat(heat, BALANCE, { front, rear });
      for (const axle of [axles.front, axles.rear]) expectRight(each, { total_J: axle.cumulative_J.at(-1)! });
    }
  });

  it.each(useless)('%s: it is left out, said, and takes no good line along', (_, fault) => {
    for (const each of laps) {
      const { lap, heat } = read(each, lines, wrong, fault);
      expectRight(each, heat);
      for (const line of lines) expect(isLeftOut(lap, line), each.name).toBe(wrong.includes(line));
      expect(lap.brakes?.front).toBeUndefined();
      expect(lap.used.pressure).toBe(wrong.length === 1);
    }
  });

  it.each(delays)('late by %d s: the delay is found within 0.05 s and taken out', (late_s) => {
    for (const each of laps) {
      const { lap, heat } = read(each, lines, wrong, late(late_s));
      for (const { channel, late_s: found, leftOut } of lap.findings) {
        expect(leftOut).toBeUndefined();
        expect(Math.abs(found - (wrong.includes(channel) ? late_s : 0)), each.name).toBeLessThan(0.05);
      }
      expectRight(each, heat);
    }
  });
});

describe('a line that fails for the last stops', () => {
  it('is left out wherever a stop of a hundredth of the heat goes missing', () => {
    const missing = laps.map((each) => {
      const { columns, plain, car } = each;
      const dead = holds(0.9, 0.4 * BAR)(columns.brakeFront_Pa!, RATE_HZ);
      const gated = brakeHeat(cleanTrace({ ...plain, brakeFront_Pa: dead }), car, warmDay).total_J;
      const { lap } = read(each, ['brakeFront_Pa'], ['brakeFront_Pa'], holds(0.9, 0.4 * BAR));
      const isMissing = gated < 0.98 * each.alone_J;
      if (isMissing) expect(isLeftOut(lap, 'brakeFront_Pa'), each.name).toBe(true);
      return isMissing;
    });
    expect(missing).toContain(true);
  });
});

describe('a fault in an accelerometer', () => {
  const accel: ChannelName[] = ['accel_mps2'];

  it.each([
    ['dead after half the lap', holds(0.5, 0)],
    ['dead after 90 percent', holds(0.9, 0)],
    ['stuck at 0.5 g for the last twentieth', holds(0.95, 0.5 * GRAVITY_MPS2)],
    ['noise', noise(GRAVITY_MPS2)],
    ['negated', negated],
    ['offset by half a g', offset(0.5 * GRAVITY_MPS2)],
    ['late by 1.3 s', late(1.3)],
  ] as [string, Fault][])('%s: heat stays right', (_, fault) => {
    for (const each of laps) expectRight(each, read(each, accel, accel, fault).heat);
  });

  it.each(delays)('late by %d s: the delay is found within 0.05 s and taken out', (late_s) => {
    for (const each of laps) {
      const { lap, heat } = read(each, accel, accel, late(late_s));
      expect(lap.used.accel, each.name).toBe(true);
      expect(Math.abs(lap.findings[0]!.late_s - late_s), each.name).toBeLessThan(0.05);
      expectRight(each, heat);
    }
  });
});

it('channels without a fault are all used, and none is moved in time', () => {
  for (const each of laps) {
    const pressed = read(each, lines, [], negated).lap;
    const felt = read(each, ['accel_mps2'], [], negated).lap;
    expect([...pressed.findings, ...felt.findings].map(({ leftOut, late_s }) => [leftOut, late_s])).toEqual(
      Array.from({ length: 3 }, () => [undefined, 0]),
    );
    expect(pressed.brakes?.rear).toBeDefined();
    expect(felt.used.accel).toBe(true);
  }
});
