/**
 * The thermal network of one corner: nodes, their masses and materials, and the links between them.
 *
 * The two cheeks of a disc are alike, so one representative cheek stands for both: its nodes carry the mass and area of
 * both. The links form a tree with the rubbed face as its root. Two chains lead to it, from the fluid and from the vanes' wall:
 * along each the parent of a node is the next one, and the last of each is linked to the face.
 *
 *     fluid ─ caliper ─ plate ─ pad ─ pad face ─ FACE ─ c1 ─ c2 ─ c3 ─ c4 ─ c5 ─ wall ─ bell
 *                                                                 │
 *                                                                rim
 */
import { cheekGaps, cheekShares } from './cheek-mesh.ts';
import type { CornerSpec } from './corner-spec.ts';
import { enthalpyTable } from './enthalpy-table.ts';
import { materials, type MaterialName } from './materials.ts';
import { conductanceShimmed } from './shim.ts';

export const NODE = {
  bell: 0,
  fluid: 1,
  caliper: 2,
  plate: 3,
  pad: 4,
  padFace: 5,
  rim: 6,
  wall: 7,
  /** c3 */
  rimJoins: 10,
  face: 13,
} as const;
export const NODES = 14;
/** Nodes from this one on are of the cast ring: their links run between conduction potentials. */
export const CAST = NODE.rim;
/** Different materials of one corner at most. */
export const MATERIALS = 6;
/** Nodes through the cheek from the rubbed face to the vanes' wall. */
export const CHEEK = Int32Array.of(13, 12, 11, 10, 9, 8, 7);
/** Depth of the pad that follows the rubbed surface within a stop [m] */
const PAD_SKIN_M = 0.003;
/** Radial width of the edge that counts as rim [m] */
const RIM_M = 0.003;

export interface Network {
  /** Mass of each node [kg] */
  mass_kg: Float64Array;
  /** Which table each node uses, and where it starts in the joined tables. */
  material: MaterialName[];
  /**
   * Link of each node to its parent: W/K between temperatures, but m between conduction potentials for the links
   * inside the cast ring (rim and cheek nodes).
   */
  link: Float64Array;
  /** Share of the cheek's mass in each of its nodes, face first and vanes included in the last. */
  cheekShare: Float64Array;
  /** Conductance of the pads pressed on the disc [W/K] */
  pressed_WpK: number;
}

