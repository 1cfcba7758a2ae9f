/** How the heat of friction is shared between disc and pads where a scenario does not say. */
import { discShare, effusivity } from '../car/partition.ts';
import { kelvin } from '../units.ts';
import type { CornerSpec } from './corner-spec.ts';
import { materials } from './materials.ts';
import { valueAtTemperature } from './materials/material.ts';

/** Temperature of the contact at which effusivities are taken: the middle of a race disc's range. [K] */
const CONTACT_K = kelvin(400);

/**
 * Share of the friction heat that is made on the disc, by effusivity and area at 400 °C.
 *
 *     γ = ξ_d S_d / (ξ_d S_d + ξ_p S_p),   ξ = √(k ρ c)
 *
 * @remarks
 * The pads' conductivity is the scenario's, their density and heat capacity those of their kind. Between 20 and 700 °C the
 * share of iron moves by 0.002. Source: as `discShare`.
 *
 * @param spec - the corner; disc material, swept area of both faces and the pads count
 * @returns share made on the disc [-]
 *
 * @example
 * heatToDisc({
 *   disc: { material: 'grey iron', swept_m2: 0.124 },
 *   pad: { material: 'semi-metallic', area_m2: 0.0092, conductivity: 2.5 },
 * }) // => 0.97407
 */
export function heatToDisc({
  disc,
  pad,
}: {
  disc: Pick<CornerSpec['disc'], 'material' | 'swept_m2'>;
  pad: Pick<CornerSpec['pad'], 'material' | 'area_m2' | 'conductivity'>;
}): number {
  return discShare(
    { effusivity: effusivityOf(disc.material), area_m2: disc.swept_m2 },
    { effusivity: effusivityOf(pad.material, pad.conductivity), area_m2: 2 * pad.area_m2 },
  );
}

function effusivityOf(name: keyof typeof materials, conductivity?: number): number {
  const material = materials[name];
  const at = (values: readonly number[]): number => valueAtTemperature(material, values, CONTACT_K);
  return effusivity(
    conductivity ?? at(material.conductivity),
    material.density_kgpm3,
    at(material.heatCapacity),
  );
}
