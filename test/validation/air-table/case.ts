import { conductivityAir, densityDryAir, prandtlAir, viscosityAir } from '../../../engine/air/dry-air.ts';
import { pressureStandard } from '../../../engine/air/standard-atmosphere.ts';
import type { Compute } from '../gate.ts';

export const compute: Compute = (rows) =>
  rows.map(({ air_K = NaN }) => ({
    density_kgpm3: densityDryAir(air_K, pressureStandard(0)),
    viscosity_Pas: viscosityAir(air_K),
    conductivity_WpmK: conductivityAir(air_K),
    prandtl: prandtlAir(air_K),
  }));
