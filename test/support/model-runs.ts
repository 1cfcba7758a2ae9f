/** Runs of a compiled corner below the scenario: its stepper and maps may be changed before they are driven. */
import type { ConductanceMap } from '../../engine/disc/conductance-map.ts';
import { driveLap } from '../../engine/disc/kernel.ts';
import { createStepper, type Stepper } from '../../engine/disc/stepper.ts';
import type { CornerModel, StintModel } from '../../engine/stint/compile.ts';

export const stepperOf = ({ spec, start }: CornerModel): Stepper => createStepper(spec, start);

/** Drives the stint with the stepper and the maps that are given, its heat times a factor. */
export function driveModel(
  { passages }: StintModel,
  { corner, shares }: CornerModel,
  { stepper, maps, heat = 1 }: { stepper: Stepper; maps: ConductanceMap[]; heat?: number },
): void {
  for (const passage of passages) {
    const ofMass = passage.kind === 'stand' ? 1 : passage.massRatio;
    const steps = passage.kind === 'stand' ? passage.plan : passage.plan.axles[corner.axle];
    driveLap(stepper, steps, heat * shares[passage.leg]! * ofMass, maps[passage.leg]!, null, 0);
  }
}