/** Masses and links of one corner. */
export function buildNetwork(spec: CornerSpec): Network {
  const { disc, bell, pad, caliper, fluid } = spec;
  const iron = materials[disc.material];
  const rim_kg = rimMass(disc, iron.density_kgpm3);
  // the rubbed area carries the flux; what the ring weighs beyond its cheeks there and its edge stands in the vanes
  const area_m2 = disc.swept_m2;
  const cheek_kg = Math.min(iron.density_kgpm3 * disc.cheek_m * area_m2, disc.ringMass_kg - rim_kg);
  const vanes_kg = disc.ringMass_kg - rim_kg - cheek_kg;
  const gaps = cheekGaps(disc.cheek_m, CHEEK.length);

  const mass_kg = new Float64Array(NODES);
  const link = new Float64Array(NODES);
  gaps.forEach((gap, i) => (link[CHEEK[i + 1]!] = area_m2 / gap));
  cheekShares(gaps).forEach((share, i) => (mass_kg[CHEEK[i]!] = share * cheek_kg));
  mass_kg[NODE.wall]! += vanes_kg;
  const cheekShare = Float64Array.from(CHEEK, (node) => mass_kg[node]! / (cheek_kg + vanes_kg));

  mass_kg[NODE.rim] = rim_kg;
  link[NODE.rim] = (2 * Math.PI * (disc.outer_m / 2) * 2 * disc.cheek_m) / (2 * RIM_M);
  mass_kg[NODE.bell] = bell.mass_kg;
  link[NODE.bell] = bell.joint_WpK;

  const pads_m2 = 2 * pad.area_m2;
  const skin_m = Math.min(PAD_SKIN_M, pad.thickness_m / 2);
  const mix = materials[pad.material];
  mass_kg[NODE.padFace] = mix.density_kgpm3 * pads_m2 * skin_m;
  mass_kg[NODE.pad] = mix.density_kgpm3 * pads_m2 * (pad.thickness_m - skin_m);
  mass_kg[NODE.plate] = materials.steel.density_kgpm3 * pads_m2 * pad.plate_m;
  mass_kg[NODE.caliper] = caliper.mass_kg;
  mass_kg[NODE.fluid] = materials.fluid.density_kgpm3 * fluid.volume_m3;
  link[NODE.padFace] = (AIR_GAP_CONDUCTIVITY * pads_m2) / pad.runningGap_m;
  link[NODE.pad] = (pad.conductivity * pads_m2) / (pad.thickness_m / 2);
  link[NODE.plate] =
    pads_m2 / ((pad.thickness_m - skin_m) / (2 * pad.conductivity) + pad.plate_m / (2 * PLATE_CONDUCTIVITY));
  link[NODE.caliper] = conductanceShimmed(caliper.piston_WpK, pad.shim_m, pads_m2);
  link[NODE.fluid] = fluid.coupling_WpK;

  const material: MaterialName[] = new Array<MaterialName>(NODES).fill(disc.material);
  material[NODE.bell] = bell.material;
  material[NODE.fluid] = 'fluid';
  material[NODE.caliper] = 'aluminium';
  material[NODE.plate] = 'steel';
  material[NODE.pad] = pad.material;
  material[NODE.padFace] = pad.material;
  return { mass_kg, material, link, cheekShare, pressed_WpK: PRESSED_CONTACT * pads_m2 };
}

/** Conductivity of a backing plate at 250 °C. Source: EN 1993-1-2:2005, 3.4.1.3 [W/(m K)] */
const PLATE_CONDUCTIVITY = 45.7;
/** Conductivity of the air in the running gap, about 300 °C. From memory [W/(m K)] */
const AIR_GAP_CONDUCTIVITY = 0.045;
/** Contact conductance of a pad pressed on a disc: what keeps both rubbed surfaces near one temperature. From memory, 2000 to 10 000 [W/(m² K)] */
const PRESSED_CONTACT = 6000;

/** Most of a ring that counts as its edge: where a stated mass is too small for the stated sizes, a cheek is left over. [-] */
const MOST_RIM = 0.2;

function rimMass(disc: CornerSpec['disc'], density_kgpm3: number): number {
  const edge_kg = density_kgpm3 * Math.PI * disc.outer_m * RIM_M * 2 * disc.cheek_m;
  return Math.min(edge_kg, MOST_RIM * disc.ringMass_kg);
}

/** The tables of all materials of a network joined into one array, for the stepper. */
export interface JoinedTables {
  /** Temperature and conduction potential in turn, entry by entry, table after table [K], [W/m] */
  entries: Float64Array;
  /** Start of each node's table in `entries`. */
  offset: Int32Array;
  /** Cells of its table per joule of each node [1/J] */
  cellsPerJoule: Float64Array;
}

export function joinTables(network: Network): JoinedTables {
  const names = [...new Set(network.material)];
  const tables = names.map(enthalpyTable);
  const size = 2 * tables[0]!.temperature_K.length;
  const entries = new Float64Array(size * names.length);
  tables.forEach(({ temperature_K, potential }, table) => {
    for (let i = 0, at = table * size; i < temperature_K.length; i++) {
      entries[at++] = temperature_K[i]!;
      entries[at++] = potential[i]!;
    }
  });
  const index = network.material.map((name) => names.indexOf(name));
  return {
    entries,
    offset: Int32Array.from(index, (i) => i * size),
    cellsPerJoule: network.mass_kg.map((mass, node) => 1 / (mass * tables[index[node]!]!.step_Jpkg)),
  };
}
