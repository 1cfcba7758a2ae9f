import { DIFFUSIVITY, IRON } from '../../support/bare-slab.ts';
import type { Compute } from '../gate.ts';
import { stopPeak } from '../stop-peak.ts';

const FLUX = 2000;

export const compute: Compute = (rows) =>
  rows.map(({ cheek_mm = NaN, fourier = NaN }) => {
    const thickness_m = cheek_mm / 1000;
    const stop_s = (fourier * thickness_m ** 2) / DIFFUSIVITY;
    const { peak_K, share } = stopPeak({ thickness_m, area_m2: 0.1 }, FLUX, stop_s);
    return { peak: (peak_K * IRON.k) / (FLUX * thickness_m), peakShare: share };
  });
