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
import type { CornerColumns } from './columns.ts';
import type { ConductanceMap } from './conductance-map.ts';
import type { LapSteps } from './lap-input.ts';
import { NODE, NODES, PARENT } from './network.ts';
import {
  dP,
  dT,
  evaluate,
  F,
  G,
  isCast,
  lookUp,
  loss,
  setConductances,
  slope,
  T,
  wheelhouse_K,
} from './rates.ts';
import { BOOK, type Stepper } from './stepper.ts';

const GAMMA = 1 - Math.SQRT1_2;
const { rim, bell, caliper, padFace, face, wall } = NODE;

/** A step is cut where a slope changes by this factor over it, or a temperature by so much [K], down to a share of it. */
const BEND = 1.5;
const LEAP_K = 400;
const SMALLEST = 1 / 64;

const k1 = new Float64Array(NODES);
const k2 = new Float64Array(NODES);
const before_K = new Float64Array(NODES);
const slopeBefore = new Float64Array(NODES);
/** What a step books, by BOOK [J] */
const tally = new Float64Array(6);
const diagonal = new Float64Array(NODES);
const toParent = new Float64Array(NODES);
const toChild = new Float64Array(NODES);

/** Runs the lap; `share` is this corner's part of the heat of all four brakes. Writes samples first + 1 ... first + steps. */
export function driveLap(
  s: Stepper,
  lap: LapSteps,
  share: number,
  map: ConductanceMap,
  out: CornerColumns | null,
  first: number,
): void {
  const { enthalpy_J: H, booked_J: booked, network } = s;
  for (let n = 0; n < lap.steps; n++) {
    const dt = lap.dt_s[n]!;
    const speed = lap.speed_mps[n]!;
    setConductances(map, speed);
    for (let i = 0; i < NODES; i++) G[i] = network.link[i]!;
    if (lap.pressed[n]) G[padFace] = network.pressed_WpK;
    const drag = s.drag_N * speed;
    const s0 = share * lap.powerStart_W[n]! + drag;
    const rise = share * lap.powerEnd_W[n]! + drag - s0;
    // whole, or in halves of halves where a material's slope bends within it
    for (let done = 0, part = 1; done < 1;) {
      if (!attempt(s, part * dt, s0 + done * rise, s0 + (done + part) * rise) && part > SMALLEST) {
        part /= 2;
        continue;
      }
      for (let i = 0; i < NODES; i++) H[i]! += 1.5 * k1[i]! + 0.5 * k2[i]!;
      for (let i = 0; i < tally.length; i++) booked[i]! += tally[i]!;
      done += part;
      part = Math.min(2 * part, 1 - done);
    }
    if (!out) continue;
    out.wheelhouse_K[first + n + 1] = wheelhouse_K[0]!;
    record(s, out, first + n + 1);
  }
}

/** Both stages of one step of dt under a power from s0 to s1, into k1, k2 and tally; false where the tangents do not hold over it. */
function attempt(s: Stepper, dt: number, s0: number, s1: number): boolean {
  const H = s.enthalpy_J;
  const change = GAMMA * (s1 - s0);
  tally.fill(0);

  evaluate(s, H, true);
  before_K.set(T);
  slopeBefore.set(dT);
  factorise(GAMMA * dt);
  addSource(s.discShare, s0 + change);
  for (let i = 0; i < NODES; i++) k1[i] = dt * F[i]!;
  solve(k1);
  book(tally, dt, k1);

  for (let i = 0; i < NODES; i++) k2[i] = H[i]! + k1[i]!;
  evaluate(s, k2, false);
  const holds = tangentsHold();
  addSource(s.discShare, s1 - change);
  for (let i = 0; i < NODES; i++) k2[i] = dt * F[i]! - 2 * k1[i]!;
  solve(k2);
  book(tally, dt, k2);
  tally[BOOK.brakeHeat] = (dt * (s0 + s1)) / 2;
  return holds;
}

/**
 * Whether what the first stage took for the slopes of the disc still holds where it leads: iron takes up five times as much
 * heat within its transformation as beside it, and a tangent that is far too flat makes a long step unstable.
 */
function tangentsHold(): boolean {
  for (let i = 0; i < NODES; i++) {
    if (!isCast[i]) continue;
    const bend = dT[i]! / slopeBefore[i]!;
    if (bend > BEND || bend < 1 / BEND || Math.abs(T[i]! - before_K[i]!) > LEAP_K) return false;
  }
  return true;
}

function addSource(discShare: number, power_W: number): void {
  F[face]! += discShare * power_W;
  F[padFace]! += (1 - discShare) * power_W;
}

/** I − γΔtJ on the tree, eliminated from the leaves to the wall. */
function factorise(h: number): void {
  diagonal.fill(1);
  diagonal[face]! += h * (slope[0]! + slope[5]! + slope[12]!);
  diagonal[wall]! += h * (slope[1]! + slope[6]! + slope[13]!);
  diagonal[rim]! += h * (slope[2]! + slope[7]!);
  diagonal[bell]! += h * (slope[3]! + slope[8]! + slope[10]!);
  diagonal[caliper]! += h * (slope[4]! + slope[9]! + slope[11]!);
  for (let i = 0; i < wall; i++) {
    const p = PARENT[i]!;
    const own = h * G[i]! * (isCast[i] ? dP[i]! : dT[i]!);
    const parents = h * G[i]! * (isCast[i] ? dP[p]! : dT[p]!);
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

/** Books the losses of one stage with the weight and the tangents the stage itself used. */
function book(booked: Float64Array, dt: number, k: Float64Array): void {
  const h = dt / 2;
  const other =
    slope[2]! * k[rim]! +
    slope[3]! * k[bell]! +
    slope[4]! * k[caliper]! +
    slope[12]! * k[face]! +
    slope[13]! * k[wall]!;
  const radiated =
    slope[5]! * k[face]! +
    slope[6]! * k[wall]! +
    slope[7]! * k[rim]! +
    slope[8]! * k[bell]! +
    slope[9]! * k[caliper]!;
  booked[BOOK.faceAir]! += h * (loss[BOOK.faceAir]! + GAMMA * slope[0]! * k[face]!);
  booked[BOOK.vaneAir]! += h * (loss[BOOK.vaneAir]! + GAMMA * slope[1]! * k[wall]!);
  booked[BOOK.otherAir]! += h * (loss[BOOK.otherAir]! + GAMMA * other);
  booked[BOOK.radiation]! += h * (loss[BOOK.radiation]! + GAMMA * radiated);
  const led = slope[10]! * k[bell]! + slope[11]! * k[caliper]!;
  booked[BOOK.conducted]! += h * (loss[BOOK.conducted]! + GAMMA * led);
}

/** Temperatures at the end of a step into the columns. */
export function record(s: Stepper, out: CornerColumns, sample: number): void {
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
