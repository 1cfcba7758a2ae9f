/** A logged acceleration against the speed: which unit, which sign, and whether it is the car's at all. */
import { unused, type Extra, type ExtraColumn } from './extra.ts';
import type { MotionLog } from './motion-log.ts';
import { differences, lineThrough, quantile } from './statistics.ts';
import { sizeOf, unitsOf } from './units.ts';

/** Half of the time over which the speed is differenced [s] */
const HALF_S = 0.3;
/** Weaker than this it does not follow the speed. */
const FOLLOWS = 0.3;
/** What the speed makes of it, by which a unit is still believed: slope and a sensor's tilt stand between them. */
const FITS = { least: 0.5, most: 2 };

export function accelerationOf({ name, values, stated, chosen }: ExtraColumn, log: MotionLog): Extra {
  const { slope, correlation } = lineThrough(changeOfSpeed(log), values);
  const fit = (unit: string): number => Math.abs(slope) * sizeOf('acceleration', unit);
  const units = unitsOf('acceleration');
  const fits = (unit: string): boolean => fit(unit) >= FITS.least && fit(unit) <= FITS.most;
  const guess = units.find(fits) ?? units[0]!;
  const unit = chosen ?? (stated && fits(stated) ? stated : guess);
  if (!(Math.abs(correlation) >= FOLLOWS)) return unused(unit, name, 'it does not follow the speed');
  if (!chosen && !fits(unit))
    return unused(unit, name, `in ${units.join(' or ')} it is not what the speed makes`);
  const size = sizeOf('acceleration', unit) * Math.sign(slope);
  return {
    unit,
    reason: reasonOf(unit, stated, chosen),
    si: values.map((value) => value * size),
    mended: slope < 0 ? [`${name} counts braking as positive: turned round`] : [],
  };
}

function reasonOf(unit: string, stated: string, chosen: string | undefined): string {
  if (chosen !== undefined || unit === stated) return '';
  return stated
    ? `stated ${stated}, but the speed changes as if it were ${unit}: read as ${unit}`
    : `no unit given: read as ${unit}, as the speed changes`;
}

/** By differences over more than a second's half, so that a fast log's noise does not count [m/s²] */
function changeOfSpeed({ time_s, speed_mps }: MotionLog): Float64Array {
  const interval_s = quantile(
    differences(time_s).filter((step) => step > 0),
    0.5,
  );
  const reach = Math.max(1, Math.round(HALF_S / interval_s));
  return speed_mps.map((_, i) => {
    const [from, to] = [i - reach, i + reach];
    const span_s = time_s[to]! - time_s[from]!;
    return span_s < 4 * reach * interval_s ? (speed_mps[to]! - speed_mps[from]!) / span_s : NaN;
  });
}
