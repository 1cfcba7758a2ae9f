/** The kernel of a compiled stint alone: every corner through every lap into columns that are there already. */
import { driveLap } from '../../engine/disc/kernel.ts';
import { createStepper } from '../../engine/disc/stepper.ts';
import type { StintModel } from '../../engine/stint/compile.ts';
import { newColumns } from '../../engine/disc/columns.ts';

/** Drives the whole stint once at each call, from its beginning. */
export function kernelOf({ passages, corners, samples }: StintModel): () => void {
  const prepared = corners.map((corner) => {
    const stepper = createStepper(corner.spec, corner.start);
    return { corner, stepper, start_J: stepper.enthalpy_J.slice(), out: newColumns(samples) };
  });
  return () => {
    for (const { corner, stepper, start_J, out } of prepared) {
      stepper.enthalpy_J.set(start_J);
      let sample = 0;
      for (const passage of passages) {
        const stands = passage.kind === 'stand';
        const share = corner.shares[passage.leg]! * (stands ? 1 : passage.massRatio);
        const steps = stands ? passage.plan : passage.plan.axles[corner.corner.axle];
        driveLap(stepper, steps, share, corner.maps[passage.leg]!, out, sample);
        sample += passage.plan.steps;
      }
    }
  };
}

/** What one of so many turns takes [ms] */
export function turn_ms(turn: () => void, turns: number): number {
  const start_ms = performance.now();
  for (let n = 0; n < turns; n++) turn();
  return (performance.now() - start_ms) / turns;
}
