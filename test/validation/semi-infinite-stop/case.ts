import { DIFFUSIVITY, IRON } from '../../support/bare-slab.ts';
import type { Compute } from '../gate.ts';
import { stopPeak } from '../stop-peak.ts';

const slab = { thickness_m: 0.016, area_m2: 0.1 };
const FLUX = 2000;
const effusivity = Math.sqrt(IRON.k * IRON.density * IRON.c);

/** So short a stop that the back does not know of the heat yet. */
export const compute: Compute = (rows) =>
  rows.map(({ fourier = NaN }) => {
    const stop_s = (fourier * slab.thickness_m ** 2) / DIFFUSIVITY;
    const scale_K = (FLUX * Math.sqrt(stop_s)) / effusivity;
    const { peak_K, share, end_K } = stopPeak(slab, FLUX, stop_s);
    return { peak: peak_K / scale_K, peakShare: share, end: end_K / scale_K };
  });
