import { densityMoistAir, pressureSaturation } from '../../../engine/air/moist-air.ts';
import { kelvin } from '../../../engine/units.ts';
import type { Compute } from '../gate.ts';

export const compute: Compute = (rows) =>
  rows.map(({ ambient_C = NaN, pressure_Pa = NaN, relativeHumidity = NaN }) => {
    const air_K = kelvin(ambient_C);
    return {
      saturation_Pa: pressureSaturation(air_K),
      density_kgpm3: densityMoistAir({ air_K, pressure_Pa, relativeHumidity }),
    };
  });
