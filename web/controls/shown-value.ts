/** A number of the scenario as a field shows and steps it, and back. Both ways free of what a sum of binary fractions leaves. */
import { fromUnit, inUnit, type Unit } from '../display/units.ts';

const rounded = (value: number, digits = 6): number => Number(value.toFixed(digits));

export const shownValue = (stored: number, unit: Unit): number => rounded(inUnit(stored, unit));

/** Three digits finer than what is shown: a number typed comes back as it was typed. */
export const storedValue = (shown: number, unit: Unit, least = -Infinity, most = Infinity): number =>
  // an end that is not round in the unit shown is no reason to leave the range
  Math.min(most, Math.max(least, rounded(fromUnit(shown, unit), 9)));

/** One step down or up, to a whole multiple of the step. */
export function nextStep(from: number, step: number, direction: 1 | -1): number {
  const steps = direction > 0 ? Math.floor(from / step + 1e-9) + 1 : Math.ceil(from / step - 1e-9) - 1;
  return rounded(steps * step);
}
