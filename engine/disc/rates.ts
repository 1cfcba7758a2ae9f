/**
 * How fast each node of a corner gains heat, and where the heat goes: the right-hand side of the kernel.
 *
 * Everything lives in arrays made once: nothing is allocated, and no number is boxed, while a stint runs.
 */
import type { ConductanceMap } from './conductance-map.ts';
import { CELLS } from './enthalpy-table.ts';
import { NODE, NODES, PARENT } from './network.ts';
import { BOOK, type Stepper } from './stepper.ts';
import { WALL_LOW_K, WALL_STEP_K, WALLS } from './wall-grid.ts';
import { riseWheelhouse } from './wheelhouse.ts';

const { rim, bell, caliper, face, wall } = NODE;
/** Spray boils at full rate on a surface this much above ambient, and less below. From memory [K] */
const SPRAY_SCALE_K = 80;

const column = (size: number): Float64Array => new Float64Array(size);
/** Temperature [K] and conduction potential [W/m] of each node, and their slopes per enthalpy. */
export const T = column(NODES);
const P = column(NODES);
export const dT = column(NODES);
export const dP = column(NODES);
/** Link of each node to its parent in this step. */
export const G = column(NODES);
/** Heat gained by each node [W] */
export const F = column(NODES);
/** Losses now, by BOOK [W] */
export const loss = column(5);
/** Boundary tangents per enthalpy [1/s]: convection of face, wall, rim, bell, caliper; radiation of the same; bell to hub, caliper to upright; spray on face and wall. */
export const slope = column(14);
/** Slope of what spray takes from face and wall [W/K] */
const wet = column(2);
const WET_FACE = 0,
  WET_WALL = 1;
/** Whether a node's link runs inside the cast ring, between conduction potentials. */
export const isCast = Uint8Array.from({ length: NODES }, (_, i) => Number(i >= face || i === rim));

/** The step's air: place between two rows of the map, wheelhouse [W/K], shares, spray [W], ambient [K], draught [W/K^1.5] */
const air = column(9);
const PAST_ROW = 0,
  WHEELHOUSE = 1,
  RECIRCULATED = 2,
  ON_FACE = 3,
  SPRAY_FACE = 4,
  SPRAY_VANE = 5,
  AMBIENT = 6,
  BUOYANT = 7,
  KEPT = 8;
/** Temperature of the wheelhouse's air at the last evaluation, alone in its array [K] */
export const wheelhouse_K = column(1);

let conductances: ConductanceMap;
/** Entry of the map's first wall at the speed below this one. */
let row = 0;

/** The air at this speed, between the two nearest of the grid. */
export function setConductances(map: ConductanceMap, speed_mps: number): void {
  const at = speed_mps / map.speedStep_mps;
  const i = Math.min(Math.floor(at), map.speeds - 2);
  const w = at - i;
  conductances = map;
  row = i * WALLS;
  air[PAST_ROW] = w;
  air[WHEELHOUSE] = between(map.wheelhouse, i, i + 1, w);
  air[RECIRCULATED] = between(map.recirculated, i, i + 1, w);
  air[SPRAY_FACE] = between(map.sprayFace_W, i, i + 1, w);
  air[SPRAY_VANE] = between(map.sprayVane_W, i, i + 1, w);
  air[ON_FACE] = map.faceInWheelhouse;
  air[BUOYANT] = map.wheelhouseBuoyant;
  air[KEPT] = map.radiationKept;
  air[AMBIENT] = between(map.air_K, i, i + 1, w);
}

function between(values: Float64Array, a: number, b: number, w: number): number {
  return values[a]! + w * (values[b]! - values[a]!);
}

/** Temperatures and conduction potentials of all nodes, with their slopes per enthalpy. */
export function lookUp({ tables }: Stepper, H: Float64Array): void {
  const { temperature_K, potential, offset, entriesPerJoule } = tables;
  for (let i = 0; i < NODES; i++) {
    const perJoule = entriesPerJoule[i]!;
    const at = H[i]! * perJoule;
    const cell = at > 0 ? Math.min(Math.floor(at), CELLS - 1) : 0;
    const a = offset[i]! + cell;
    const rise = temperature_K[a + 1]! - temperature_K[a]!;
    const climb = potential[a + 1]! - potential[a]!;
    T[i] = temperature_K[a]! + (at - cell) * rise;
    P[i] = potential[a]! + (at - cell) * climb;
    dT[i] = rise * perJoule;
    dP[i] = climb * perJoule;
  }
}

