/** Columns that a stint can do without: their unit, their sign and their zero, or why they are not used. */
import { accelerationOf } from './acceleration.ts';
import { unused, type Extra, type ExtraColumn } from './extra.ts';
import type { MotionLog } from './motion-log.ts';
import { pressureOf } from './pressure.ts';
import { quantile } from './statistics.ts';
import { sizeOf } from './units.ts';
import { count, quantity } from './words.ts';

/** Slopes of roads that cars lap on, and heights of the land [-], [m] */
const MOST_SLOPE = 0.35;
/** Units of the angle of a slope: its tangent is the rise over the run. */
const ANGLES = new Set(['°', 'rad', 'mrad']);
const HEIGHT_M = { least: -500, most: 6000 };

export function extraOf(column: ExtraColumn, log: MotionLog): Extra {
  switch (column.role) {
    case 'acceleration':
      return accelerationOf(column, log);
    case 'front brake pressure':
    case 'rear brake pressure':
      return pressureOf(column);
    case 'slope':
      return slopeOf(column);
    case 'altitude':
      return altitudeOf(column);
  }
}

/** A slope without a unit is in percent, unless its values are so small that they are a ratio. */
function slopeOf({ name, values, stated, chosen }: ExtraColumn): Extra {
  const top = quantile(values.map(Math.abs), 0.99);
  const guess = top <= MOST_SLOPE / 2 ? 'm/m' : '%';
  const unit = chosen ?? (stated || guess);
  const size = sizeOf('slope', unit);
  const si = values.map((value) => (ANGLES.has(unit) ? Math.tan(value * size) : value * size));
  if (!(quantile(si.map(Math.abs), 0.99) <= MOST_SLOPE)) {
    return unused(unit, name, `${quantity(top, unit, 1)} is steeper than any road`);
  }
  return { unit, reason: chosen || stated ? '' : `no unit given: read as ${unit}`, si, mended: [] };
}

function altitudeOf({ name, values, stated, chosen }: ExtraColumn): Extra {
  const unit = chosen ?? (stated || 'm');
  const size = sizeOf('altitude', unit);
  const si = values.map((value) => value * size);
  const [low, high] = [quantile(si, 0), quantile(si, 1)];
  if (!(low >= HEIGHT_M.least && high <= HEIGHT_M.most)) {
    return unused(unit, name, `${quantity(low, 'm')} to ${quantity(high, 'm')} is no height of a road`);
  }
  return { unit, reason: chosen || stated ? '' : `no unit given: read as ${unit}`, si, mended: [] };
}

/** Holes as short as a row's usual distance are filled between their neighbours; longer ones stay. */
export function filledBetween(
  values: Float64Array,
  time_s: Float64Array,
  most_s: number,
): { filled: number; values: Float64Array } {
  const out = values.slice();
  let last = -1;
  let filled = 0;
  for (let i = 0; i < out.length; i++) {
    if (Number.isNaN(out[i]!)) continue;
    if (last >= 0 && i > last + 1 && time_s[i]! - time_s[last]! <= most_s) {
      for (let k = last + 1; k < i; k++) {
        const share = (time_s[k]! - time_s[last]!) / (time_s[i]! - time_s[last]!);
        out[k] = out[last]! + share * (out[i]! - out[last]!);
        filled += 1;
      }
    }
    last = i;
  }
  // At the ends there is one neighbour only: it counts for as long as half a hole.
  const first = out.findIndex((value) => !Number.isNaN(value));
  for (let k = first - 1; k >= 0 && time_s[first]! - time_s[k]! <= most_s / 2; k--) {
    out[k] = out[first]!;
    filled += 1;
  }
  for (let k = last + 1; last >= 0 && k < out.length && time_s[k]! - time_s[last]! <= most_s / 2; k++) {
    out[k] = out[last]!;
    filled += 1;
  }
  return { filled, values: out };
}

export const filledText = (name: string, filled: number): string =>
  `${name}: ${count(filled, 'blank cell')} filled between the rows around`;
