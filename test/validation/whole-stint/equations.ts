/**
 * The equations of one corner, written a second time: temperatures as state, every law called where it is needed, no map,
 * no table, no mean of a step. Only the laws themselves, masses and links are the engine's.
 */
import { densityDryAir } from '../../../engine/air/dry-air.ts';
import { bellConductance, caliperConductance } from '../../../engine/disc/body-convection.ts';
import { cheekGaps, cheekShares } from '../../../engine/disc/cheek-mesh.ts';
import { effectiveRadius } from '../../../engine/disc/corner-spec.ts';
import { faceConductance, rimConductance } from '../../../engine/disc/face-convection.ts';
import { heatToDisc } from '../../../engine/disc/heat-split.ts';
import { materials, type MaterialName } from '../../../engine/disc/materials.ts';
import { valueAtTemperature } from '../../../engine/disc/materials/material.ts';
import { buildNetwork, CHEEK, NODE } from '../../../engine/disc/network.ts';
import { coefficientBridge, radiationOf } from '../../../engine/disc/radiation.ts';
import { effectiveSpray } from '../../../engine/disc/spray.ts';
import { vaneConductance } from '../../../engine/disc/vane-convection.ts';
import { vanePassage } from '../../../engine/disc/vane-passage.ts';
import { capacityBuoyant, capacityDriven, shareRadiationKept } from '../../../engine/disc/wheelhouse.ts';
import { solveAirPath } from '../../../engine/duct/network.ts';
import type { CornerModel } from '../../../engine/stint/compile.ts';
import { airPathOf, blankingAt } from '../../../engine/stint/corners.ts';
import { dayOf } from '../../../engine/stint/day.ts';
import type { Scenario } from '../../../engine/scenario/schema.ts';
import { potentialOf } from './potential.ts';

/** What the car does to its brakes at a moment. */
export interface Moment {
  speed_mps: number;
  /** Heat made at this corner by braking [W] */
  braking_W: number;
  pressed: boolean;
}

export interface Equations {
  /** Temperature of each node as the stint begins [K] */
  start_K: number[];
  /** How fast each node warms [K/s] */
  rates: (T: number[], at: Moment) => number[];
  /** Temperatures as the engine's columns have them [K] */
  columns: (T: number[]) => Columns;
  face: number;
}

export const COLUMNS = ['face', 'cheek', 'wall', 'rim', 'bell', 'pad', 'caliper', 'fluid'] as const;
export type Columns = Record<(typeof COLUMNS)[number], number>;

/** Gaps between the nodes of a cheek [m], and how much of the cheek each node stands for [-]. */
export interface Mesh {
  gaps: number[];
  shares: number[];
}

const SHIPPED_NODES = CHEEK.length;
/** The engine's own mesh. */
const shippedMesh = (cheek_m: number): Mesh => {
  const gaps = cheekGaps(cheek_m, SHIPPED_NODES);
  return { gaps, shares: cheekShares(gaps) };
};

/** Many nodes, their shares by the trapezoidal rule: to estimate what the engine's few nodes cost. */
export function fineMesh(cheek_m: number, nodes = 24, growth = 1.08): Mesh {
  const lengths = Array.from({ length: nodes - 1 }, (_, i) => growth ** i);
  const whole = lengths.reduce((sum, length) => sum + length, 0);
  const gaps = lengths.map((length) => (length * cheek_m) / whole);
  const half = (i: number): number => (gaps[i] ?? 0) / 2;
  return { gaps, shares: Array.from({ length: nodes }, (_, i) => (half(i - 1) + half(i)) / cheek_m) };
}

/** Temperatures that the laws are asked for at most; nothing that is kept comes near [K] */
const TRIED_K = { low: 150, high: 3000 };
/** Spray boils at full rate on a surface so much above ambient [K] */
const SPRAY_SCALE_K = 80;

/** Numbers of the nodes; the cheek's follow. */
const [RIM, BELL, FLUID, CALIPER, PLATE, PAD, PAD_FACE, FACE] = [0, 1, 2, 3, 4, 5, 6, 7];

interface Link {
  from: number;
  to: number;
  /** Between temperatures [W/K], or between conduction potentials of the disc's material [m] */
  conductance: number;
  cast: boolean;
}

interface Bodies {
  mass_kg: number[];
  material: MaterialName[];
  links: Link[];
  /** Of the cheek's mass, vanes in the last [-] */
  cheekShares: number[];
  pressed_WpK: number;
  wall: number;
}