/** F, the losses and (for a first stage) the tangents, at enthalpies `H`. */
export function evaluate(s: Stepper, H: Float64Array, tangents: boolean): void {
  lookUp(s, H);
  F.fill(0);
  for (let i = 0; i < wall; i++) {
    const p = PARENT[i]!;
    const flux = G[i]! * (isCast[i] ? P[i]! - P[p]! : T[i]! - T[p]!);
    F[i]! -= flux;
    F[p]! += flux;
  }
  const gFace = atWall(conductances.face, T[face]!),
    gVane = atWall(conductances.vane, T[wall]!);
  const gRim = atWall(conductances.rim, T[rim]!),
    gBell = atWall(conductances.bell, T[bell]!),
    gCaliper = atWall(conductances.caliper, T[caliper]!);
  radiate(s.radiation, tangents);
  convect(gFace, gVane, gRim, gBell, gCaliper);
  bridge(s.bridge_WpK4);
  const hub = s.hub_WpK * (T[bell]! - air[AMBIENT]!);
  const mount = s.mount_WpK * (T[caliper]! - air[AMBIENT]!);
  F[bell]! -= hub;
  F[caliper]! -= mount;
  loss[BOOK.conducted] = hub + mount;
  if (!tangents) return;
  slope[0] = gFace * dT[face]!;
  slope[1] = gVane * dT[wall]!;
  slope[2] = gRim * dT[rim]!;
  slope[3] = gBell * dT[bell]!;
  slope[4] = gCaliper * dT[caliper]!;
  slope[10] = s.hub_WpK * dT[bell]!;
  slope[11] = s.mount_WpK * dT[caliper]!;
  slope[12] = wet[WET_FACE]! * dT[face]!;
  slope[13] = wet[WET_WALL]! * dT[wall]!;
}

/** Heat given to the air, which the wheelhouse's own warmth holds back, and to spray. */
function convect(gFace: number, gVane: number, gRim: number, gBell: number, gCaliper: number): void {
  const ambient = air[AMBIENT]!;
  const onFace = air[ON_FACE]!,
    recirculated = air[RECIRCULATED]!;
  const rFace = T[face]! - ambient,
    rWall = T[wall]! - ambient;
  const rRim = T[rim]! - ambient,
    rBell = T[bell]! - ambient,
    rCaliper = T[caliper]! - ambient;
  const given = gFace * rFace + gVane * rWall + gRim * rRim + gBell * rBell + gCaliper * rCaliper;
  const taken = gFace * onFace + gVane * recirculated + gRim + gBell + gCaliper;
  // the wheelhouse is above ambient by what the air that passes it carries off; a part of the radiation ends in it
  const offered = given + air[KEPT]! * loss[BOOK.radiation]!;
  const warmth = riseWheelhouse(offered, taken, air[WHEELHOUSE]!, air[BUOYANT]!);
  wheelhouse_K[0] = ambient + warmth;
  const qFace = gFace * (rFace - onFace * warmth),
    qVane = gVane * (rWall - recirculated * warmth);
  const qRim = gRim * (rRim - warmth),
    qBell = gBell * (rBell - warmth),
    qCaliper = gCaliper * (rCaliper - warmth);
  const wetFace = boil(air[SPRAY_FACE]!, rFace, WET_FACE);
  const wetWall = boil(air[SPRAY_VANE]!, rWall, WET_WALL);
  F[face]! -= qFace + wetFace;
  F[wall]! -= qVane + wetWall;
  F[rim]! -= qRim;
  F[bell]! -= qBell;
  F[caliper]! -= qCaliper;
  loss[BOOK.faceAir] = qFace;
  loss[BOOK.vaneAir] = qVane;
  loss[BOOK.otherAir] = qRim + qBell + qCaliper + wetFace + wetWall;
}

/** What spray takes from a surface so much above ambient; how that grows with its temperature goes into `wet`. */
function boil(spray_W: number, rise_K: number, at: number): number {
  const part = spray_W > 0 && rise_K > 0 ? Math.tanh(rise_K / SPRAY_SCALE_K) : 0;
  wet[at] = part > 0 ? (spray_W / SPRAY_SCALE_K) * (1 - part * part) : 0;
  return spray_W * part;
}

/** Surfaces that radiate to surroundings at ambient. */
const RADIATING = [face, wall, rim, bell, caliper] as const;

function radiate(surface: Float64Array, tangents: boolean): void {
  const cold2 = air[AMBIENT]! * air[AMBIENT]!;
  let total = 0;
  for (let j = 0; j < 5; j++) {
    const node = RADIATING[j]!;
    const hot2 = T[node]! * T[node]!;
    const power = surface[j]! * (hot2 * hot2 - cold2 * cold2);
    F[node]! -= power;
    total += power;
    if (tangents) slope[5 + j] = 4 * surface[j]! * hot2 * T[node]! * dT[node]!;
  }
  loss[BOOK.radiation] = total;
}

/** Radiation from the disc's edge to the caliper over it. It closes a loop of the tree, so no tangent carries it; it is slow. */
function bridge(coefficient: number): void {
  const hot2 = T[rim]! * T[rim]!;
  const cold2 = T[caliper]! * T[caliper]!;
  const power = coefficient * (hot2 * hot2 - cold2 * cold2);
  F[rim]! -= power;
  F[caliper]! += power;
}

/** Conductance at a wall temperature and the step's speed. */
function atWall(values: Float64Array, wall_K: number): number {
  const at = Math.max((wall_K - WALL_LOW_K) / WALL_STEP_K, 0);
  const j = Math.min(Math.floor(at), WALLS - 2);
  const a = row + j;
  const w = air[PAST_ROW]!;
  const cooler = between(values, a, a + WALLS, w);
  const hotter = between(values, a + 1, a + 1 + WALLS, w);
  return cooler + (at - j) * (hotter - cooler);
}
