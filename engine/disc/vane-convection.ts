/** What the air in the passages of a vented disc takes from its walls. */
import { viscosityAir } from '../air/dry-air.ts';
import { kelvin } from '../units.ts';
import type { DiscSpec } from './corner-spec.ts';
import { filmAir, type FilmAir } from './film-air.ts';
import { materials, type MaterialName } from './materials.ts';
import { nusseltCylinder } from './nusselt-cylinder.ts';
import { blendConvection } from './nusselt-face.ts';
import { conductanceWarmingAir, efficiencyVane, enhancementRotation, nusseltVanes } from './nusselt-vane.ts';
import type { VanePassage } from './vane-passage.ts';

export interface VaneAir {
  /** Through all passages together, either way [kg/s] */
  vane_kgps: number;
  wheel_radps: number;
  wall_K: number;
  /** As it enters [K] */
  air_K: number;
  /** As it enters [kg/m³] */
  density_kgpm3: number;
  /** Convection of a free face at rest [W/(m² K)] */
  still: number;
}

/** Convection inside vanes at rest over that of a free face. From memory [-] */
const STANDING_VANES = 0.3;

/**
 * Conductance of all vane passages together, on the difference of wall and entering air.
 *
 *     G = (G_moving³ + G_still³)^(1/3);  G_moving = ṁ c_p (1 − e^(−Σ h A/ṁ c_p))
 *
 * @remarks
 * Vanes and walls by `nusseltVanes` and `enhancementRotation`; round pillars as cylinders in cross flow. Vanes and pillars count as fins. Properties
 * at the film temperature of entering air and wall. Never falls with flow.
 * Source: the laws named in the functions it joins; convection in vanes at rest from memory.
 *
 * @param disc - the disc: enhancement, vane thickness, gap and material
 * @param passage - its passages
 * @param at - flow [kg/s], wheel speed [rad/s], wall and air temperatures [K], density of the air [kg/m³]
 * @param film - over the walls, where it is known already
 * @returns conductance [W/K]
 *
 * @example
 * vaneConductance({ vaneEnhancement: 1.75, material: 'grey iron', vane_m: 0.005, gap_m: 0.015 },
 *   { length_m: 0.06, flowArea_m2: 0.009, entryArea_m2: 0.006, hydraulicDiameter_m: 0.014, wallArea_m2: 0.08,
 *     vaneArea_m2: 0.1, pillar_m: null, vaneMass_kg: 1.5 },
 *   { vane_kgps: 0.1, wheel_radps: 150, wall_K: 700, air_K: 300, density_kgpm3: 1.17, still: 4 }) // => 23.797
 */
export function vaneConductance(
  disc: VaneWalls,
  passage: VanePassage,
  at: VaneAir,
  film = filmAir(at.wall_K, at.air_K),
): number {
  const { flow_WpK, wetted_WpK } = vaneConvection(disc, passage, at, film);
  const moving = conductanceWarmingAir(flow_WpK, wetted_WpK);
  return blendConvection(moving, STANDING_VANES * wetted(disc, passage, { wall: at.still, vane: at.still }));
}

/** What the conductance of the vanes is made of. */
export interface VaneConvection {
  /** Coefficients on the cheek walls, and on vanes or pillars [W/(m² K)] */
  wall: number;
  vane: number;
  /** Coefficients times areas, vanes and pillars as fins [W/K] */
  wetted_WpK: number;
  /** Heat capacity of the air that passes [W/K] */
  flow_WpK: number;
}

/** The parts of `vaneConductance`, for who follows it. */
export function vaneConvection(
  disc: VaneWalls,
  passage: VanePassage,
  at: VaneAir,
  film = filmAir(at.wall_K, at.air_K),
): VaneConvection {
  const h = coefficients(disc, passage, at, film);
  return {
    wall: h.wall,
    vane: h.vane,
    wetted_WpK: wetted(disc, passage, h),
    flow_WpK: at.vane_kgps * film.heatCapacity,
  };
}

