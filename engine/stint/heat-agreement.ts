/** Whether a lap sharpened or gated by a logged channel makes the brake heat that its speed alone asks for. */
import { brakeHeat, type BrakedAir, type BrakedCar, type BrakeHeat } from '../car/brake-heat.ts';
import type { SpeedProfile } from '../circuit/speed-profile.ts';

/**
 * A lap's heat with a channel may be this much below that by speed alone. Honest pressures and accelerometers, three circuits,
 * both cars, 5 to 50 Hz, 0.05 to 0.2 m/s of noise, are at most 0.9 % below; heat by speed alone is itself 1.6 % off there [-]
 */
const MOST_COLDER = 0.02;

/** And this much above: honest pressures are at most 1.5 %, accelerometers 2.5 % above, both at 5 Hz [-] */
const MOST_HOTTER = { pressure: 0.02, accel: 0.03 };

/** A stop that makes this share of the lap's heat must keep this share of its own: honest channels keep 0.9 at 10 and 20 Hz [-] */
const STOP_COUNTS = 0.01;
const STOP_KEEPS = 0.6;

/** Two stretches of braking closer than this are one stop; a channel may move an end of it by the other [s] */
const ONE_STOP_S = 0.25;
const ENDS_MOVE_S = 0.5;

/** The gap between two heats hardly moves with the air. Source: U.S. Standard Atmosphere, 1976, sea level */
const AIR: BrakedAir = { density_kgpm3: 1.225, dragFactor: 1 };

interface Heated {
  time_s: Float64Array;
  heat: BrakeHeat;
}

export type Agreement =
  | { agrees: true }
  /** heat of the lap over that by speed alone, less 1, and how many stops are missing [-] */
  | { agrees: false; more: number; missing: number };

/** Compares a lap, as a channel makes it, with the same lap by speed alone: the whole, and stop by stop. */
export function heatAgreement(
  lap: SpeedProfile,
  alone: SpeedProfile,
  car: BrakedCar,
  kind: 'pressure' | 'accel',
): Agreement {
  const heated = (one: SpeedProfile): Heated => ({ time_s: one.time_s, heat: brakeHeat(one, car, AIR) });
  const [read, plain] = [heated(lap), heated(alone)];
  const { total_J } = plain.heat;
  if (total_J === 0) return { agrees: true };
  const more = read.heat.total_J / total_J - 1;
  const missing = stopsOf(plain).filter(({ from_s, to_s }) => {
    const stop_J = between(plain, from_s, to_s);
    if (stop_J < STOP_COUNTS * total_J) return false;
    return between(read, from_s - ENDS_MOVE_S, to_s + ENDS_MOVE_S) < STOP_KEEPS * stop_J;
  }).length;
  const fits = more > -MOST_COLDER && more < MOST_HOTTER[kind];
  return fits && missing === 0 ? { agrees: true } : { agrees: false, more, missing };
}

function stopsOf({ time_s, heat }: Heated): { from_s: number; to_s: number }[] {
  const stops: { from_s: number; to_s: number }[] = [];
  for (let i = 0; i < time_s.length - 1; i++) {
    if (heat.power_W[i] === 0) continue;
    const last = stops.at(-1);
    if (last && time_s[i]! - last.to_s < ONE_STOP_S) last.to_s = time_s[i + 1]!;
    else stops.push({ from_s: time_s[i]!, to_s: time_s[i + 1]! });
  }
  return stops;
}

/** Heat from one moment to another [J] */
function between({ time_s, heat }: Heated, from_s: number, to_s: number): number {
  const at = (t: number): number => {
    const next = time_s.findIndex((node) => node >= t);
    if (next <= 0) return next === 0 ? 0 : heat.total_J;
    const w = (t - time_s[next - 1]!) / (time_s[next]! - time_s[next - 1]!);
    return heat.cumulative_J[next - 1]! + w * (heat.cumulative_J[next]! - heat.cumulative_J[next - 1]!);
  };
  return at(to_s) - at(from_s);
}
