/** The vanes as a fan: what rotation adds to the pressure along the duct. */

export interface RotorPumping {
  readonly density_kgpm3: number;
  readonly wheel_radps: number;
  readonly outerRadius_m: number;
  readonly innerRadius_m: number;
}

/**
 * Static pressure rise of air that turns with the disc, from the inner to the outer edge of the vanes.
 *
 *     Δp = ½ ρ ω² (Rₒ² − Rᵢ²)
 *
 * @remarks
 * The rise with no flow. With flow a part of it is lost: 0.3 to 0.7 of it helps the duct (from memory).
 * Source: centrifugal balance of a body of fluid in solid rotation.
 *
 * @param rotor - density [kg/m³], wheel speed [rad/s], outer and inner radius of the vanes [m]
 * @returns pressure rise [Pa]
 *
 * @example
 * riseSolidBody({ density_kgpm3: 1, wheel_radps: 157.0796, outerRadius_m: 0.165, innerRadius_m: 0.1 }) // => 212.505
 */
export function riseSolidBody(rotor: RotorPumping): number {
  const { density_kgpm3, wheel_radps, outerRadius_m, innerRadius_m } = rotor;
  return 0.5 * density_kgpm3 * wheel_radps ** 2 * (outerRadius_m ** 2 - innerRadius_m ** 2);
}

/**
 * Slip factor of a vaned rotor: swirl of the air that leaves over the speed of the rim.
 *
 *     σ = 1 − √(sin β) / Z^0.7
 *
 * @remarks
 * For long passages, as in a pump. 0.92 for 36 radial vanes; Stodola 0.913, Stanitz 0.945.
 * Source: Wiesner, A review of slip factors for centrifugal impellers, J. Eng. Power 89 (1967) 558.
 *
 * @param vanes - number of vanes [-]
 * @param vaneAngle_rad - angle between the vane's end and the rim, π/2 for radial vanes [rad]
 * @returns slip factor [-]
 *
 * @example
 * slipWiesner(36) // => 0.9186
 */
export function slipWiesner(vanes: number, vaneAngle_rad: number = Math.PI / 2): number {
  return 1 - Math.sqrt(Math.sin(vaneAngle_rad)) / vanes ** 0.7;
}

/**
 * Rise of total pressure across radial vanes without swirl at their inlet.
 *
 *     Δp₀ = ρ σ U²
 *
 * @remarks
 * Loss-free. Most of it leaves the disc as swirl and is lost, so it bounds the pumping from above.
 * Source: Euler's turbine equation, in any text on turbomachines.
 *
 * @param density_kgpm3 - density [kg/m³]
 * @param rim_mps - speed of the outer edge of the vanes [m/s]
 * @param slip - slip factor [-]
 * @returns rise of total pressure [Pa]
 *
 * @example
 * riseEuler(1, 25.9181, 0.9186) // => 617.07
 */
export function riseEuler(density_kgpm3: number, rim_mps: number, slip: number): number {
  return density_kgpm3 * slip * rim_mps ** 2;
}
