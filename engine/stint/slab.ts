/**
 * The slab of iron in which a lap is rehearsed: a front cheek of a heavy car with its share of the vanes, in iron at 500 °C,
 * its properties constant; and one step of it by the kernel's own method (see `ros3.ts`). Why all is made inside one function:
 * see `rates.ts`.
 */
import { cheekGaps, cheekShares } from '../disc/cheek-mesh.ts';
import { ROS3 } from '../disc/ros3.ts';

const CHEEK_M = 0.0092;
const VANES_M = 0.004;
const CAPACITY = 7200 * 620;
const CONDUCTIVITY = 42;

export function makeSlab() {
  const { gamma, c21, c31, c32, m1, m2, m3, rise1, rise2, rise3, bend1, bend2, bend3 } = ROS3;
  const nodes = 7;
  /** Heat of all four brakes that comes through a square metre of it: 30 % on 0.11 m² [1/m²] */
  const perArea = 2.7;
  const gaps = cheekGaps(CHEEK_M, nodes);
  const link = Float64Array.from(gaps, (gap) => CONDUCTIVITY / gap);
  const mass = Float64Array.from(
    cheekShares(gaps),
    (share, i) => CAPACITY * (share * CHEEK_M + (i === nodes - 1 ? VANES_M : 0)),
  );
  const column = (): Float64Array => new Float64Array(nodes);
  const [K1, K2, K3, F] = [column(), column(), column(), column()];
  /** Of the step under way: γ Δt times the links, and the matrix of a stage eliminated from the face to the vanes. */
  const [flow, give, inverse] = [column(), column(), column()];

  /** Sets the length of the steps that follow. */
  function setStep(dt: number): void {
    for (let i = 0, before = 0; i < nodes; i++) {
      flow[i] = i < nodes - 1 ? gamma * dt * link[i]! : 0;
      inverse[i] = 1 / (mass[i]! + before + flow[i]! - (i === 0 ? 0 : before * give[i - 1]!));
      give[i] = flow[i]! * inverse[i]!;
      before = flow[i]!;
    }
  }

  /** Temperatures after a step of the set length under a parabola of power (see `LapSteps`). */
  function advance(power: Float64Array, dt: number, T: Float64Array, into: Float64Array): void {
    const heat = gamma * dt * perArea;
    const [mean, rise, bend] = [heat * power[0]!, heat * power[1]!, heat * power[2]!];
    gain(T);
    for (let i = 0; i < nodes; i++) K1[i] = F[i]!;
    K1[0]! += mean + rise1 * rise + bend1 * bend;
    solve(K1);
    for (let i = 0; i < nodes; i++) K2[i] = T[i]! + K1[i]!;
    gain(K2);
    for (let i = 0; i < nodes; i++) K2[i] = F[i]! + gamma * mass[i]! * c21 * K1[i]!;
    K2[0]! += mean + rise2 * rise + bend2 * bend;
    solve(K2);
    for (let i = 0; i < nodes; i++) K3[i] = F[i]! + gamma * mass[i]! * (c31 * K1[i]! + c32 * K2[i]!);
    K3[0]! += mean + rise3 * rise + bend3 * bend;
    solve(K3);
    for (let i = 0; i < nodes; i++) into[i] = T[i]! + m1 * K1[i]! + m2 * K2[i]! + m3 * K3[i]!;
  }

  /** γ Δt times the heat that each node gains from its neighbours. */
  function gain(T: Float64Array): void {
    for (let i = 0, before = 0; i < nodes; i++) {
      const flux = i < nodes - 1 ? flow[i]! * (T[i]! - T[i + 1]!) : 0;
      F[i] = before - flux;
      before = flux;
    }
  }

  function solve(k: Float64Array): void {
    for (let i = 1; i < nodes; i++) k[i]! += give[i - 1]! * k[i - 1]!;
    k[nodes - 1]! *= inverse[nodes - 1]!;
    for (let i = nodes - 2; i >= 0; i--) k[i] = k[i]! * inverse[i]! + give[i]! * k[i + 1]!;
  }

  /** The largest difference of two slabs [K] */
  function farthest(a: Float64Array, b: Float64Array): number {
    let most = 0;
    for (let i = 0; i < nodes; i++) most = Math.max(most, Math.abs(a[i]! - b[i]!));
    return most;
  }

  return { column, setStep, advance, farthest };
}
