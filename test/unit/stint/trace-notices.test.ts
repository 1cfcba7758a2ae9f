import { describe, expect, it } from 'vitest';
import { brakeHeat } from '../../../engine/car/brake-heat.ts';
import { layoutCircuit } from '../../../engine/circuit/layout.ts';
import { speedProfile } from '../../../engine/circuit/speed-profile.ts';
import type { TraceColumns } from '../../../engine/circuit/trace.ts';
import { printed } from '../../../engine/said.ts';
import { defaultScenario } from '../../../engine/scenario/library.ts';
import { traceNotices } from '../../../engine/stint/trace-notices.ts';
import { holds, late, negated, noise } from '../../support/channel-faults.ts';
import { circuits, heavyCar, heavyDriver, warmDay } from '../../support/driving.ts';
import { loggedChannels, traceOf } from '../../support/logger.ts';

const BAR = 1e5;
const layout = layoutCircuit(circuits.sorrelby);
const lap = speedProfile({ layout, car: heavyCar, driver: heavyDriver, air: warmDay });
const heat = brakeHeat(lap, heavyCar, warmDay);
const columns = loggedChannels(lap, {
  rate_Hz: 10,
  speedNoise_mps: 0.1,
  seed: 1,
  accel: { offset_g: 0.02, noise_g: 0.05 },
  brakes: { heat, noise_bar: 0.3 },
});
const { accel_mps2: accel, brakeFront_Pa: front, brakeRear_Pa: rear, ...plain } = columns;

const said = (channels: Omit<TraceColumns, 'speed_mps'>): string[] => {
  const trace = traceOf({ ...plain, ...channels });
  const notices = traceNotices({ trace, car: defaultScenario().car });
  expect(notices.every(({ kind }) => kind === 'trace')).toBe(true);
  return notices.map((notice) => printed(notice.said));
};

describe('notices of logged channels', () => {
  it('say nothing of channels that go with the speed', () => {
    expect(said({ brakeFront_Pa: front!, brakeRear_Pa: rear! })).toEqual([]);
    expect(said({ accel_mps2: accel! })).toEqual([]);
    expect(said({})).toEqual([]);
  });

  it('say by how much each channel was moved, and which way', () => {
    expect(said({ brakeFront_Pa: late(0.3)(front!, 10), brakeRear_Pa: late(-0.5)(rear!, 10) })).toEqual([
      expect.stringMatching(
        /^trace: front brake pressure comes 0\.(29|3\d) s after the braking; taken as 0\.(29|3\d) s earlier$/,
      ),
      expect.stringMatching(
        /^trace: rear brake pressure comes 0\.(4[5-9]|5\d) s before the braking; taken as 0\.(4[5-9]|5\d) s later$/,
      ),
    ]);
    expect(said({ accel_mps2: late(0.5)(accel!, 10) })).toEqual([
      expect.stringMatching(/^trace: the acceleration comes 0\.(49|5\d) s after the change of speed; taken/),
    ]);
  });

  it('name the line that is left out, and what becomes of the balance', () => {
    expect(said({ brakeFront_Pa: front!, brakeRear_Pa: noise(50 * BAR)(rear!, 10) })).toEqual([
      'trace: rear brake pressure does not go with slowing down and is not used; the brake balance is the scenario’s',
    ]);
    expect(said({ brakeFront_Pa: front!, brakeRear_Pa: holds(0, BAR)(rear!, 10) })).toEqual([
      'trace: rear brake pressure never rises and is not used; the brake balance is the scenario’s',
    ]);
    expect(said({ brakeFront_Pa: holds(0.9, 0)(front!, 10) })).toEqual([
      expect.stringContaining(
        'front brake pressure asks for other brake heat than the speed does and is not used',
      ),
    ]);
  });

  it.each([
    ['the wrong way round', negated],
    ['in a unit ten times too small', (column: Float64Array) => column.map((a) => a / 10)],
  ])('say of an accelerometer %s what to check', (_, wrong) => {
    expect(said({ accel_mps2: wrong(accel!, 10) })).toEqual([
      'trace: the acceleration does not go with the speed and is not used; check its unit and sign',
    ]);
  });
});
