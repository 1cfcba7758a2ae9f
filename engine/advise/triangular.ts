/** Exact integrals of a triangular forecast: nothing outside low and high, and the likely value the most probable. */
import type { Forecast } from '../scenario/event-schema.ts';

/**
 * Chance that a forecast value comes out at most so high.
 *
 *     F(x) = (x − a)²/((b − a)(c − a))          for x ≤ c
 *     F(x) = 1 − (b − x)²/((b − a)(b − c))      above
 *
 * @remarks a, b, c: low, high, likely. A forecast without width is certain. Source: by integration of the density, two straight lines.
 * @returns chance, 0 to 1 [-]
 * @example shareBelow(1, { low: 0, likely: 1, high: 4 }) // => 0.25
 */
export function shareBelow(x: number, { low, likely, high }: Forecast): number {
  if (x >= high) return 1;
  if (x < low) return 0;
  if (x <= likely && likely > low) return (x - low) ** 2 / ((high - low) * (likely - low));
  return 1 - (high - x) ** 2 / ((high - low) * (high - likely));
}

/**
 * The part of a forecast's mean that comes from values up to x: over the chance of these, their own mean.
 *
 *     M(x) = a F(x) + ⅔ (x − a)³/((b − a)(c − a))                          for x ≤ c
 *     M(x) = (a + b + c)/3 − b (1 − F(x)) + ⅔ (b − x)³/((b − a)(b − c))    above
 *
 * @remarks a, b, c: low, high, likely. Source: by integration of x times the density.
 * @returns ∫ x p(x) dx from low to x [as the forecast]
 * @example meanBelow(1, { low: 0, likely: 1, high: 4 }) // => 0.16667
 */
export function meanBelow(x: number, forecast: Forecast): number {
  const { low, likely, high } = forecast;
  if (x >= high) return meanOf(forecast);
  if (x < low) return 0;
  const share = shareBelow(x, forecast);
  if (x <= likely && likely > low)
    return low * share + (2 * (x - low) ** 3) / (3 * (high - low) * (likely - low));
  const upper = (2 * (high - x) ** 3) / (3 * (high - low) * (high - likely));
  return meanOf(forecast) - high * (1 - share) + upper;
}

/**
 * Mean of a forecast.
 *
 *     x̄ = (a + b + c)/3
 *
 * @remarks Source: by integration of x times the density.
 * @returns mean [as the forecast]
 * @example meanOf({ low: 0, likely: 1, high: 5 }) // => 2
 */
export const meanOf = ({ low, likely, high }: Forecast): number => (low + likely + high) / 3;
