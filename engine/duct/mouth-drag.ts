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

/**
 * Power that the drag of the cooling air takes at the wheels, at most.
 *
 *     P = ṁ V²
 *
 * @remarks
 * Grows with the cube of speed, as the flow grows with it.
 * Source: force times speed.
 *
 * @param duct_kgps - mass flow into the mouth [kg/s]
 * @param speed_mps - speed of the car [m/s]
 * @returns power [W]
 *
 * @example
 * powerCoolingAir(0.248, 55.556) // => 765.4
 */
export function powerCoolingAir(duct_kgps: number, speed_mps: number): number {
  return dragCoolingAir(duct_kgps, speed_mps) * speed_mps;
}

/**
 * Drag area of the cooling air, at most: what it adds to that of the car.
 *
 *     CdA = 2 ṁ / (ρ V)
 *
 * @remarks
 * Twice the area of free stream that ends in the duct. Does not depend on speed, for the flow grows with it.
 * Source: definition of drag area; momentum balance.
 *
 * @param duct_kgps - mass flow into the mouth [kg/s]
 * @param speed_mps - speed of the car, above 0 [m/s]
 * @param density_kgpm3 - ambient density [kg/m³]
 * @returns drag area [m²]
 *
 * @example
 * dragAreaCoolingAir(0.248, 55.556, 1.184) // => 0.00754048
 */
export function dragAreaCoolingAir(duct_kgps: number, speed_mps: number, density_kgpm3: number): number {
  return (2 * duct_kgps) / (density_kgpm3 * speed_mps);
}
