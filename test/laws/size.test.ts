import { expect, it } from 'vitest';
import { nodeTemperatures } from '../../engine/disc/stepper.ts';
import { compile } from '../../engine/stint/compile.ts';
import { scaledMap, scaledStepper } from '../support/doubled.ts';
import { expectLaw, LAW_TIMEOUT } from '../support/law-runs.ts';
import { driveModel, stepperOf } from '../support/model-runs.ts';

/** Rounding of a stint of some hundred steps [K] */
const SAME_K = 1e-9;

it.each([2, 0.5])(
  'everything times %d (capacities, conductances, areas, flows, heats) changes no temperature',
  (factor) => {
    expectLaw(200, (scenario) => {
      const model = compile(scenario, { driven: scenario });
      for (const corner of model.corners) {
        const usual = stepperOf(corner);
        driveModel(model, corner, { stepper: usual, maps: corner.maps });
        const stepper = scaledStepper(stepperOf(corner), factor);
        const maps = corner.maps.map((map) => scaledMap(map, factor));
        driveModel(model, corner, { stepper, maps, heat: factor });
        const expected = nodeTemperatures(usual);
        nodeTemperatures(stepper).forEach((T, node) => {
          expect(Math.abs(T - expected[node]!)).toBeLessThanOrEqual(SAME_K);
        });
      }
    });
  },
  LAW_TIMEOUT,
);
