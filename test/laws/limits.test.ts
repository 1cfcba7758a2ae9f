import { describe, expect, it } from 'vitest';
import type { ConductanceMap } from '../../engine/disc/conductance-map.ts';
import { driveLap } from '../../engine/disc/kernel.ts';
import type { LapSteps } from '../../engine/disc/lap-input.ts';
import { BOOK, nodeTemperatures, storedHeat, type Stepper } from '../../engine/disc/stepper.ts';
import { compile, type CornerModel } from '../../engine/stint/compile.ts';
import { expectLaw, LAW_TIMEOUT } from '../support/law-runs.ts';
import { scaledMap } from '../support/doubled.ts';
import { driveModel, stepperOf } from '../support/model-runs.ts';

const SPEED_MPS = 40;
/** Nothing braked for so long, in steps that grow to a minute. */
const DAYS_S = 4e5;

function coasting(): LapSteps {
  const dt_s: number[] = [];
  for (let dt = 0.05, now = 0; now < DAYS_S; now += dt, dt = Math.min(60, dt * 1.2)) dt_s.push(dt);
  const column = (value: number): Float64Array => new Float64Array(dt_s.length).fill(value);
  return {
    steps: dt_s.length,
    dt_s: Float64Array.from(dt_s),
    speed_mps: column(SPEED_MPS),
    power_W: column(0),
    rise_W: column(0),
    bend_W: column(0),
    pressed: new Uint8Array(dt_s.length),
  };
}

/** The corner with pads that do not drag. */
const free = (corner: CornerModel): Stepper => ({ ...stepperOf(corner), drag_N: 0 });

/** No air, no radiation, no hub and no upright. */
const sealed = (corner: CornerModel): Stepper => ({
  ...stepperOf(corner),
  radiation: new Float64Array(5),
  hub_WpK: 0,
  mount_WpK: 0,
});

/** Air that takes nothing; a wheelhouse without flow would have no temperature, so this one keeps a little. */
const airless = (map: ConductanceMap): ConductanceMap => ({
  ...scaledMap(map, 0),
  wheelhouse: map.wheelhouse.map(() => 1),
  radiationKept: 0,
});

describe('a corner of any scenario', () => {
  it(
    'that is not braked comes to the temperature of its air',
    () => {
      expectLaw(25, (scenario) => {
        const steps = coasting();
        for (const corner of compile(scenario, { driven: scenario }).corners) {
          const stepper = free(corner);
          const map = corner.maps[0]!;
          driveLap(stepper, steps, 0, map, null, 0);
          const air_K = map.air_K[SPEED_MPS / map.speedStep_mps]!;
          for (const T of nodeTemperatures(stepper)) expect(Math.abs(T - air_K)).toBeLessThanOrEqual(0.1);
        }
      });
    },
    LAW_TIMEOUT,
  );

  it(
    'without air and radiation keeps all the heat that comes in',
    () => {
      expectLaw(500, (scenario) => {
        const model = compile(scenario, { driven: scenario });
        for (const corner of model.corners) {
          const stepper = sealed(corner);
          const before_J = storedHeat(stepper, nodeTemperatures(stepper));
          driveModel(model, corner, { stepper, maps: corner.maps.map(airless) });
          const stored_J = storedHeat(stepper, nodeTemperatures(stepper)) - before_J;
          const heat_J = stepper.booked_J[BOOK.brakeHeat]!;
          expect(Math.abs(stored_J - heat_J)).toBeLessThanOrEqual(1e-9 * heat_J + 1e-6);
        }
      });
    },
    LAW_TIMEOUT,
  );
});
