/**
 * Friction against temperature, and what it asks of the driver's leg. It changes the pedal, not the heat: the car is
 * stopped by the same force, so whatever the friction is, the driver presses until that force is there.
 */

/** One point of a pad's friction against the temperature of the face it rubs. */
export interface FrictionPoint {
  face_K: number;
  coefficient: number;
}

/**
 * Friction coefficient of a pad at a face temperature.
 *
 *     μ(T) runs straight between the points, and is that of the nearest point outside them
 *
 * @remarks
 * Range: that of the points. Straight lines, because a maker's list of a few points says no more; what depends on
 * pressure, speed, bedding and on whether the pad is heating or cooling is not in it.
 * Source: the points are the pad maker's; the interpolation is a choice.
 *
 * @param curve - points in order of temperature, at least one
 * @param face_K - temperature of the rubbed face
 * @returns friction coefficient [-]
 *
 * @example
 * frictionAt([{ face_K: 400, coefficient: 0.4 }, { face_K: 600, coefficient: 0.5 }], 450) // => 0.425
 */
export function frictionAt(curve: readonly FrictionPoint[], face_K: number): number {
  const above = curve.findIndex((point) => point.face_K >= face_K);
  const high = curve.at(above)!;
  if (above <= 0) return high.coefficient;
  const low = curve[above - 1]!;
  const share = (face_K - low.face_K) / (high.face_K - low.face_K);
  return low.coefficient + share * (high.coefficient - low.coefficient);
}

/**
 * Pedal effort for the same deceleration, relative to that with the face in the middle of its window.
 *
 *     e = μ(T_mid) / μ(T_face),   from   F = 2 μ p A
 *
 * @remarks
 * For the axle alone: both axles share one pedal, so the leg feels the mean of their frictions, weighted by their force.
 * Booster, pedal ratio and a soft or long pedal are not in it.
 * Source: force of a disc brake, Limpert, Brake Design and Safety, ch. 2 (from memory).
 *
 * @param curve - friction against temperature
 * @param face_K - temperature of the rubbed face
 * @param middle_K - middle between bite and face peak
 * @returns effort over that in the middle of the window [-]
 *
 * @example
 * pedalEffort([{ face_K: 400, coefficient: 0.4 }, { face_K: 600, coefficient: 0.5 }], 400, 600) // => 1.25
 */
export const pedalEffort = (curve: readonly FrictionPoint[], face_K: number, middle_K: number): number =>
  frictionAt(curve, middle_K) / frictionAt(curve, face_K);

/** The least and the most of it while the face goes from one temperature to the other, through all between. */
export function effortBetween(
  curve: readonly FrictionPoint[],
  [low_K, high_K]: readonly [number, number],
  middle_K: number,
): { lowest: number; highest: number } {
  const met = curve.map((point) => point.face_K).filter((face_K) => face_K > low_K && face_K < high_K);
  const efforts = [low_K, ...met, high_K].map((face_K) => pedalEffort(curve, face_K, middle_K));
  return { lowest: Math.min(...efforts), highest: Math.max(...efforts) };
}