/** Masses and links, on any mesh through the cheek. */
function bodiesOf({ spec }: CornerModel, { gaps, shares }: Mesh): Bodies {
  const network = buildNetwork(spec);
  const wall = FACE + gaps.length;
  const vanes_kg = vanePassage(spec.disc, materials[spec.disc.material].density_kgpm3)?.vaneMass_kg ?? 0;
  const cheek_kg = CHEEK.reduce((sum, node) => sum + network.mass_kg[node]!, 0) - vanes_kg;
  const area_m2 = cheek_kg / (materials[spec.disc.material].density_kgpm3 * spec.disc.cheek_m);
  const cheek = shares.map((share, i) => share * cheek_kg + (i === gaps.length ? vanes_kg : 0));
  const shippedDepth = cheekGaps(spec.disc.cheek_m, SHIPPED_NODES).slice(0, 3);
  const joins =
    FACE +
    nearest(
      gaps,
      shippedDepth.reduce((sum, gap) => sum + gap, 0),
    );
  const outside = [NODE.rim, NODE.bell, NODE.fluid, NODE.caliper, NODE.plate, NODE.pad, NODE.padFace];
  const link = (from: number, to: number, conductance: number, cast = false): Link => ({
    from,
    to,
    conductance,
    cast,
  });
  return {
    mass_kg: [...outside.map((node) => network.mass_kg[node]!), ...cheek],
    material: [...outside.map((node) => network.material[node]!), ...cheek.map(() => spec.disc.material)],
    links: [
      link(RIM, joins, network.link[NODE.rim]!, true),
      link(BELL, wall, network.link[NODE.bell]!),
      link(FLUID, CALIPER, network.link[NODE.fluid]!),
      link(CALIPER, PLATE, network.link[NODE.caliper]!),
      link(PLATE, PAD, network.link[NODE.plate]!),
      link(PAD, PAD_FACE, network.link[NODE.pad]!),
      link(PAD_FACE, FACE, network.link[NODE.padFace]!),
      ...gaps.map((gap, i) => link(FACE + i, FACE + i + 1, area_m2 / gap, true)),
    ],
    cheekShares: cheek.map((mass) => mass / (cheek_kg + vanes_kg)),
    pressed_WpK: network.pressed_WpK,
    wall,
  };
}

/** The node nearest to a depth. */
function nearest(gaps: number[], depth_m: number): number {
  let [best, at, least] = [0, 0, depth_m];
  gaps.forEach((gap, i) => {
    at += gap;
    if (Math.abs(at - depth_m) < least) [best, least] = [i + 1, Math.abs(at - depth_m)];
  });
  return best;
}

/** The equations of a corner in clear air with the blanking of the scenario. */
export function equationsOf(scenario: Scenario, corner: CornerModel, mesh?: Mesh): Equations {
  const { spec } = corner;
  const bodies = bodiesOf(corner, mesh ?? shippedMesh(spec.disc.cheek_m));
  const { mass_kg, material, links, wall } = bodies;
  const convection = convectionOf(scenario, corner);
  const ambient_K = dayOf(scenario.conditions).ambient_K;
  const radiating = [FACE, wall, RIM, BELL, CALIPER];
  const radiation = radiationOf(spec);
  const bridge = coefficientBridge(spec);
  const potential = potentialOf(materials[spec.disc.material]);
  const toDisc = spec.pad.discShare ?? heatToDisc(spec);
  const drag_N = (spec.pad.drag_N * effectiveRadius(spec.disc)) / spec.wheel.loadedRadius_m;
  const kept = shareRadiationKept(spec.wheel.openShare);

  const rates = (tried: number[], at: Moment): number[] => {
    // the integrator tries steps that are far too long and throws them away: the laws must not be asked below zero
    const T = tried.map((one) => Math.min(Math.max(one, TRIED_K.low), TRIED_K.high));
    const heat = T.map(() => 0);
    for (const { from, to, conductance, cast } of links) {
      const pressed = from === PAD_FACE && at.pressed;
      const drop = cast ? potential(T[from]!) - potential(T[to]!) : T[from]! - T[to]!;
      const flux = (pressed ? bodies.pressed_WpK : conductance) * drop;
      heat[from]! -= flux;
      heat[to]! += flux;
    }
    let radiated = 0;
    radiating.forEach((node, i) => {
      const power = radiation[i]! * (T[node]! ** 4 - ambient_K ** 4);
      heat[node]! -= power;
      radiated += power;
    });
    const across = bridge * (T[RIM]! ** 4 - T[CALIPER]! ** 4);
    heat[RIM]! -= across;
    heat[CALIPER]! += across;
    const surfaces = { face: T[FACE]!, wall: T[wall]!, rim: T[RIM]!, bell: T[BELL]!, caliper: T[CALIPER]! };
    const taken = convection(surfaces, at.speed_mps, kept * radiated);
    heat[FACE]! -= taken.face;
    heat[wall]! -= taken.wall;
    heat[RIM]! -= taken.rim;
    heat[BELL]! -= taken.bell + spec.bell.hub_WpK * (T[BELL]! - ambient_K);
    heat[CALIPER]! -= taken.caliper + spec.caliper.mount_WpK * (T[CALIPER]! - ambient_K);
    const friction_W = at.braking_W + drag_N * at.speed_mps;
    heat[FACE]! += toDisc * friction_W;
    heat[PAD_FACE]! += (1 - toDisc) * friction_W;
    return heat.map((power, i) => {
      const { [material[i]!]: made } = materials;
      return power / (mass_kg[i]! * valueAtTemperature(made, made.heatCapacity, T[i]!));
    });
  };

  const { disc_K, pad_K, caliper_K } = corner.start;
  const start_K = mass_kg.map((_, i) =>
    i === FLUID || i === CALIPER ? caliper_K : i === PLATE || i === PAD || i === PAD_FACE ? pad_K : disc_K,
  );
  const columns = (T: number[]): Columns => ({
    face: T[FACE]!,
    cheek: bodies.cheekShares.reduce((sum, share, i) => sum + share * T[FACE + i]!, 0),
    wall: T[wall]!,
    rim: T[RIM]!,
    bell: T[BELL]!,
    pad: T[PAD_FACE]!,
    caliper: T[CALIPER]!,
    fluid: T[FLUID]!,
  });
  return { start_K, rates, columns, face: FACE };
}

