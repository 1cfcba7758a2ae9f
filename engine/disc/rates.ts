/**
 * How fast each node of a corner gains heat, and where the heat goes: the right-hand side of the kernel.
 *
 * Everything lives in arrays made once: nothing is allocated, and no number is boxed, while a stint runs. All is made inside
 * one function because what a function holds is compiled as a constant; what another module holds is looked up at each use.
 */
import type { ConductanceMap } from './conductance-map.ts';
import { CELLS } from './enthalpy-table.ts';
import { GRID, makeHeld, WIDE } from './held.ts';
import { CAST, NODE, NODES } from './network.ts';
import { BOOK, type Stepper } from './stepper.ts';
import { WALL_LOW_K, WALL_STEP_K, WALLS } from './wall-grid.ts';
import { riseWheelhouse } from './wheelhouse.ts';

/** Spray boils at full rate on a surface this much above ambient, and less below. From memory [K] */
const SPRAY_SCALE_K = 80;

/** What `evaluate` finds, and how to ask it. */
export interface Rates {
  /** Enthalpy of each node, for which all is asked [J] */
  H: Float64Array;
  /** Temperature of each node [K], and the slopes of temperature and conduction potential per enthalpy. */
  T: Float64Array;
  dT: Float64Array;
  dP: Float64Array;
  /** Link of each node to its parent in this step. */
  G: Float64Array;
  /** Heat gained by each node [W] */
  F: Float64Array;
  /** Losses now, by BOOK [W] */
  loss: Float64Array;
  /** Tangents per enthalpy [1/s]: convection of face, wall, rim, bell, caliper; radiation of the same; bell to hub, caliper to upright; spray on face and wall. */
  slope: Float64Array;
  /** Temperature of the wheelhouse's air at the start of the step [K] */
  wheelhouse_K: Float64Array;
  /** Takes up the corner and its map: what does not change along a lap, its enthalpies, and its links with the pads off. */
  hold: (s: Stepper, map: ConductanceMap) => void;
  /** The air at the speed of a step, between the two nearest of the grid. */
  setAir: (speed_mps: Float64Array, step: number) => void;
  /** F, the losses and (for a first stage) the tangents, at enthalpies `H`. */
  evaluate: (isFirst: boolean) => void;
}

