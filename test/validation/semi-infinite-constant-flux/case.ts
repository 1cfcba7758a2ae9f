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

const slab = { thickness_m: 0.016, area_m2: 0.1 };
/** Rises by a fraction of a kelvin [W/m²] */
const FLUX = 2000;
const effusivity = Math.sqrt(IRON.k * IRON.density * IRON.c);

/** So short that the back does not know of the heat yet. */
export const compute: Compute = (rows) =>
  rows.map(({ fourier = NaN }) => {
    const power_W = FLUX * slab.area_m2;
    const span_s = (fourier * slab.thickness_m ** 2) / DIFFUSIVITY;
    const lap = evenSteps(span_s, 800, { at: () => power_W, sum: (t) => power_W * t });
    const { face_K } = drivenSlab(slabAt(slab, ROOM_K), lap, stillMap());
    return { surface: ((face_K.at(-1)! - ROOM_K) * effusivity) / (FLUX * Math.sqrt(span_s)) };
  });
