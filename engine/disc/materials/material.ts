/** What a material is to the model: density, and heat capacity and conductivity against temperature. */
import type { ValidRange } from '../../valid-range.ts';

export interface Material {
  /**
   * Density at room temperature [kg/m³]. It stays constant: a node holds its mass, whatever its volume does, and areas
   * and thicknesses are those of the cold part (iron grows by 1 % in length to 700 °C).
   */
  density_kgpm3: number;
  /** Temperatures of the table [K] */
  temperature_K: readonly number[];
  /** Specific heat capacity at those temperatures [J/(kg K)] */
  heatCapacity: readonly number[];
  /** Thermal conductivity at those temperatures [W/(m K)] */
  conductivity: readonly number[];
  /** Temperatures for which the table speaks; beyond them its end values hold [K] */
  range: ValidRange;
}

/** The range of a material's table, for the comparison with what a run reaches. */
export const tableRange = (material: string, [low, high]: [number, number], source: string): ValidRange => ({
  law: `properties of ${material}`,
  quantity: 'temperature',
  unit: 'K',
  low,
  high,
  source,
});

/**
 * A property of a material between the entries of its table; its end values beyond them.
 *
 *     y(T) = yᵢ + (yᵢ₊₁ − yᵢ) (T − Tᵢ) / (Tᵢ₊₁ − Tᵢ)
 *
 * @remarks
 * Source: straight lines between entries, as the tables of a handbook are read.
 *
 * @param material - whose table it is
 * @param values - one value an entry, in a unit of its own
 * @param temperature_K - temperature [K]
 * @returns value at that temperature [unit of the values]
 *
 * @example
 * valueAtTemperature({ temperature_K: [300, 500] }, [40, 50], 350) // => 42.5
 * valueAtTemperature({ temperature_K: [300, 500] }, [40, 50], 900) // => 50.0
 */
export function valueAtTemperature(
  material: Pick<Material, 'temperature_K'>,
  values: readonly number[],
  temperature_K: number,
): number {
  const T = material.temperature_K;
  const next = T.findIndex((entry) => entry >= temperature_K);
  if (next === 0) return values[0]!;
  if (next < 0) return values.at(-1)!;
  const share = (temperature_K - T[next - 1]!) / (T[next]! - T[next - 1]!);
  return values[next - 1]! + share * (values[next]! - values[next - 1]!);
}

/**
 * Thermal diffusivity of a material: how fast a change of temperature spreads.
 *
 *     α = k / (ρ c)
 *
 * @remarks
 * Source: Carslaw & Jaeger, Conduction of Heat in Solids, 2nd edition (1959), section 1.6.
 *
 * @param material - the material
 * @param temperature_K - temperature [K]
 * @returns diffusivity [m²/s]
 *
 * @example
 * diffusivityOf(
 *   { density_kgpm3: 7200, temperature_K: [300, 900], heatCapacity: [500, 500], conductivity: [50, 50] },
 *   400,
 * ) // => 1.38889e-5
 */
export function diffusivityOf(material: Omit<Material, 'range'>, temperature_K: number): number {
  const k = valueAtTemperature(material, material.conductivity, temperature_K);
  const c = valueAtTemperature(material, material.heatCapacity, temperature_K);
  return k / (material.density_kgpm3 * c);
}