export function makeRates(): Rates {
  const nodes = NODES;
  const { rim, rimJoins, bell, fluid, caliper, padFace, face, wall } = NODE;
  const surfaces = Int32Array.of(face, wall, rim, bell, caliper);
  const { faceAir, vaneAir, otherAir, radiation, conducted } = BOOK;
  const [cast, lastCell, lowWall_K, perWallStep, walls] = [
    CAST,
    CELLS - 1,
    WALL_LOW_K,
    1 / WALL_STEP_K,
    WALLS,
  ];

  const column = (size: number): Float64Array => new Float64Array(size);
  const held = makeHeld();
  const { H, G, hold, entries, offset, cellsPerJoule } = held;
  const { radiating, bridge_WpK4, hub_WpK, mount_WpK } = held;
  const { conductances, air_K, wheelhouse_WpK, recirculatedAt, sprayFace_W, sprayVane_W, mapWide } = held;
  const [grid, { speedStep, lastSpeed, onFace, buoyant, kept }] = [GRID, WIDE];
  const [T, dT, dP, F] = [column(nodes), column(nodes), column(nodes), column(nodes)];
  /** Conduction potential of each node [W/m] */
  const P = column(nodes);
  const [loss, slope, wheelhouse_K] = [column(5), column(14), column(1)];
  /** Conductance to the air of face, wall, rim, bell and caliper near their temperatures: a straight line, at 0 K and per K. */
  const at0 = column(5);
  const perK = column(5);

  /** The step's air: place between two rows of the map, wheelhouse [W/K], share, spray [W], ambient [K] */
  const air = column(6);
  const pastRow = 0,
    capacity = 1,
    recirculated = 2,
    sprayFace = 3,
    sprayVane = 4,
    ambient = 5;
  /** Entry of the map's first wall at the speed below this one. */
  let row = 0;

  function setAir(speed_mps: Float64Array, step: number): void {
    const at = speed_mps[step]! / mapWide[speedStep]!;
    const i = Math.min(at, mapWide[lastSpeed]!) | 0;
    row = i * walls;
    const w = at - i;
    air[pastRow] = w;
    air[capacity] = wheelhouse_WpK[i]! + w * (wheelhouse_WpK[i + 1]! - wheelhouse_WpK[i]!);
    air[recirculated] = recirculatedAt[i]! + w * (recirculatedAt[i + 1]! - recirculatedAt[i]!);
    air[sprayFace] = sprayFace_W[i]! + w * (sprayFace_W[i + 1]! - sprayFace_W[i]!);
    air[sprayVane] = sprayVane_W[i]! + w * (sprayVane_W[i + 1]! - sprayVane_W[i]!);
    air[ambient] = air_K[i]! + w * (air_K[i + 1]! - air_K[i]!);
    slope[12] = slope[13] = 0;
  }

  /** Temperatures of all nodes and conduction potentials of those of the cast ring, with their slopes per enthalpy. */
  function lookUp(): void {
    for (let i = 0; i < nodes; i++) {
      const perJoule = cellsPerJoule[i]!;
      const at = H[i]! * perJoule;
      const cell = Math.max(0, Math.min(at | 0, lastCell));
      const a = offset[i]! + 2 * cell;
      const rise = entries[a + 2]! - entries[a]!;
      T[i] = entries[a]! + (at - cell) * rise;
      dT[i] = rise * perJoule;
      if (i < cast) continue;
      const climb = entries[a + 3]! - entries[a + 1]!;
      P[i] = entries[a + 1]! + (at - cell) * climb;
      dP[i] = climb * perJoule;
    }
  }

  /** F by the links alone, along the two chains to the face. */
  function conduct(): void {
    let flux = 0;
    for (let i = fluid; i < padFace; i++) {
      const onward = G[i]! * (T[i]! - T[i + 1]!);
      F[i] = flux - onward;
      flux = onward;
    }
    F[face] = G[padFace]! * (T[padFace]! - T[face]!);
    F[padFace] = flux - F[face];
    flux = G[bell]! * (T[bell]! - T[wall]!);
    F[bell] = -flux;
    for (let i = wall; i < face; i++) {
      const onward = G[i]! * (P[i]! - P[i + 1]!);
      F[i] = flux - onward;
      flux = onward;
    }
    F[face] += flux;
    flux = G[rim]! * (P[rim]! - P[rimJoins]!);
    F[rim] = -flux;
    F[rimJoins]! += flux;
  }

  function evaluate(isFirst: boolean): void {
    lookUp();
    conduct();
    if (isFirst) layLines();
    radiate(isFirst);
    bridge();
    convect(isFirst);
    if (air[sprayFace]! > 0) boil(face, sprayFace, 12, isFirst);
    if (air[sprayVane]! > 0) boil(wall, sprayVane, 13, isFirst);
    const hub = hub_WpK[0]! * (T[bell]! - air[ambient]!);
    const mount = mount_WpK[0]! * (T[caliper]! - air[ambient]!);
    F[bell]! -= hub;
    F[caliper]! -= mount;
    loss[conducted] = hub + mount;
    if (!isFirst) return;
    slope[10] = hub_WpK[0]! * dT[bell]!;
    slope[11] = mount_WpK[0]! * dT[caliper]!;
  }

  /** Conductances near the temperatures of the surfaces: both stages of a step take them from the same straight lines. */
  function layLines(): void {
    const w = air[pastRow]!;
    for (let surface = 0; surface < 5; surface++) {
      const at = (T[surfaces[surface]!]! - lowWall_K) * perWallStep;
      const j = Math.max(0, Math.min(at | 0, walls - 2));
      const a = surface * grid + row + j;
      const b = a + walls;
      const cooler = conductances[a]! + w * (conductances[b]! - conductances[a]!);
      const hotter = conductances[a + 1]! + w * (conductances[b + 1]! - conductances[a + 1]!);
      // colder than the grid the conductance stays where it is
      const rise = at < 0 ? 0 : hotter - cooler;
      perK[surface] = rise * perWallStep;
      at0[surface] = cooler - rise * (lowWall_K * perWallStep + j);
    }
  }

  /** Heat given to the air, which the wheelhouse's own warmth holds back, and to spray. */
  function convect(isFirst: boolean): void {
    const day = air[ambient]!;
    const meetsFace = mapWide[onFace]!,
      meetsWall = air[recirculated]!;
    const gFace = at0[0]! + perK[0]! * T[face]!,
      gWall = at0[1]! + perK[1]! * T[wall]!;
    const gRim = at0[2]! + perK[2]! * T[rim]!,
      gBell = at0[3]! + perK[3]! * T[bell]!,
      gCaliper = at0[4]! + perK[4]! * T[caliper]!;
    let dFace = T[face]! - day,
      dWall = T[wall]! - day,
      dRim = T[rim]! - day,
      dBell = T[bell]! - day,
      dCaliper = T[caliper]! - day;
    if (isFirst) {
      // the wheelhouse is above ambient by what the air that passes it carries off; a part of the radiation ends in it
      const given = gFace * dFace + gWall * dWall + gRim * dRim + gBell * dBell + gCaliper * dCaliper;
      const taken = gFace * meetsFace + gWall * meetsWall + gRim + gBell + gCaliper;
      const offered = given + mapWide[kept]! * loss[radiation]!;
      wheelhouse_K[0] = day + riseWheelhouse(offered, taken, air[capacity]!, mapWide[buoyant]!);
    }
    const warmth = wheelhouse_K[0]! - day;
    dFace -= meetsFace * warmth;
    dWall -= meetsWall * warmth;
    dRim -= warmth;
    dBell -= warmth;
    dCaliper -= warmth;
    if (isFirst) {
      slope[0] = (gFace + perK[0]! * dFace) * dT[face]!;
      slope[1] = (gWall + perK[1]! * dWall) * dT[wall]!;
      slope[2] = (gRim + perK[2]! * dRim) * dT[rim]!;
      slope[3] = (gBell + perK[3]! * dBell) * dT[bell]!;
      slope[4] = (gCaliper + perK[4]! * dCaliper) * dT[caliper]!;
    }
    F[face]! -= gFace * dFace;
    F[wall]! -= gWall * dWall;
    F[rim]! -= gRim * dRim;
    F[bell]! -= gBell * dBell;
    F[caliper]! -= gCaliper * dCaliper;
    loss[faceAir] = gFace * dFace;
    loss[vaneAir] = gWall * dWall;
    loss[otherAir] = gRim * dRim + gBell * dBell + gCaliper * dCaliper;
  }
  /** What spray takes from a surface above ambient. */
  function boil(node: number, spray: number, tangent: number, isFirst: boolean): void {
    const rise = T[node]! - air[ambient]!;
    const most = rise > 0 ? air[spray]! : 0;
    const part = most > 0 ? Math.tanh(rise / SPRAY_SCALE_K) : 0;
    F[node]! -= most * part;
    loss[otherAir]! += most * part;
    if (isFirst) slope[tangent] = (most / SPRAY_SCALE_K) * (1 - part * part) * dT[node]!;
  }

  /** Surfaces to surroundings at ambient. */
  function radiate(isFirst: boolean): void {
    const cold2 = air[ambient]! * air[ambient]!;
    let total = 0;
    for (let j = 0; j < 5; j++) {
      const node = surfaces[j]!;
      const hot2 = T[node]! * T[node]!;
      const power = radiating[j]! * (hot2 * hot2 - cold2 * cold2);
      F[node]! -= power;
      total += power;
      if (isFirst) slope[5 + j] = 4 * radiating[j]! * hot2 * T[node]! * dT[node]!;
    }
    loss[radiation] = total;
  }

  /** Radiation from the disc's edge to the caliper over it. It closes a loop of the tree, so no tangent carries it; it is slow. */
  function bridge(): void {
    const hot2 = T[rim]! * T[rim]!;
    const cold2 = T[caliper]! * T[caliper]!;
    const power = bridge_WpK4[0]! * (hot2 * hot2 - cold2 * cold2);
    F[rim]! -= power;
    F[caliper]! += power;
  }

  return { H, T, dT, dP, G, F, loss, slope, wheelhouse_K, hold, setAir, evaluate };
}
