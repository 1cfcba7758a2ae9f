/** A logged brake pressure: its unit, and where it rests when nobody brakes. */
import { PA_PER_BAR } from '../units.ts';
import { unused, type Extra, type ExtraColumn } from './extra.ts';
import { quantile } from './statistics.ts';
import { sizeOf, unitsOf } from './units.ts';
import { plain, quantity } from './words.ts';

/** Peaks of a race car's brake lines. Common practice, no source [bar] */
const PEAK_BAR = { least: 10, most: 300 };
/** Brakes rest for much more than this share of a lap. */
const RESTING = 0.2;
/** A sensor's zero may be off by this before it is said, and by this at most [bar] */
const OFFSET_BAR = { least: 0.2, most: 10 };

export function pressureOf(column: ExtraColumn): Extra {
  const { role, name, values, stated, chosen } = column;
  const inBar = (value: number, unit: string): number => (value * sizeOf(role, unit)) / PA_PER_BAR;
  const [rest, top] = [quantile(values, RESTING), quantile(values, 0.999)];
  const fits = (unit: string): boolean => {
    const peak = inBar(top - rest, unit);
    return peak >= PEAK_BAR.least && peak <= PEAK_BAR.most;
  };
  const fitting = ['bar', 'kPa', 'MPa', 'psi'].filter(fits);
  const unit = chosen ?? (stated && (fits(stated) || fitting.length !== 1) ? stated : fitting[0]);
  if (!unit || (!chosen && !stated && fitting.length !== 1)) {
    const why =
      fitting.length > 1
        ? `its peak of ${plain(top)} may be in ${fitting.join(' or ')}; say which`
        : `a peak of ${plain(top)} is no brake pressure in any of ${unitsOf(role).join(', ')}`;
    return unused('', name, why);
  }
  if (!chosen && !fits(unit))
    return unused(unit, name, `a peak of ${plain(top)} ${unit} is no brake pressure`);
  const rest_bar = inBar(rest, unit);
  const isOff = Math.abs(rest_bar) > OFFSET_BAR.least && Math.abs(rest_bar) < OFFSET_BAR.most;
  const size = sizeOf(role, unit);
  return {
    unit,
    reason: reasonOf(unit, stated, chosen, top),
    si: values.map((value) => Math.max(0, (isOff ? value - rest : value) * size)),
    mended: isOff ? [`${name} rests at ${quantity(rest, unit, 2)}: taken as nothing`] : [],
  };
}

function reasonOf(unit: string, stated: string, chosen: string | undefined, top: number): string {
  if (chosen !== undefined || unit === stated) return '';
  return stated
    ? `stated ${stated}, but its peak is ${plain(top)}: read as ${unit}`
    : `no unit given, but its peak is ${plain(top)}: read as ${unit}`;
}
