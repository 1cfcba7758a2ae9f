import psychrolib from 'psychrolib';
import { describe, expect, it } from 'vitest';
import { densityDryAir, heatCapacityAir } from '../../../engine/air/dry-air.ts';
import { densityMoistAir, humidityRatio, pressureSaturation } from '../../../engine/air/moist-air.ts';
import {
  altitudeGeopotential,
  standardAtmosphere,
  temperatureStandard,
} from '../../../engine/air/standard-atmosphere.ts';
import { celsius, kelvin } from '../../../engine/units.ts';

describe('the standard atmosphere', () => {
  it('is dry air as an ideal gas', () => {
    const { air_K, pressure_Pa, density_kgpm3 } = standardAtmosphere(1234);
    expect(densityDryAir(air_K, pressure_Pa)).toBe(density_kgpm3);
  });

  // U.S. Standard Atmosphere, 1976: base of the second layer, 216.65 K and 22632.06 Pa at 11 km geopotential.
  it('ends at the base of the next layer', () => {
    const top_m = (11_000 * 6_356_766) / (6_356_766 - 11_000);
    expect(altitudeGeopotential(top_m)).toBeCloseTo(11_000, 6);
    expect(temperatureStandard(top_m)).toBeCloseTo(216.65, 8);
    expect(standardAtmosphere(top_m).pressure_Pa).toBeCloseTo(22632.06, 1);
  });
});

describe('heat capacity of air', () => {
  it('holds its end values outside the table', () => {
    expect(heatCapacityAir(200)).toBe(1006);
    expect(heatCapacityAir(1000)).toBe(1141);
    expect(heatCapacityAir(1500)).toBe(1141);
  });

  it('is the table at its lines and between them lies between', () => {
    expect(heatCapacityAir(600)).toBe(1051);
    expect(heatCapacityAir(610)).toBeCloseTo(1053.4, 10);
  });
});

describe('moist air', () => {
  psychrolib.SetUnitSystem(psychrolib.SI);

  // psychrolib 1.1.1, an independent implementation of ASHRAE Handbook Fundamentals 2017, chapter 1.
  it('agrees with psychrolib over weather and altitude', () => {
    for (const ambient_C of [-30, -12, -0.5, 0.02, 7, 19, 28, 41, 55]) {
      for (const pressure_Pa of [70_000, 90_000, 101_325]) {
        for (const relativeHumidity of [0.05, 0.4, 1]) {
          const air_K = kelvin(ambient_C);
          const W = psychrolib.GetHumRatioFromRelHum(ambient_C, relativeHumidity, pressure_Pa);
          const expected = psychrolib.GetMoistAirDensity(ambient_C, W, pressure_Pa);
          const got = densityMoistAir({ air_K, pressure_Pa, relativeHumidity });
          expect(Math.abs(got / expected - 1)).toBeLessThan(1e-6);
        }
      }
    }
  });

  // psychrolib's own test of its density: 30 °C, W 0.02, 95461 Pa gives 1.08411986 kg/m³ (to 3e-4).
  it('is lighter the more water it holds', () => {
    const air = { air_K: kelvin(30), pressure_Pa: 95_461 };
    const vapour_Pa = (0.02 * air.pressure_Pa) / (0.621945 + 0.02);
    expect(humidityRatio(vapour_Pa, air.pressure_Pa)).toBeCloseTo(0.02, 12);
    const relativeHumidity = vapour_Pa / pressureSaturation(air.air_K);
    expect(densityMoistAir({ ...air, relativeHumidity })).toBeCloseTo(1.08411986, 4);
    expect(densityMoistAir({ ...air, relativeHumidity: 0 })).toBeCloseTo(densityDryAir(air.air_K, 95_461), 3);
  });

  it('saturates at the same pressure over ice and water at the triple point', () => {
    const [ice, water] = [273.16, 273.16001].map(pressureSaturation);
    expect((ice ?? 0) / (water ?? 1)).toBeCloseTo(1, 3);
    expect(celsius(273.16)).toBeCloseTo(0.01, 10);
  });
});
