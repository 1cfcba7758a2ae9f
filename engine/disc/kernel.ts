/**
 * Advances one corner over the steps of one lap.
 *
 *     dH/dt = F(H) + s(t),  solved by ROS3 (see `ros3.ts`): one factorisation of I − γΔtJ and two evaluations of F a step,
 *     and every loss booked with the weights and tangents of its stages
 *
 * J leaves out how the wheelhouse's warmth follows the corner, and the radiation from edge to caliper. Both are slow; what
 * they cost is of first order in the step, and small (tested). Why all is made inside one function: see `rates.ts`.
 */
import type { CornerColumns } from './columns.ts';
import type { ConductanceMap } from './conductance-map.ts';
import { makeElimination } from './elimination.ts';
import type { LapSteps } from './lap-input.ts';
import { CAST, NODE, NODES } from './network.ts';
import { makeRates } from './rates.ts';
import { makeRecord } from './record.ts';
import { ROS3 } from './ros3.ts';
import { BOOK, type Stepper } from './stepper.ts';

/** A step is cut where a slope changes by this factor over it, or a temperature by so much [K], into so many pieces at most. */
const MOST_BEND = 1.1;
const LEAP_K = 400;
const PIECES = 64;

/** Runs the lap; `share` is this corner's part of the heat of all four brakes. Writes samples first ... first + steps. */
export const driveLap = makeKernel();

