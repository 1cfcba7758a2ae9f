import { conductivityAir, viscosityAir } from '../../../engine/air/dry-air.ts';
import { standardAtmosphere } from '../../../engine/air/standard-atmosphere.ts';
import type { Compute } from '../gate.ts';

export const compute: Compute = (rows) =>
  rows.map(({ altitude_m = NaN }) => {
    const { air_K, pressure_Pa, density_kgpm3 } = standardAtmosphere(altitude_m);
    return {
      air_K,
      pressure_Pa,
      density_kgpm3,
      viscosity_Pas: viscosityAir(air_K),
      conductivity_WpmK: conductivityAir(air_K),
    };
  });
