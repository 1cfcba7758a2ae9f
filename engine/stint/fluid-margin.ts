/** How far the fluid stays from boiling, and whether its label can be true. */
import { FLUID_MINIMA } from '../car/fluid-class.ts';
import { said, type Said } from '../said.ts';
import type { Brake } from '../scenario/schema.ts';
import { kelvin } from '../units.ts';
import type { FluidCall } from './result.ts';

/** From this margin on fluid is at ease; under the others act, do not run. Common practice, no source [K] */
const EASE_K = 60;
const ACT_K = 40;
const STOP_K = 20;

export function fluidCall(margin_K: number): FluidCall {
  if (margin_K < STOP_K) return 'do not run';
  if (margin_K < ACT_K) return 'act';
  return margin_K < EASE_K ? 'nothing' : 'comfortable';
}

/** From a peak to the fluid's own wet boiling point, and to the lowest that its class allows. */
export function fluidMargins(
  { fluid }: Brake,
  peak_K: number,
): { fluidMargin_K: number; fluidClassMargin_K: number | null; fluidCall: FluidCall } {
  const least = FLUID_MINIMA[fluid.class];
  const fluidMargin_K = kelvin(fluid.wet_boiling_C) - peak_K;
  const fluidClassMargin_K = least && kelvin(least.wet_C) - peak_K;
  return { fluidMargin_K, fluidClassMargin_K, fluidCall: fluidCall(fluidMargin_K) };
}

/** What of its label cannot be true, in words: an old fluid, or the wrong class. */
export function labelDoubts({ fluid }: Brake): Said[] {
  const least = FLUID_MINIMA[fluid.class];
  if (!least) return [];
  const points = [
    ['dry', fluid.dry_boiling_C, least.dry_C],
    ['wet', fluid.wet_boiling_C, least.wet_C],
  ] as const;
  return points
    .filter(([, own_C, least_C]) => own_C < least_C)
    .map(([name, own_C, least_C]) => {
      const own = { value: own_C, unit: '°C' };
      const ofClass = { value: least_C, unit: '°C' };
      return said`fluid is labelled ${fluid.class}, but its ${name} boiling point of ${own} is below the least of that class, ${ofClass}`;
    });
}
