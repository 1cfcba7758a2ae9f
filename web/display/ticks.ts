/** Round marks on axes: round to the reader, placed in the engine's unit. */
import { celsius, kelvin, kmh, mpsFromKmh } from './units.ts';

export interface Tick {
  at: number;
  text: string;
}

/** Marks every 100 °C (or another step) from low to high [K]. */
export function temperatureTicks(low_K: number, high_K: number, step_C = 100): Tick[] {
  return marks(celsius(low_K), celsius(high_K), step_C).map((mark) => ({
    at: kelvin(mark),
    text: String(mark),
  }));
}

/** Marks every 100 km/h up to a speed [m/s]. */
export function speedTicks(high_mps: number, step_kmh = 100): Tick[] {
  const round = marks(step_kmh, kmh(high_mps), step_kmh);
  return round.map((mark) => ({ at: mpsFromKmh(mark), text: String(mark) }));
}

/** Marks every kilometre up to a length [m]. */
export function distanceTicks(length_m: number): Tick[] {
  return marks(0, length_m / 1000, length_m > 12_000 ? 2 : 1).map((km) => ({
    at: km * 1000,
    text: String(km),
  }));
}

/** "10 min", "45 s": how long the car stands. */
export const stopTime = (duration_s: number): string =>
  duration_s < 60
    ? `${String(Math.round(duration_s))}\u00a0s`
    : `${String(Math.round(duration_s / 60))}\u00a0min`;

function marks(low: number, high: number, step: number): number[] {
  const first = Math.ceil(low / step - 1e-9);
  const count = Math.floor(high / step + 1e-9) - first + 1;
  return Array.from({ length: Math.max(0, count) }, (_, i) => (first + i) * step);
}
