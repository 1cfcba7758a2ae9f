/** The kernel on a car that only stands: no stint is without laps, so this goes below the scenario. */
import type { ConductanceMap } from '../../engine/disc/conductance-map.ts';
import type { CornerColumns } from '../../engine/disc/columns.ts';
import { driveLap } from '../../engine/disc/kernel.ts';
import { BOOK, createStepper, nodeTemperatures, storedHeat } from '../../engine/disc/stepper.ts';
import type { Scenario } from '../../engine/scenario/schema.ts';
import { compile } from '../../engine/stint/compile.ts';
import type { Ledger } from '../../engine/stint/result.ts';
import { newColumns } from '../../engine/disc/columns.ts';
import { planStand } from '../../engine/stint/steps.ts';

export interface Stood {
  ledger: Ledger;
  before_K: Float64Array;
  after_K: Float64Array;
  /** One entry a step of the stand; the last is its end. */
  columns: CornerColumns;
}

/** Every corner of a scenario standing for a while from its start temperatures. */
export function stand(scenario: Scenario, duration_s: number, brakeHeld: boolean): Stood[] {
  return compile(scenario).corners.map(({ spec, start, maps }) => {
    const stepper = createStepper(spec, start);
    const before_K = nodeTemperatures(stepper);
    const plan = planStand(duration_s, brakeHeld, 1);
    const columns = newColumns(plan.steps);
    driveLap(stepper, plan, 0, maps[0] as ConductanceMap, columns, -1);
    const after_K = nodeTemperatures(stepper);
    const stored = storedHeat(stepper, after_K) - storedHeat(stepper, before_K);
    const book = (kind: keyof typeof BOOK): number => stepper.booked_J[BOOK[kind]]!;
    const losses = {
      faceAir: book('faceAir'),
      vaneAir: book('vaneAir'),
      otherAir: book('otherAir'),
      radiation: book('radiation'),
      conducted: book('conducted'),
    };
    const lost = Object.values(losses).reduce((sum, loss) => sum + loss, 0);
    const brakeHeat = book('brakeHeat');
    return {
      before_K,
      after_K,
      columns,
      ledger: { brakeHeat, stored, ...losses, residual: brakeHeat - stored - lost },
    };
  });
}
