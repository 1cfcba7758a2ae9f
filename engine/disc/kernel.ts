/**
 * Advances one corner over the steps of one lap.
 *
 *     dH/dt = F(H) + s(t), solved by a two-stage Rosenbrock-W method, γ = 1 − 1/√2, one factorisation a step:
 *     (I − γΔtJ) k₁ = Δt (F(H) + sₙ + γΔs)
 *     (I − γΔtJ) k₂ = Δt (F(H + k₁) + sₙ₊₁ − γΔs) − 2 k₁
 *     H ← H + 3/2 k₁ + 1/2 k₂,   and every loss is booked with the same weights
 *
 * Second order whatever J leaves out (here: how h moves with temperature, and the wheelhouse's warmth).
 * Source: Verwer, Spee, Blom & Hundsdorfer, SIAM J. Sci. Comput. 20 (1999) 1456 (from memory; order tested).
 */
import { WALL_LOW_K, WALL_STEP_K, WALLS, type ConductanceMap } from './conductance-map.ts';
import { CELLS } from './enthalpy-table.ts';
import type { LapSteps } from './lap-input.ts';
import { NODE, NODES, PARENT } from './network.ts';
import { BOOK, type Stepper } from './stepper.ts';

const GAMMA = 1 - Math.SQRT1_2;
const { rim, bell, caliper, padFace, face, wall } = NODE;
/** Spray boils at full rate on a surface this much above ambient, and less below. From memory [K] */
const SPRAY_SCALE_K = 80;

/** Where the corner's temperatures go: one column a watched place, filled from `first` on. */
export interface Trace {
  face_K: Float64Array;
  cheek_K: Float64Array;
  wall_K: Float64Array;
  rim_K: Float64Array;
  bell_K: Float64Array;
  pad_K: Float64Array;
  caliper_K: Float64Array;
  fluid_K: Float64Array;
}

// scratch, reused by every step: nothing is allocated in the loop
const T = new Float64Array(NODES);
const P = new Float64Array(NODES);
const dT = new Float64Array(NODES);
const dP = new Float64Array(NODES);
const G = new Float64Array(NODES);
const F = new Float64Array(NODES);
const k1 = new Float64Array(NODES);
const k2 = new Float64Array(NODES);
const diagonal = new Float64Array(NODES);
const toParent = new Float64Array(NODES);
const toChild = new Float64Array(NODES);
const faceAt = new Float64Array(WALLS);
const vaneAt = new Float64Array(WALLS);
const lossNow = new Float64Array(5);
/** Boundary tangents per enthalpy: convection and radiation of face, wall, rim, bell; caliper; hub [1/s] */
const slope = new Float64Array(10);
// conductances of the step
let gRim = 0, gBell = 0, gCaliper = 0, wheelhouse = 0, recirculated = 0, inWheelhouse = 1, sprayFace = 0, sprayVane = 0, ambient = 0;

/** Runs the lap; `share` is this corner's part of the heat of all four brakes. Writes samples first + 1 ... first + steps. */
export function driveLap(s: Stepper, lap: LapSteps, share: number, map: ConductanceMap, out: Trace | null, first: number): void {
  const { enthalpy_J: H, booked_J: booked, network } = s;
  for (let n = 0; n < lap.steps; n++) {
    const dt = lap.dt_s[n]!;
    const speed = lap.speed_mps[n]!;
    setConductances(map, speed);
    for (let i = 0; i < NODES; i++) G[i] = network.link[i]!;
    if (lap.pressed[n]) G[padFace] = network.pressed_WpK;
    const drag = s.drag_N * speed;
    const s0 = share * lap.powerStart_W[n]! + drag;
    const s1 = share * lap.powerEnd_W[n]! + drag;
    const change = GAMMA * (s1 - s0);

    evaluate(s, H, true);
    factorise(GAMMA * dt);
    addSource(s.discShare, s0 + change);
    for (let i = 0; i < NODES; i++) k1[i] = dt * F[i]!;
    solve(k1);
    book(booked, dt, k1);

    for (let i = 0; i < NODES; i++) k2[i] = H[i]! + k1[i]!;
    evaluate(s, k2, false);
    addSource(s.discShare, s1 - change);
    for (let i = 0; i < NODES; i++) k2[i] = dt * F[i]! - 2 * k1[i]!;
    solve(k2);
    book(booked, dt, k2);
    booked[BOOK.brakeHeat]! += (dt * (s0 + s1)) / 2;

    for (let i = 0; i < NODES; i++) H[i]! += 1.5 * k1[i]! + 0.5 * k2[i]!;
    if (out) record(s, out, first + n + 1);
  }
}

