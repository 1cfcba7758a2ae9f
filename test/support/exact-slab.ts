/**
 * A slab heated on one side and closed on the other, exactly.
 *
 * Source: Carslaw & Jaeger, Conduction of Heat in Solids, 2nd edition (1959), section 3.8, and Duhamel's theorem for a flux
 * that falls in a straight line.
 */

const TERMS = 400;

/** Rise of the heated side under a constant flux, over q L / k, at Fo = α t / L². */
export function surfaceUnderConstantFlux(Fo: number): number {
  let sum = 0;
  for (let n = 1; n <= TERMS; n++) sum += Math.exp(-((n * Math.PI) ** 2) * Fo) / n ** 2;
  return Fo + 1 / 3 - (2 / Math.PI ** 2) * sum;
}

/** The same integrated over Fo from 0. */
function integralUnderConstantFlux(Fo: number): number {
  let sum = 0;
  for (let n = 1; n <= TERMS; n++) sum += (1 - Math.exp(-((n * Math.PI) ** 2) * Fo)) / n ** 4;
  return Fo ** 2 / 2 + Fo / 3 - (2 / Math.PI ** 4) * sum;
}

/** Rise of the heated side under a flux that falls from q₀ to 0 at FoStop, over q₀ L / k. */
export const surfaceUnderFallingFlux = (Fo: number, FoStop: number): number =>
  surfaceUnderConstantFlux(Fo) - integralUnderConstantFlux(Fo) / FoStop;

/** Its highest value, by golden section over the stop. */
export function peakUnderFallingFlux(FoStop: number): number {
  const golden = (Math.sqrt(5) - 1) / 2;
  let [low, high] = [0, FoStop];
  for (let n = 0; n < 60; n++) {
    const [a, b] = [high - golden * (high - low), low + golden * (high - low)];
    if (surfaceUnderFallingFlux(a, FoStop) < surfaceUnderFallingFlux(b, FoStop)) low = a;
    else high = b;
  }
  return surfaceUnderFallingFlux(low, FoStop);
}
