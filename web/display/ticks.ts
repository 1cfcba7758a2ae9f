/** Round marks on axes: round to the reader, placed in the engine's unit. */
import { celsius, fromUnit, inUnit, kelvin, kmh, mpsFromKmh, unitFor } from './units.ts';

export interface Tick {
  at: number;
  text: string;
}

/** Marks every 100 °C or 200 °F from low to high [K]; every 100 °F where two of those would be rare. */
export function temperatureTicks(low_K: number, high_K: number): Tick[] {
  const unit = unitFor('°C');
  const [low, high] = [inUnit(celsius(low_K), unit), inUnit(celsius(high_K), unit)];
  return marks(low, high, unit.name === '°C' || high - low < 400 ? 100 : 200).map((mark) => ({
    at: kelvin(fromUnit(mark, unit)),
    text: String(mark),
  }));
}

/** Marks every 100 km/h or 50 mph up to a speed [m/s]. */
export function speedTicks(high_mps: number): Tick[] {
  const unit = unitFor('km/h');
  const step = unit.name === 'km/h' ? 100 : 50;
  return marks(step, inUnit(kmh(high_mps), unit), step).map((mark) => ({
    at: mpsFromKmh(fromUnit(mark, unit)),
    text: String(mark),
  }));
}

/** Marks every kilometre or mile up to a length [m]; of a long lap every other. */
export function distanceTicks(length_m: number): Tick[] {
  const unit = unitFor('km');
  const most = inUnit(length_m / 1000, unit);
  return marks(0, most, most > 12 ? 2 : 1).map((mark) => ({
    at: fromUnit(mark, unit) * 1000,
    text: String(mark),
  }));
}

/** One or two marks in kilowatts up to a power [W] */
export function powerTicks(high_W: number): Tick[] {
  const high = high_W / 1000;
  const step = [50, 100, 200, 500, 1000].find((each) => high / each < 3) ?? 2000;
  return marks(step, high, step).map((mark) => ({ at: mark * 1000, text: String(mark) }));
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
