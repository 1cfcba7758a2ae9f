import { evenSteps, slabSpec, stillMap } from '../../support/bare-slab.ts';
import { faceArea } from '../../../engine/disc/corner-spec.ts';
import { driveLap } from '../../../engine/disc/kernel.ts';
import { BOOK, createStepper } from '../../../engine/disc/stepper.ts';
import type { Compute } from '../gate.ts';

const AREA_M2 = 0.1;
const EMISSIVITY = 0.8;
const SURROUNDINGS_K = 298.15;
/** Short enough for the surface to keep its temperature [s] */
const BLINK_S = 1e-6;

/** What the books of a bare face show in a blink, over the area of its faces: next to nothing inside an open wheel, it sees the surroundings only. */
export const compute: Compute = (rows) =>
  rows.map(({ temperature = NaN }) => {
    const spec = slabSpec({ thickness_m: 0.008, area_m2: AREA_M2 });
    spec.disc.emissivityTrack = EMISSIVITY;
    const start = { disc_K: temperature, pad_K: SURROUNDINGS_K, caliper_K: SURROUNDINGS_K };
    const stepper = createStepper(spec, start);
    const still = stillMap();
    const map = { ...still, air_K: still.air_K.map(() => SURROUNDINGS_K) };
    driveLap(stepper, evenSteps(BLINK_S, 1, { at: () => 0, sum: () => 0 }), 0, map, null, 0);
    return { flux: stepper.booked_J[BOOK.radiation]! / (BLINK_S * 2 * faceArea(spec.disc)) };
  });
