import { conductivityAir, densityDryAir, prandtlAir, viscosityAir } from '../../../engine/air/dry-air.ts';
import { pressureStandard } from '../../../engine/air/standard-atmosphere.ts';
import { nusseltCylinder } from '../../../engine/disc/nusselt-cylinder.ts';
import { kelvin } from '../../../engine/units.ts';
import type { Compute } from '../gate.ts';

export const compute: Compute = (rows) =>
  rows.map(({ air_mps = NaN, diameter_m = NaN, air_C = NaN, surface_C = NaN }) => {
    const film_K = kelvin((air_C + surface_C) / 2);
    const density = densityDryAir(film_K, pressureStandard(0));
    const Re = (density * air_mps * diameter_m) / viscosityAir(film_K);
    const nusselt = nusseltCylinder(Re, prandtlAir(film_K));
    return { coefficient: (nusselt * conductivityAir(film_K)) / diameter_m };
  });