/** Conductances at this speed, between the two nearest of the grid. */
function setConductances(map: ConductanceMap, speed: number): void {
  const at = speed / map.speedStep_mps;
  const i = Math.min(Math.floor(at), map.speeds - 2);
  const w = at - i;
  const between = (column: Float64Array): number => column[i]! + w * (column[i + 1]! - column[i]!);
  for (let j = 0, a = i * WALLS; j < WALLS; j++, a++) {
    faceAt[j] = map.face[a]! + w * (map.face[a + WALLS]! - map.face[a]!);
    vaneAt[j] = map.vane[a]! + w * (map.vane[a + WALLS]! - map.vane[a]!);
  }
  gRim = between(map.rim);
  gBell = between(map.bell);
  gCaliper = between(map.caliper);
  wheelhouse = between(map.wheelhouse);
  recirculated = between(map.recirculated);
  sprayFace = between(map.sprayFace_W);
  sprayVane = between(map.sprayVane_W);
  inWheelhouse = map.faceInWheelhouse;
  ambient = map.ambient_K;
}

/** F, the losses by book, and (for the first stage) the tangents, at enthalpies `H`. */
function evaluate(s: Stepper, H: Float64Array, tangents: boolean): void {
  lookUp(s, H);
  F.fill(0);
  for (let i = 0; i < wall; i++) {
    const p = PARENT[i]!;
    const cast = i >= face || i === rim;
    const flux = G[i]! * (cast ? P[i]! - P[p]! : T[i]! - T[p]!);
    F[i]! -= flux;
    F[p]! += flux;
  }
  const gFace = atWall(faceAt, T[face]!);
  const gVane = atWall(vaneAt, T[wall]!);
  const rFace = T[face]! - ambient, rWall = T[wall]! - ambient, rRim = T[rim]! - ambient;
  const rBell = T[bell]! - ambient, rCaliper = T[caliper]! - ambient;
  const given = gFace * rFace + gVane * rWall + gRim * rRim + gBell * rBell + gCaliper * rCaliper;
  const taken = gFace * inWheelhouse + gVane * recirculated + gRim + gBell + gCaliper;
  /** Wheelhouse above ambient: the air that passes carries off what the corner gives. */
  const warmth = given / (wheelhouse + taken);
  const qFace = gFace * (rFace - inWheelhouse * warmth);
  const qVane = gVane * (rWall - recirculated * warmth);
  const qRim = gRim * (rRim - warmth), qBell = gBell * (rBell - warmth), qCaliper = gCaliper * (rCaliper - warmth);
  const wetFace = sprayFace * Math.tanh(Math.max(rFace, 0) / SPRAY_SCALE_K);
  const wetVane = sprayVane * Math.tanh(Math.max(rWall, 0) / SPRAY_SCALE_K);
  const cold4 = ambient ** 4;
  const [eFace, eWall, eRim, eBell] = s.radiation as unknown as [number, number, number, number];
  const radFace = eFace * (T[face]! ** 4 - cold4), radWall = eWall * (T[wall]! ** 4 - cold4);
  const radRim = eRim * (T[rim]! ** 4 - cold4), radBell = eBell * (T[bell]! ** 4 - cold4);
  const qHub = s.hub_WpK * rBell;
  F[face]! -= qFace + wetFace + radFace;
  F[wall]! -= qVane + wetVane + radWall;
  F[rim]! -= qRim + radRim;
  F[bell]! -= qBell + radBell + qHub;
  F[caliper]! -= qCaliper;
  lossNow[BOOK.faceAir] = qFace;
  lossNow[BOOK.vaneAir] = qVane;
  lossNow[BOOK.otherAir] = qRim + qBell + qCaliper + wetFace + wetVane;
  lossNow[BOOK.radiation] = radFace + radWall + radRim + radBell;
  lossNow[BOOK.conducted] = qHub;
  if (!tangents) return;
  slope[0] = gFace * dT[face]!;
  slope[1] = gVane * dT[wall]!;
  slope[2] = gRim * dT[rim]!;
  slope[3] = gBell * dT[bell]!;
  slope[4] = gCaliper * dT[caliper]!;
  slope[5] = 4 * eFace * T[face]! ** 3 * dT[face]!;
  slope[6] = 4 * eWall * T[wall]! ** 3 * dT[wall]!;
  slope[7] = 4 * eRim * T[rim]! ** 3 * dT[rim]!;
  slope[8] = 4 * eBell * T[bell]! ** 3 * dT[bell]!;
  slope[9] = s.hub_WpK * dT[bell]!;
}

