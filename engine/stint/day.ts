/** The air of a day, from the scenario's conditions. */
import { densityMoistAir } from '../air/moist-air.ts';
import { pressureStandard } from '../air/standard-atmosphere.ts';
import type { Scenario } from '../scenario/schema.ts';
import { kelvin } from '../units.ts';

export interface Day {
  ambient_K: number;
  pressure_Pa: number;
  density_kgpm3: number;
  wet: boolean;
  /** Water in the air at the brakes when wet [kg/m³] */
  spray_kgpm3: number;
}

/** Pressure from the altitude by the standard atmosphere; density from ambient, pressure and humidity. */
export function dayOf({
  ambient_C,
  altitude_m,
  humidity_pct,
  wet,
  spray_g_per_m3,
}: Scenario['conditions']): Day {
  const ambient_K = kelvin(ambient_C);
  const pressure_Pa = pressureStandard(altitude_m);
  const density_kgpm3 = densityMoistAir({
    air_K: ambient_K,
    pressure_Pa,
    relativeHumidity: humidity_pct / 100,
  });
  return { ambient_K, pressure_Pa, density_kgpm3, wet, spray_kgpm3: spray_g_per_m3 / 1000 };
}
