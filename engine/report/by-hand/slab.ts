/** A cheek by hand: a slab heated on one side by a flux that falls evenly to nothing, closed on the other. */

const TERMS = 60;
/** Moments of the stop at which the face is looked at. */
const LOOKS = 400;

/**
 * Highest rise of the heated side within the stop, over q₀ L / k, for a stop that lasts Fo = α t / L².
 *
 * Source: Carslaw & Jaeger, Conduction of Heat in Solids, 2nd edition (1959), 3.8, by Duhamel's theorem for the falling flux.
 */
export function slabPeak(stop_Fo: number): number {
  let most = 0;
  for (let n = 1; n <= LOOKS; n++) most = Math.max(most, riseAt((stop_Fo * n) / LOOKS, stop_Fo));
  return most;
}

function riseAt(Fo: number, stop_Fo: number): number {
  let [constant, integral] = [Fo + 1 / 3, Fo ** 2 / 2 + Fo / 3];
  for (let n = 1; n <= TERMS; n++) {
    const left = Math.exp(-((n * Math.PI) ** 2) * Fo);
    constant -= (2 * left) / (n * Math.PI) ** 2;
    integral -= (2 * (1 - left)) / (n * Math.PI) ** 4;
  }
  return constant - integral / stop_Fo;
}
