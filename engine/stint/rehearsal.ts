/**
 * Where the steps of a lap end: found by rehearsing the lap in a slab of iron with constant properties, under the lap's own
 * power and by the kernel's own method, once for each kind of lap.
 *
 * A step is taken as one and as two halves; where their faces differ by more than the tolerance it is shortened, where by
 * less the next is longer. So the steps are short where the brake builds up, long on the straight, and each errs alike.
 * Source of step doubling: Press et al., Numerical Recipes, 3rd edition (2007), section 17.2 (from memory).
 */
import { cheekGaps, cheekShares } from '../disc/cheek-mesh.ts';
import { ROS3 } from '../disc/ros3.ts';
import { parabolaOver, type HeatCurve } from './step-powers.ts';

/** Most that one step may err in the face [K] */
const TOLERANCE_K = 0.2;
/** Most that the face bends over a step that its top lies in, and an end this far to either side of the top: it is read off by a parabola [K], [s] */
const BEND_K = 1.2;
const TOP_S = 0.1;
/** First step tried after a mark, shortest, and longest: speed and so the air change within it [s] */
const FIRST_S = 0.06;
const SHORTEST_S = 0.004;
const LONGEST_S = 4;
/** Most that a step grows over the one before it, and least that it is cut to [-] */
const GROWTH = 3;
const CUT = 0.3;

/** The slab: a front cheek of a heavy car with its share of the vanes, in iron at 500 °C. */
const NODES = 7;
const CHEEK_M = 0.0092;
const VANES_M = 0.004;
const CAPACITY = 7200 * 620;
const CONDUCTIVITY = 42;
/** Heat of all four brakes that comes through a square metre of it: 30 % on 0.11 m² [1/m²] */
const PER_M2 = 2.7;
const gaps = cheekGaps(CHEEK_M, NODES);
const link = Float64Array.from(gaps, (gap) => CONDUCTIVITY / gap);
const mass = Float64Array.from(
  cheekShares(gaps),
  (share, i) => CAPACITY * (share * CHEEK_M + (i === NODES - 1 ? VANES_M : 0)),
);

const { gamma, c21, c31, c32, m1, m2, m3, rise1, rise2, rise3, bend1, bend2, bend3 } = ROS3;
const column = (): Float64Array => new Float64Array(NODES);
const [K1, K2, K3, at, pivot] = [column(), column(), column(), column(), column()];
const parabola = new Float64Array(3);

/** Ends of all steps of a lap. In each braking the times at which it begins, peaks, starts to end and ends are among them. */
export function stepEnds(curve: HeatCurve, brakings_s: number[][], duration_s: number): number[] {
  const [one, half] = [column(), column()];
  let [T, two] = [column(), column()];
  const ends: number[] = [];
  let now = 0;
  for (const marks of [...brakings_s, [duration_s]]) {
    let top = { at_s: 0, face_K: -Infinity };
    for (const mark of marks) {
      let next = FIRST_S;
      while (now < mark) {
        const left = mark - now;
        const tried = left < 3 * next ? left / Math.ceil(left / next - 1e-9) : next;
        const end = left - tried < 1e-9 ? mark : now + tried;
        const middle = now + tried / 2;
        advance(curve, [now, end], T, one);
        advance(curve, [now, middle], T, half);
        advance(curve, [middle, end], half, two);
        const isTop = half[0]! > T[0]! && half[0]! > two[0]!;
        const bend_K = 2 * half[0]! - T[0]! - two[0]!;
        const error_K = Math.max(farthest(one, two), isTop ? (bend_K / BEND_K) * TOLERANCE_K : 0);
        const fits = 0.9 * tried * Math.cbrt(TOLERANCE_K / Math.max(error_K, 1e-9));
        if (error_K > TOLERANCE_K && tried > SHORTEST_S) {
          next = Math.max(fits, CUT * tried);
          continue;
        }
        if (isTop && half[0]! > top.face_K)
          top = { at_s: middle + ((tried / 4) * (two[0]! - T[0]!)) / bend_K, face_K: half[0]! };
        if (two[0]! > top.face_K) top = { at_s: end, face_K: two[0]! };
        ends.push(end);
        [T, two] = [two, T];
        now = end;
        next = Math.min(fits, GROWTH * tried, LONGEST_S);
      }
    }
    if (marks.length > 1) seeTop(ends, top.at_s, marks);
  }
  return ends;
}

/** Adds ends at and around the face's top in a braking, so that it can be read off. */
function seeTop(ends: number[], top_s: number, marks: number[]): void {
  const [from, to] = [marks[0]!, marks.at(-1)!];
  for (const t of [top_s - TOP_S, top_s, top_s + TOP_S]) {
    const isNear = ends.some((end) => Math.abs(end - t) < TOP_S / 3);
    if (t > from + TOP_S / 3 && t < to && !isNear) ends.push(t);
  }
  ends.sort((a, b) => a - b);
}

function farthest(a: Float64Array, b: Float64Array): number {
  let most = 0;
  for (let i = 0; i < NODES; i++) most = Math.max(most, Math.abs(a[i]! - b[i]!));
  return most;
}

/** The slab from one moment to another in one step of ROS3. */
function advance(
  curve: HeatCurve,
  [from_s, to_s]: readonly [number, number],
  T: Float64Array,
  into: Float64Array,
): void {
  const dt = to_s - from_s;
  parabolaOver(curve, from_s, to_s, parabola);
  factorise(gamma * dt);
  stage(K1, T, dt, [rise1, bend1]);
  solve(K1, gamma * dt);
  for (let i = 0; i < NODES; i++) at[i] = T[i]! + K1[i]!;
  stage(K2, at, dt, [rise2, bend2]);
  for (let i = 0; i < NODES; i++) K2[i]! += gamma * mass[i]! * c21 * K1[i]!;
  solve(K2, gamma * dt);
  stage(K3, at, dt, [rise3, bend3]);
  for (let i = 0; i < NODES; i++) K3[i]! += gamma * mass[i]! * (c31 * K1[i]! + c32 * K2[i]!);
  solve(K3, gamma * dt);
  for (let i = 0; i < NODES; i++) into[i] = T[i]! + m1 * K1[i]! + m2 * K2[i]! + m3 * K3[i]!;
}

/** γ Δt times the heat that each node gains. */
function stage(
  into: Float64Array,
  T: Float64Array,
  dt: number,
  [rise, bend]: readonly [number, number],
): void {
  const power = parabola[0]! + rise * parabola[1]! + bend * parabola[2]!;
  into.fill(0);
  into[0] = gamma * dt * PER_M2 * power;
  for (let i = 0; i < NODES - 1; i++) {
    const flux = gamma * dt * link[i]! * (T[i]! - T[i + 1]!);
    into[i]! -= flux;
    into[i + 1]! += flux;
  }
}

function factorise(h: number): void {
  pivot[0] = mass[0]! + h * link[0]!;
  for (let i = 1; i < NODES; i++) {
    const before = h * link[i - 1]!;
    pivot[i] = mass[i]! + before + h * (link[i] ?? 0) - (before * before) / pivot[i - 1]!;
  }
}

function solve(k: Float64Array, h: number): void {
  for (let i = 1; i < NODES; i++) k[i]! += ((h * link[i - 1]!) / pivot[i - 1]!) * k[i - 1]!;
  k[NODES - 1]! /= pivot[NODES - 1]!;
  for (let i = NODES - 2; i >= 0; i--) k[i] = (k[i]! + h * link[i]! * k[i + 1]!) / pivot[i]!;
}