const wetted = (disc: VaneWalls, passage: VanePassage, h: { wall: number; vane: number }): number =>
  h.wall * passage.wallArea_m2 + h.vane * finEfficiency(disc, passage, h.vane) * passage.vaneArea_m2;

export type VaneWalls = Pick<DiscSpec, 'vaneEnhancement' | 'material' | 'vane_m' | 'gap_m'>;

/** On the cheek walls, and on vanes or pillars [W/(m² K)] */
function coefficients(
  { vaneEnhancement }: VaneWalls,
  passage: VanePassage,
  at: VaneAir,
  { k, Pr, dynamic }: FilmAir,
): { wall: number; vane: number } {
  const d = passage.hydraulicDiameter_m;
  const perLength = at.vane_kgps / passage.flowArea_m2 / dynamic;
  const enhancement = vaneEnhancement * enhancementRotation(rotationNumber(passage, at));
  const walls = { diameterOverLength: d / passage.length_m, enhancement };
  const wall = (nusseltVanes(perLength * d, Pr, walls) * k) / d;
  if (passage.pillar_m === null) return { wall, vane: wall };
  return { wall, vane: (nusseltCylinder(perLength * passage.pillar_m, Pr) * k) / passage.pillar_m };
}

/**
 * Reynolds number of a flow through passages, on a length.
 *
 *     Re = (ṁ/A) L / μ
 *
 * @remarks
 * Viscosity at film temperature. On the hydraulic diameter for passages, on the diameter for pillars.
 * Source: definition.
 *
 * @param flow - mass flow [kg/s], area of all passages together [m²], film temperature [K]
 * @param length_m - the length it refers to [m]
 * @returns Reynolds number [-]
 *
 * @example
 * reynoldsFlow({ kgps: 0.1, area_m2: 0.01, film_K: 300 }, 0.014) // => 7584.0
 */
export function reynoldsFlow(
  flow: { kgps: number; area_m2: number; film_K: number },
  length_m: number,
): number {
  return ((flow.kgps / flow.area_m2) * length_m) / viscosityAir(flow.film_K);
}

/**
 * Rotation number of the passages: the speed at which they turn over the speed of the air in them.
 *
 *     Ro = ω d / V,  V = ṁ/(ρ A)
 *
 * @remarks
 * Infinite where no air flows. Source: definition, in the literature on rotating passages.
 *
 * @param passage - hydraulic diameter [m], area of all passages together [m²]
 * @param at - flow [kg/s], density [kg/m³], wheel speed [rad/s]
 * @returns rotation number [-]
 *
 * @example
 * rotationNumber({ hydraulicDiameter_m: 0.014, flowArea_m2: 0.009 },
 *   { vane_kgps: 0.1, density_kgpm3: 1.17, wheel_radps: 150 }) // => 0.2211
 */
export function rotationNumber(
  passage: Pick<VanePassage, 'hydraulicDiameter_m' | 'flowArea_m2'>,
  at: Pick<VaneAir, 'vane_kgps' | 'density_kgpm3' | 'wheel_radps'>,
): number {
  const turning = at.wheel_radps * passage.hydraulicDiameter_m * at.density_kgpm3 * passage.flowArea_m2;
  return turning > 0 ? turning / at.vane_kgps : 0;
}

/** A pillar is a pin fin: √(4h/(k D)) is a plane fin's √(2h/(k t)) at t = D/2. */
function finEfficiency(disc: VaneWalls, { pillar_m }: VanePassage, h: number): number {
  const thickness_m = pillar_m === null ? disc.vane_m : pillar_m / 2;
  return efficiencyVane(h, vaneConductivity(disc.material) * thickness_m, disc.gap_m / 2);
}

/** Where the material's conductivity is taken: it moves a fin's efficiency by a percent or two. */
const VANE_K = kelvin(500);

function vaneConductivity(name: MaterialName): number {
  const { temperature_K, conductivity } = materials[name];
  return conductivity[temperature_K.findIndex((T) => T >= VANE_K)] ?? conductivity[0]!;
}
