import { drivenSlab, evenSteps, IRON, ROOM_K, slabAt, stillMap } from '../../support/bare-slab.ts';
import type { Compute } from '../gate.ts';

const slab = { thickness_m: 0.008, area_m2: 0.1 };
const EXCESS_K = 1;
const SIDE_WPK = 0.1;
const tau_s = (IRON.density * slab.thickness_m * slab.area_m2 * IRON.c) / (2 * SIDE_WPK);

export const compute: Compute = (rows) =>
  rows.map(({ times = NaN }) => {
    const lap = evenSteps(times * tau_s, 400, { at: () => 0, sum: () => 0 });
    const { cheek_K } = drivenSlab(slabAt(slab, ROOM_K + EXCESS_K), lap, stillMap(SIDE_WPK, SIDE_WPK));
    return { remaining: (cheek_K.at(-1)! - ROOM_K) / EXCESS_K };
  });
