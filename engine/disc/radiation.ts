/** What each surface of a corner radiates, and how much of it comes back from the wheel, the backing plate and the caliper. */
import type { ValidRange } from '../valid-range.ts';
import { faceArea, type CornerSpec } from './corner-spec.ts';
import { emissivityCavity, emissivityEnclosed, STEFAN_BOLTZMANN, viewFactorRing } from './view-factor.ts';
import { wheelRadius } from './wheelhouse.ts';

/** Outer face to the inside of the wheel's disc. From memory, 40 to 90 mm [m] */
const WHEEL_DISTANCE_M = 0.06;
/** What wheel, upright and tyre keep of the radiation they meet: painted or rubber 0.9, less what their own warmth gives back. From memory [-] */
const WHEEL_KEEPS = 0.85;
/** The same of the backing plate, bare and dusty, near the disc and warm. From memory, 0.4 to 0.8 [-] */
const PLATE_KEEPS = 0.6;
/** Share of the bell's and of the caliper's surface that sees cooler things; the rest sees itself, the disc or the pads. From memory [-] */
const BELL_VIEW = 0.9;
const CALIPER_VIEW = 0.7;

/** Length of a caliper's bridge over that of its pads. From memory, 1.3 to 1.7 [-] */
const BRIDGE_REACH = 1.4;

/** Emissivities of cast iron that were measured, from polished to fully oxidised. A rubbed track is said to lie between 0.3 and 0.6. */
export const emissivityRange: ValidRange = {
  law: 'radiation of the disc',
  quantity: 'emissivity',
  unit: '',
  low: 0.21,
  high: 0.95,
  source:
    'tables of emissivity for cast iron, polished 0.21, oxidised 0.63 to 0.95; rubbed 0.3 to 0.6 from memory',
};

/** A part of what a surface sees. */
export interface Patch {
  /** Share of the radiation that meets it [-] */
  view: number;
  /** Share of what it meets that it keeps [-] */
  keeps: number;
  /** Area of the radiating surface over the patch's [-] */
  areaRatio: number;
}

/**
 * Emissivity at which a surface loses heat to surroundings of several parts, each with a share of its view.
 *
 *     ε = 1 / ((1/ε₁ − 1) + 1/Σ Xⱼ),  Xⱼ = 1 / (1/Fⱼ + (A₁/Aⱼ)(1/εⱼ − 1))
 *
 * @remarks
 * Radiosity network of diffuse grey surfaces; exchange between the parts is left out, for all are held at ambient. One part
 * that sees everything gives the two-surface enclosure. Source: Incropera & DeWitt, Fundamentals of Heat and Mass Transfer, 13.3.
 *
 * @param emissivity - of the surface itself [-]
 * @param patches - what it sees; their views add up to 1
 * @returns effective emissivity [-]
 *
 * @example
 * emissivityTowards(0.8, [{ view: 1, keeps: 0.5, areaRatio: 1 }]) // => 0.44444
 */
export function emissivityTowards(emissivity: number, patches: Patch[]): number {
  const given = patches
    .filter(({ view }) => view > 0)
    .reduce((sum, { view, keeps, areaRatio }) => sum + 1 / (1 / view + areaRatio * (1 / keeps - 1)), 0);
  return 1 / (1 / emissivity - 1 + 1 / given);
}

/** The corner's radiating surfaces: area times effective emissivity [m²] */
export interface RadiatingSurfaces {
  outerTrack: number;
  innerTrack: number;
  vaneOpenings: number;
  rim: number;
  bell: number;
  caliper: number;
}

/**
 * What each surface radiates to surroundings at ambient, as black area.
 *
 *     ε_eff A;  q = ε_eff A σ (T⁴ − T∞⁴)
 *
 * @remarks
 * Pads shadow the share `covered` of the tracks, the caliper's bridge 1.4 times as much of the edge. The outer track sees the wheel's disc at 60 mm: its open share lets the
 * rest out, the closed share gives some back. The inner track sees upright and tyre, and where the duct feeds it the near plate.
 * Source: radiosity networks of the view factors above; what the surroundings keep is from memory.
 *
 * @param spec - the corner
 * @returns black area of each surface [m²]
 *
 * @example
 * radiatingSurfaces({ disc: { vented: false, outer_m: 0.2, inner_m: 0.1, cheek_m: 0.005, emissivityTrack: 0.5, emissivityOther: 0.7 }, bell: { area_m2: 0.03, emissivity: 0.7 }, caliper: { area_m2: 0.1, emissivity: 0.8 }, wheel: { covered: 0, openShare: 1, ductOnFace: 0, loadedRadius_m: 0.3 } }).outerTrack // => 0.0117789
 */
