/** Darcy friction factors of round pipes. For other sections use the hydraulic diameter. */

/** Fixed steps from Haaland's value; each shrinks the error about tenfold or better. */
const COLEBROOK_STEPS = 8;

/**
 * Friction factor of a turbulent pipe flow, Colebrook's implicit law solved by iteration.
 *
 *     1/√f = −2 log₁₀( (ε/D)/3.7 + 2.51/(Re √f) )
 *
 * @remarks
 * Re above 4000, ε/D from 0 to 0.05. Below Re 4000 it has no meaning: use Churchill's.
 * Source: Colebrook, Turbulent flow in pipes, J. Inst. Civil Engineers 11 (1939) 133.
 *
 * @param Re - Reynolds number, above 4000 [-]
 * @param relativeRoughness - roughness height over diameter, 0 to 0.05 [-]
 * @returns Darcy friction factor [-]
 *
 * @example
 * frictionColebrook(1e5, 1e-4) // => 0.018514
 */
export function frictionColebrook(Re: number, relativeRoughness: number): number {
  const rough = relativeRoughness / 3.7;
  let x = 1 / Math.sqrt(frictionHaaland(Re, relativeRoughness));
  for (let step = 0; step < COLEBROOK_STEPS; step++) x = -2 * Math.log10(rough + (2.51 * x) / Re);
  return 1 / (x * x);
}

/**
 * Friction factor of a turbulent pipe flow, Haaland's explicit form.
 *
 *     1/√f = −1.8 log₁₀[ ((ε/D)/3.7)^1.11 + 6.9/Re ]
 *
 * @remarks
 * Re above 4000, ε/D from 0 to 0.05; within 1.5 % of Colebrook.
 * Source: Haaland, Simple and explicit formulas for the friction factor in turbulent pipe flow,
 * J. Fluids Engineering 105 (1983) 89.
 *
 * @param Re - Reynolds number, above 4000 [-]
 * @param relativeRoughness - roughness height over diameter, 0 to 0.05 [-]
 * @returns Darcy friction factor [-]
 *
 * @example
 * frictionHaaland(1e5, 1e-4) // => 0.018265
 */
export function frictionHaaland(Re: number, relativeRoughness: number): number {
  return (1.8 * Math.log10((relativeRoughness / 3.7) ** 1.11 + 6.9 / Re)) ** -2;
}

/**
 * Friction factor of a pipe flow in any regime, Churchill's single equation.
 *
 *     f = 8 [ (8/Re)^12 + (A + B)^(−3/2) ]^(1/12)
 *     A = { 2.457 ln[ 1 / ((7/Re)^0.9 + 0.27 ε/D) ] }^16;  B = (37530/Re)^16
 *
 * @remarks
 * Any Re above 0; 64/Re when laminar, smooth through the transition. Within 3 % of Colebrook above Re 4000.
 * Source: Churchill, Friction-factor equation spans all fluid-flow regimes, Chemical Engineering 84 (1977) 91.
 *
 * @param Re - Reynolds number, above 0 [-]
 * @param relativeRoughness - roughness height over diameter, 0 to 0.05 [-]
 * @returns Darcy friction factor [-]
 *
 * @example
 * frictionChurchill(1000, 0) // => 0.064000
 */
export function frictionChurchill(Re: number, relativeRoughness: number): number {
  const A = (-2.457 * Math.log((7 / Re) ** 0.9 + 0.27 * relativeRoughness)) ** 16;
  const B = (37_530 / Re) ** 16;
  return 8 * ((8 / Re) ** 12 + (A + B) ** -1.5) ** (1 / 12);
}
