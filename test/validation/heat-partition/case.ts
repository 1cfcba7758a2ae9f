import { discShare, effusivity } from '../../../engine/car/partition.ts';
import type { Compute } from '../gate.ts';

/** Two half-spaces rub with the same area. */
export const compute: Compute = (rows) =>
  rows.map(({ k_d = NaN, rho_d = NaN, c_d = NaN, k_p = NaN, rho_p = NaN, c_p = NaN }) => ({
    share: discShare(
      { effusivity: effusivity(k_d, rho_d, c_d), area_m2: 1 },
      { effusivity: effusivity(k_p, rho_p, c_p), area_m2: 1 },
    ),
  }));