function makeKernel() {
  const [nodes, cast, mostBend, leap_K] = [NODES, CAST, MOST_BEND, LEAP_K];
  const { rim, bell, caliper, padFace, face, wall } = NODE;
  const { gamma, c21, c31, c32, m1, m2, m3, w1, w2, w3, rise1, rise2, rise3, bend1, bend2, bend3 } = ROS3;
  const { faceAir, vaneAir, otherAir, radiation, conducted, brakeHeat } = BOOK;
  const rates = makeRates();
  const { H, T, dT, G, F, loss, slope, hold, setAir, evaluate } = rates;
  const { h, k, factorise, solve } = makeElimination(rates);
  const record = makeRecord(rates);

  const column = (): Float64Array => new Float64Array(nodes);
  /** The first two stages; the third is left in `k`. */
  const [K1, K2] = [column(), column()];
  /** As the step begins: enthalpies, temperatures and their slopes, and the losses by BOOK. */
  const [before_J, before_K, slopeBefore, lossBefore] = [column(), column(), column(), column()];
  /** The step, and the part of it under way: its length [s], mean, rise and bend of the heat made in this corner [W] */
  const [whole, part] = [column(), column()];
  const [length, mean, rise, bend] = [0, 1, 2, 3];
  /** Of the heat made, the shares of disc and pads. */
  const shares = column();
  const [disc, pads] = [0, 1];
  const booked = new Float64Array(6);

  return (
    s: Stepper,
    lap: LapSteps,
    share: number,
    map: ConductanceMap,
    out: CornerColumns | null,
    first: number,
  ): void => {
    const { network } = s;
    hold(s, map);
    booked.set(s.booked_J);
    shares[disc] = s.discShare;
    shares[pads] = 1 - s.discShare;
    for (let n = 0; n < lap.steps; n++) {
      setAir(lap.speed_mps, n);
      G[padFace] = lap.pressed[n] ? network.pressed_WpK : network.link[padFace]!;
      whole[length] = lap.dt_s[n]!;
      whole[mean] = share * lap.power_W[n]! + s.drag_N * lap.speed_mps[n]!;
      whole[rise] = share * lap.rise_W[n]!;
      whole[bend] = share * lap.bend_W[n]!;
      // whole, or in halves of halves where a material's slope bends within it
      for (let done = 0, cut = PIECES; done < PIECES;) {
        evaluate(true);
        if (out && done === 0) record(s, out, first + n);
        takePart(done, cut);
        if (!stages() && cut > 1) {
          H.set(before_J);
          cut >>= 1;
          continue;
        }
        advance();
        book();
        done += cut;
        cut = Math.min(2 * cut, PIECES - done);
      }
    }
    s.enthalpy_J.set(H);
    s.booked_J.set(booked);
    if (!out) return;
    evaluate(true);
    record(s, out, first + lap.steps);
  };

  /** The parabola of the power over so many pieces of the step, after those that are done. */
  function takePart(done: number, cut: number): void {
    const share = cut / PIECES;
    const middle = done / PIECES + share / 2;
    part[length] = share * whole[length]!;
    h[0] = gamma * part[length];
    part[mean] =
      whole[mean]! +
      whole[rise]! * (middle - 0.5) +
      whole[bend]! * (1 - 6 * middle + 6 * middle * middle + (share * share) / 2);
    part[rise] = share * (whole[rise]! + whole[bend]! * (12 * middle - 6));
    part[bend] = share * share * whole[bend]!;
  }

  /** The stages of one part from what `evaluate` found at its start; false where the tangents do not hold over it. */
  function stages(): boolean {
    const dt = h[0]!;
    factorise();
    for (let j = 0; j < 5; j++) lossBefore[j] = loss[j]!;
    for (let i = 0; i < nodes; i++) {
      before_J[i] = H[i]!;
      before_K[i] = T[i]!;
      slopeBefore[i] = dT[i]!;
      k[i] = dt * F[i]!;
    }
    heat(dt * (part[mean]! + rise1 * part[rise]! + bend1 * part[bend]!));
    solve();
    for (let i = 0; i < nodes; i++) {
      K1[i] = k[i]!;
      H[i] = before_J[i]! + K1[i]!;
    }
    evaluate(false);
    for (let i = 0; i < nodes; i++) k[i] = dt * F[i]! + gamma * c21 * K1[i]!;
    heat(dt * (part[mean]! + rise2 * part[rise]! + bend2 * part[bend]!));
    solve();
    for (let i = 0; i < nodes; i++) {
      K2[i] = k[i]!;
      k[i] = dt * F[i]! + gamma * (c31 * K1[i]! + c32 * K2[i]!);
    }
    heat(dt * (part[mean]! + rise3 * part[rise]! + bend3 * part[bend]!));
    solve();
    return tangentsHold();
  }

  /** Of the heat made in a stage [J], the disc's part and the pads'. */
  function heat(made_J: number): void {
    k[face]! += shares[disc]! * made_J;
    k[padFace]! += shares[pads]! * made_J;
  }

  /**
   * Whether what the first stage took for the slopes of the disc still holds where it leads: iron takes up five times as much
   * heat within its transformation as beside it, and a tangent that is far too flat makes a long step unstable.
   */
  function tangentsHold(): boolean {
    for (let i = cast; i < nodes; i++) {
      const was = slopeBefore[i]!,
        is = dT[i]!;
      if (is > mostBend * was || was > mostBend * is || Math.abs(T[i]! - before_K[i]!) > leap_K) return false;
    }
    return true;
  }

  /** Takes the stages together: the enthalpies after the part, and in K1 where its losses are taken from its start. */
  function advance(): void {
    for (let i = 0; i < nodes; i++) {
      const k1 = K1[i]!,
        k2 = K2[i]!,
        k3 = k[i]!;
      H[i] = before_J[i]! + m1 * k1 + m2 * k2 + m3 * k3;
      K1[i] = w1 * k1 + w2 * k2 + w3 * k3;
    }
  }

  /** Books heat and losses of a part. */
  function book(): void {
    const dt = part[length]!;
    const at = K1;
    for (let j = 0; j < 5; j++) booked[j]! += dt * (w1 * lossBefore[j]! + (w2 + w3) * loss[j]!);
    booked[brakeHeat]! += dt * part[mean]!;
    booked[faceAir]! += dt * slope[0]! * at[face]!;
    booked[vaneAir]! += dt * slope[1]! * at[wall]!;
    const other = slope[2]! * at[rim]! + slope[3]! * at[bell]! + slope[4]! * at[caliper]!;
    booked[otherAir]! += dt * (other + slope[12]! * at[face]! + slope[13]! * at[wall]!);
    const disc = slope[5]! * at[face]! + slope[6]! * at[wall]! + slope[7]! * at[rim]!;
    booked[radiation]! += dt * (disc + slope[8]! * at[bell]! + slope[9]! * at[caliper]!);
    booked[conducted]! += dt * (slope[10]! * at[bell]! + slope[11]! * at[caliper]!);
  }
}
