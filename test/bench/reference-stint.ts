/** The stint that all is measured on, and the changes a hand makes to it. */
import { withChanges } from '../../engine/scenario/changes.ts';
import type { Scenario } from '../../engine/scenario/schema.ts';
import { referenceStints } from '../validation/whole-stint/stints.ts';

/** The heavy car, 20 laps of the long circuit and ten minutes of standing; its answer is committed. */
export const REFERENCE = 0;
export const referenceStint = (): Scenario => referenceStints()[REFERENCE]!.scenario;

const blanking = (time: number): number => 20 + ((time * 0.3713) % 60);

/** No two alike: the engine remembers what it has compiled. */
export const changes: Record<
  'one blanking' | 'both blankings' | 'car' | 'circuit',
  (time: number) => Scenario
> = {
  'one blanking': (time) => withChanges(referenceStint(), { 'blanking_pct.front': blanking(time) }),
  'both blankings': (time) =>
    withChanges(referenceStint(), {
      'blanking_pct.front': blanking(time),
      'blanking_pct.rear': blanking(time + 0.5),
    }),
  car: (time) => {
    const { mass_kg, loaded_radius_m } = referenceStint().car;
    return withChanges(referenceStint(), {
      'car.mass_kg': mass_kg + time * 0.01,
      'car.loaded_radius_m': loaded_radius_m + time * 1e-6,
    });
  },
  circuit: (time) => {
    const stint = referenceStint();
    const segments = stint.circuit.segments.map((one) => ({
      ...one,
      length_m: one.length_m * (1 + time * 1e-6),
    }));
    return { ...stint, circuit: { ...stint.circuit, segments } };
  },
};
