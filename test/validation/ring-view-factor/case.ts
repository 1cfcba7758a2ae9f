import { viewFactorRing } from '../../../engine/disc/view-factor.ts';
import type { Compute } from '../gate.ts';

export const compute: Compute = (rows) =>
  rows.map(({ inner_m = NaN, outer_m = NaN, disc_m = NaN, distance_m = NaN }) => {
    const share = viewFactorRing({ inner_m, outer_m }, disc_m, distance_m);
    return { quadrature: share, handbook: share };
  });
