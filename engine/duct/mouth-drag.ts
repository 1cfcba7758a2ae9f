/** What the car pays for its cooling air. */

/**
 * Drag of the air that a duct takes in, at most.
 *
 *     F = ṁ V
 *
 * @remarks
 * As if all of its momentum were lost; air that leaves backwards with some speed gives a part back.
 * Source: momentum balance.
 *
 * @param duct_kgps - mass flow into the mouth [kg/s]
 * @param speed_mps - speed of the car [m/s]
 * @returns drag force [N]
 *
 * @example
 * dragCoolingAir(0.248, 55.556) // => 13.78
 */
export function dragCoolingAir(duct_kgps: number, speed_mps: number): number {
  return duct_kgps * speed_mps;
}
