/** Whether what a disc is said to weigh and to have rubbed can be true of its sizes: a slip of typing shows here first. */
import { faceArea, type DiscSpec } from '../disc/corner-spec.ts';
import { materials } from '../disc/materials.ts';
import { vanePassage } from '../disc/vane-passage.ts';
import { said, type Quantity, type Said } from '../said.ts';

/** Holes, slots, chamfers and what curved vanes hide. Common practice, no source [-] */
const MASS_AGREES = 0.15;
/** Rounding of the two numbers [-] */
const AREA_AGREES = 0.02;

/**
 * Mass of a ring by its sizes.
 *
 *     m = ρ (2 b π/4 (D_o² − D_i²) + V_vanes)
 *
 * @remarks
 * Full cheeks of thickness b, vanes or pillars between; a solid disc is two cheeks without a gap. Holes, slots and chamfers
 * make a ring lighter. Source: geometry.
 *
 * @param disc - the disc, its stated mass left aside
 * @returns mass [kg]
 *
 * @example
 * massBySizes({ vented: false, material: 'grey iron', outer_m: 0.3, inner_m: 0.2, cheek_m: 0.01 }) // => 5.6549
 */
export function massBySizes(disc: DiscSpec): number {
  const { density_kgpm3 } = materials[disc.material];
  // no stated mass that would cap the vanes' share of it
  const vanes_kg = vanePassage({ ...disc, ringMass_kg: Infinity }, density_kgpm3)?.vaneMass_kg ?? 0;
  return density_kgpm3 * 2 * disc.cheek_m * faceArea(disc) + vanes_kg;
}

/** A sentence for each number that the sizes of the disc do not bear out. */
export function sizeDoubts(disc: DiscSpec): Said[] {
  const found: Said[] = [];
  const mass_kg = massBySizes(disc);
  const more = disc.ringMass_kg / mass_kg - 1;
  if (Math.abs(more) > MASS_AGREES) {
    const by = `${Math.round(100 * Math.abs(more))} % ${more > 0 ? 'more' : 'less'}`;
    found.push(
      said`the ring's ${kg(disc.ringMass_kg)} is ${by} than its sizes give, ${kg(mass_kg)}; one of them is wrong`,
    );
  }
  const faces_m2 = 2 * faceArea(disc);
  if (disc.swept_m2 > (1 + AREA_AGREES) * faces_m2) {
    found.push(
      said`the swept ${cm2(disc.swept_m2)} is more than both faces of the ring have, ${cm2(faces_m2)}; one of them is wrong`,
    );
  }
  return found;
}

const kg = (mass_kg: number): Quantity => ({ value: mass_kg, unit: 'kg', digits: 1 });
const cm2 = (area_m2: number): Quantity => ({ value: 1e4 * area_m2, unit: 'cm²', digits: 0 });