export function radiatingSurfaces(spec: CornerSpec): RadiatingSurfaces {
  const { disc, bell, caliper, wheel } = spec;
  const seen = 1 - wheel.covered;
  const face_m2 = faceArea(disc) * seen;
  const toBarrel = disc.outer_m / 2 / wheelRadius(spec);
  const openings = openingsOf(spec);
  const free = 1 - bridgeShare(spec);
  return {
    outerTrack: face_m2 * emissivityTowards(disc.emissivityTrack, outerPatches(spec)),
    innerTrack: face_m2 * innerEmissivity(spec),
    vaneOpenings: openings.area_m2 * free * emissivityEnclosed(openings.emissivity, WHEEL_KEEPS, toBarrel),
    rim: edgeArea(spec) * free * emissivityEnclosed(disc.emissivityOther, WHEEL_KEEPS, toBarrel),
    bell: bell.area_m2 * bell.emissivity * BELL_VIEW,
    caliper: caliper.area_m2 * caliper.emissivity * CALIPER_VIEW,
  };
}

/** The same summed over what each radiating node of the network carries: face, wall, rim, bell, caliper [W/K⁴]. */
export function radiationOf(spec: CornerSpec): Float64Array {
  const { outerTrack, innerTrack, vaneOpenings, rim, bell, caliper } = radiatingSurfaces(spec);
  return Float64Array.of(outerTrack + innerTrack, vaneOpenings, rim, bell, caliper).map(
    (area_m2) => area_m2 * STEFAN_BOLTZMANN,
  );
}

/**
 * Radiation from the disc's edge to the caliper that bridges it.
 *
 *     C = σ A / (1/ε_edge + 1/ε_caliper − 1);  q = C (T_disc⁴ − T_caliper⁴)
 *
 * @remarks
 * The bridge stands over the edge, vane openings included, along 1.4 times the pads' arc, and near enough to see nothing else; over
 * the faces there are pads between. The pads' arc is the share `covered`, as of the faces. Source: near parallel surfaces, Incropera
 * & DeWitt, Fundamentals of Heat and Mass Transfer, table 13.3; the bridge's length is from memory.
 *
 * @param spec - the corner
 * @returns exchange coefficient [W/K⁴]
 *
 * @example
 * 1e10 * coefficientBridge({ disc: { vented: false, outer_m: 0.38, inner_m: 0.256, cheek_m: 0.01, emissivityOther: 0.75 }, caliper: { emissivity: 0.8 }, wheel: { covered: 0.15 } }) // => 1.7957
 */
export function coefficientBridge(spec: CornerSpec): number {
  const openings = openingsOf(spec);
  const edge_m2 = edgeArea(spec);
  const whole_m2 = edge_m2 + openings.area_m2;
  const emissivity =
    (edge_m2 * spec.disc.emissivityOther + openings.area_m2 * openings.emissivity) / whole_m2;
  return (
    STEFAN_BOLTZMANN *
    bridgeShare(spec) *
    whole_m2 *
    emissivityEnclosed(emissivity, spec.caliper.emissivity, 1)
  );
}

/** The outer face sees the wheel's disc, part of it open, and past that the barrel. */
function outerPatches(spec: CornerSpec): Patch[] {
  const { disc, wheel } = spec;
  const ring = { inner_m: disc.inner_m / 2, outer_m: disc.outer_m / 2 };
  const toWheel = viewFactorRing(ring, wheelRadius(spec), WHEEL_DISTANCE_M);
  const closed = 1 - wheel.openShare;
  const ratio = faceArea(spec.disc) / wheelArea(spec);
  return [
    { view: toWheel * wheel.openShare, keeps: 1, areaRatio: 0 },
    { view: toWheel * closed, keeps: WHEEL_KEEPS, areaRatio: closed > 0 ? ratio / closed : 0 },
    { view: 1 - toWheel, keeps: WHEEL_KEEPS, areaRatio: ratio },
  ];
}

/** The inner face sees the near plate where the duct feeds it, and upright and tyre elsewhere. */
function innerEmissivity(spec: CornerSpec): number {
  const { disc, wheel } = spec;
  const ratio = faceArea(spec.disc) / wheelArea(spec);
  const free = emissivityEnclosed(disc.emissivityTrack, WHEEL_KEEPS, ratio);
  const shut = emissivityEnclosed(disc.emissivityTrack, PLATE_KEEPS, 1);
  return free + wheel.ductOnFace * (shut - free);
}

/** The wheel's disc, its openings included [m²]. */
const wheelArea = (spec: CornerSpec): number => Math.PI * wheelRadius(spec) ** 2;

/** Share of the disc's edge under the caliper's bridge [-] */
const bridgeShare = ({ wheel }: CornerSpec): number => Math.min(1, BRIDGE_REACH * wheel.covered);

/** Edges of both cheeks [m²]. */
const edgeArea = ({ disc }: CornerSpec): number => Math.PI * disc.outer_m * 2 * disc.cheek_m;

/** The vanes' outer openings: cavities between the cheeks, open to the outside and to the bell. */
function openingsOf(spec: CornerSpec): { area_m2: number; emissivity: number } {
  const { disc } = spec;
  if (!disc.vented) return { area_m2: 0, emissivity: 0 };
  const mouths_m2 = Math.PI * (disc.outer_m + disc.inner_m) * disc.gap_m;
  return {
    area_m2: Math.PI * disc.outer_m * disc.gap_m,
    emissivity: emissivityCavity(disc.emissivityOther, mouths_m2 / (2 * faceArea(spec.disc))),
  };
}