/** Temperatures and conduction potentials of all nodes, with their slopes per enthalpy. */
function lookUp({ tables }: Stepper, H: Float64Array): void {
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

function atWall(values: Float64Array, wall_K: number): number {
  const at = Math.max((wall_K - WALL_LOW_K) / WALL_STEP_K, 0);
  const j = Math.min(Math.floor(at), WALLS - 2);
  return values[j]! + (at - j) * (values[j + 1]! - values[j]!);
}

function addSource(discShare: number, power_W: number): void {
  F[face]! += discShare * power_W;
  F[padFace]! += (1 - discShare) * power_W;
}

/** I − γΔtJ on the tree, eliminated from the leaves to the wall. */
function factorise(h: number): void {
  diagonal.fill(1);
  diagonal[face]! += h * (slope[0]! + slope[5]!);
  diagonal[wall]! += h * (slope[1]! + slope[6]!);
  diagonal[rim]! += h * (slope[2]! + slope[7]!);
  diagonal[bell]! += h * (slope[3]! + slope[8]! + slope[9]!);
  diagonal[caliper]! += h * slope[4]!;
  for (let i = 0; i < wall; i++) {
    const p = PARENT[i]!;
    const cast = i >= face || i === rim;
    const own = h * G[i]! * (cast ? dP[i]! : dT[i]!);
    const parents = h * G[i]! * (cast ? dP[p]! : dT[p]!);
    diagonal[i]! += own;
    diagonal[p]! += parents;
    toParent[i] = parents;
    toChild[i] = own;
  }
  for (let i = 0; i < wall; i++) {
    toChild[i]! /= diagonal[i]!;
    diagonal[PARENT[i]!]! -= toChild[i]! * toParent[i]!;
  }
}

function solve(k: Float64Array): void {
  for (let i = 0; i < wall; i++) k[PARENT[i]!]! += toChild[i]! * k[i]!;
  k[wall]! /= diagonal[wall]!;
  for (let i = wall - 1; i >= 0; i--) k[i] = (k[i]! + toParent[i]! * k[PARENT[i]!]!) / diagonal[i]!;
}

/** Books the losses of one stage with the weight and the tangent the stage itself used. */
function book(booked: Float64Array, dt: number, k: Float64Array): void {
  const h = dt / 2;
  booked[BOOK.faceAir]! += h * (lossNow[0]! + GAMMA * slope[0]! * k[face]!);
  booked[BOOK.vaneAir]! += h * (lossNow[1]! + GAMMA * slope[1]! * k[wall]!);
  booked[BOOK.otherAir]! += h * (lossNow[2]! + GAMMA * (slope[2]! * k[rim]! + slope[3]! * k[bell]! + slope[4]! * k[caliper]!));
  booked[BOOK.radiation]! += h * (lossNow[3]! + GAMMA * (slope[5]! * k[face]! + slope[6]! * k[wall]! + slope[7]! * k[rim]! + slope[8]! * k[bell]!));
  booked[BOOK.conducted]! += h * (lossNow[4]! + GAMMA * slope[9]! * k[bell]!);
}

/** Temperatures at the end of a step into the columns. */
export function record(s: Stepper, out: Trace, sample: number): void {
  lookUp(s, s.enthalpy_J);
  let mean = 0;
  for (let i = face; i <= wall; i++) mean += s.network.cheekShare[i - face]! * T[i]!;
  out.face_K[sample] = T[face]!;
  out.cheek_K[sample] = mean;
  out.wall_K[sample] = T[wall]!;
  out.rim_K[sample] = T[rim]!;
  out.bell_K[sample] = T[bell]!;
  out.pad_K[sample] = T[padFace]!;
  out.caliper_K[sample] = T[caliper]!;
  out.fluid_K[sample] = T[NODE.fluid]!;
}