type Surfaces = Record<'face' | 'wall' | 'rim' | 'bell' | 'caliper', number>;

/** Heat that air and spray take from each surface [W], at its own temperature, at this very speed. */
function convectionOf(scenario: Scenario, { spec, corner }: CornerModel) {
  const day = dayOf(scenario.conditions);
  const { ambient_K: air_K, pressure_Pa } = day;
  const path = airPathOf(corner.brake, spec);
  const passage = vanePassage(spec.disc, materials[spec.disc.material].density_kgpm3);
  const openFraction = 1 - blankingAt(scenario, corner.axle, corner.side) / 100;
  const density_kgpm3 = densityDryAir(air_K, pressure_Pa);
  const cooling = scenario.correction.cooling.factor;
  const onFace = 1 - spec.wheel.ductOnFace / 2;
  const buoyant = capacityBuoyant(spec.wheel, { density_kgpm3, air_K });
  const water = day.wet ? { water_kgpm3: day.spray_kgpm3 } : null;

  return (T: Surfaces, speed_mps: number, fromRadiation_W: number): Surfaces => {
    const wheel_radps = speed_mps / spec.wheel.loadedRadius_m;
    const flows = solveAirPath(path, {
      openFraction,
      speed_mps,
      wheel_radps,
      density_kgpm3: day.density_kgpm3,
      qRatio: 1,
    });
    const vane_kgps = Math.abs(flows.vane_kgps);
    const out_kgps = Math.max(flows.leak_kgps, 0);
    const wash_mps = spec.leakArea_m2 > 0 ? out_kgps / (density_kgpm3 * spec.leakArea_m2) : 0;
    const outside = { speed_mps, wash_mps, air_K, pressure_Pa };
    const inVanes = { vane_kgps, wheel_radps, wall_K: T.wall, air_K, density_kgpm3, still: spec.wheel.still };
    const g: Surfaces = {
      face: cooling * faceConductance(spec, outside, T.face),
      wall: passage ? cooling * vaneConductance(spec.disc, passage, inVanes) : 0,
      rim: cooling * rimConductance(spec, outside, T.rim),
      bell: cooling * bellConductance(spec, outside, T.bell),
      caliper: cooling * caliperConductance(spec, outside, T.caliper),
    };
    const drawn = vane_kgps === 0 ? 1 : Math.min(1, Math.max(0, -flows.leak_kgps / vane_kgps));
    const meets: Surfaces = { face: onFace, wall: drawn, rim: 1, bell: 1, caliper: 1 };
    const names = Object.keys(g) as (keyof Surfaces)[];
    const sum = (of: (name: keyof Surfaces) => number): number =>
      names.reduce((all, name) => all + of(name), 0);
    const warmth_K = warmthOf({
      heat_W: fromRadiation_W + sum((name) => g[name] * (T[name] - air_K)),
      held_WpK: sum((name) => g[name] * meets[name]),
      driven_WpK: capacityDriven(spec.wheel, { density_kgpm3, air_K, speed_mps, duct_kgps: flows.duct_kgps }),
      buoyant,
    });
    const spray = effectiveSpray(water, spec, { speed_mps, duct_m3ps: flows.duct_kgps / density_kgpm3 });
    const wets: Partial<Surfaces> = { face: spray.face_W, wall: spray.vane_W };
    const given = (name: keyof Surfaces): number =>
      g[name] * (T[name] - air_K - meets[name] * warmth_K) +
      (wets[name] ?? 0) * Math.tanh(Math.max(T[name] - air_K, 0) / SPRAY_SCALE_K);
    return Object.fromEntries(names.map((name) => [name, given(name)])) as Surfaces;
  };
}

/** Warmth x of the wheelhouse: x (√(C_V² + k²|x|) + G) = Q, by halving [K]. */
function warmthOf(at: { heat_W: number; held_WpK: number; driven_WpK: number; buoyant: number }): number {
  const excess = (x: number): number =>
    x * (Math.sqrt(at.driven_WpK ** 2 + at.buoyant ** 2 * Math.abs(x)) + at.held_WpK) - at.heat_W;
  // with the draught left out the warmth is larger, so that it lies between this and 0
  const most = at.heat_W / (at.driven_WpK + at.held_WpK);
  let [low, high] = most < 0 ? [most, 0] : [0, most];
  for (let turn = 0; turn < 200 && high - low > 1e-12 * Math.abs(most); turn++) {
    const middle = (low + high) / 2;
    if (excess(middle) > 0) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}
