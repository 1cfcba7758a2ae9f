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
const FLUX = 2000;
const STOP_FOURIER = 0.8680555625;
const scale_K = (FLUX * slab.thickness_m) / IRON.k;
const stop_s = (STOP_FOURIER * slab.thickness_m ** 2) / DIFFUSIVITY;

export const compute: Compute = (rows) =>
  rows.map(({ share = NaN }) => {
    const first_W = FLUX * slab.area_m2;
    const lap = evenSteps(share * stop_s, 800, {
      at: (t) => first_W * (1 - t / stop_s),
      sum: (t) => first_W * (t - t ** 2 / (2 * stop_s)),
    });
    const { face_K, wall_K } = drivenSlab(slabAt(slab, ROOM_K), lap, stillMap());
    const surface = (face_K.at(-1)! - ROOM_K) / scale_K;
    return { early: surface, surface, back: (wall_K.at(-1)! - ROOM_K) / scale_K };
  });
