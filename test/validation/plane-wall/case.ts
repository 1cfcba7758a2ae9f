import {
  DIFFUSIVITY,
  drivenSlab,
  evenSteps,
  IRON,
  ROOM_K,
  slabAt,
  stillMap,
} from '../../support/bare-slab.ts';
import type { Compute } from '../gate.ts';

const slab = { thickness_m: 0.008, area_m2: 0.1 };
const EXCESS_K = 1;

export const compute: Compute = (rows) =>
  rows.map(({ Bi = NaN, Fo = NaN }) => {
    const face_WpK = (Bi * IRON.k * slab.area_m2) / slab.thickness_m;
    const span_s = (Fo * slab.thickness_m ** 2) / DIFFUSIVITY;
    const lap = evenSteps(span_s, 800, { at: () => 0, sum: () => 0 });
    const stepper = slabAt(slab, ROOM_K + EXCESS_K);
    const { face_K, wall_K } = drivenSlab(stepper, lap, stillMap(face_WpK));
    return {
      cooled: (face_K.at(-1)! - ROOM_K) / EXCESS_K,
      insulated: (wall_K.at(-1)! - ROOM_K) / EXCESS_K,
    };
  });
