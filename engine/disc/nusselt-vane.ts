/** Convection inside the short passages between the vanes. */
import type { ValidRange } from '../valid-range.ts';

/** To be compared with the Reynolds number of the passages while air is driven through them. */
export const passageRange: ValidRange = {
  law: 'convection inside the vanes',
  quantity: 'Reynolds number of the passages',
  unit: '',
  low: 500,
  high: 1e5,
  source:
    'measured from about 1000 to 4000 (McPhee & Johnson 2008, its rotor estimated); above as rough tubes, Norris (from memory)',
};

export const passageShapeRange: ValidRange = {
  law: 'convection inside the vanes',
  quantity: 'hydraulic diameter over length of the passages',
  unit: '',
  low: 0,
  high: 1,
  source: 'entry factor of Hausen, passages longer than wide',
};

/**
 * Nusselt number of a smooth short passage with the air entering, from laminar to turbulent without a jump.
 *
 *     laminar   Nu = 3.66 + 0.0668 G / (1 + 0.04 G^(2/3)),  G = (d/L) Re Pr
 *     turbulent Nu = (f/8)(Re − 1000) Pr / (1 + 12.7 √(f/8) (Pr^(2/3) − 1)) · (1 + (d/L)^(2/3)),  f = (0.79 ln Re − 1.64)^−2
 *     between Re 2300 and 4000 in proportion to Re
 *
 * @remarks
 * Properties at film temperature, 0.5 < Pr < 2000, Re up to 5e6; below 2300 laminar. Rotation, roughness and the turn at
 * the entry are not in it: `nusseltVanes` puts them on it.
 * Source: Hausen (laminar entry) and Gnielinski, as in Incropera & DeWitt, Fundamentals of Heat and Mass Transfer, ch. 8;
 * entry factor of Hausen; blend between as in VDI Heat Atlas, section G1.
 *
 * @param Re - Reynolds number on the hydraulic diameter [-]
 * @param Pr - Prandtl number [-]
 * @param diameterOverLength - hydraulic diameter over length of the passage [-]
 * @returns mean Nusselt number on the hydraulic diameter [-]
 *
 * @example
 * nusseltVanePassage(1000, 0.7, 0.2) // => 8.1594
 * @example
 * nusseltVanePassage(10000, 0.7, 0.2) // => 40.015
 */
export function nusseltVanePassage(Re: number, Pr: number, diameterOverLength: number): number {
  if (Re <= 2300) return laminarEntry(Re, Pr, diameterOverLength);
  if (Re >= 4000) return turbulentEntry(Re, Pr, diameterOverLength);
  const share = (Re - 2300) / 1700;
  return (
    (1 - share) * laminarEntry(2300, Pr, diameterOverLength) +
    share * turbulentEntry(4000, Pr, diameterOverLength)
  );
}

/** Beyond it nothing was measured; the enhancement by rotation, 1.43 there, goes on to level off at 1.6. */
export const rotationRange: ValidRange = {
  law: 'what rotation adds inside the vanes',
  quantity: 'rotation number of the passages',
  unit: '',
  low: 0,
  high: 0.45,
  source:
    'highest of the experiments on two rotating passages, J. Turbomachinery 134 (2012) 011022 (its abstract)',
};

/**
 * What the turning of a passage adds to its heat transfer, where air flows outward in it.
 *
 *     R = 1 + 0.6 tanh(2 Ro),  Ro = ω d/V
 *
 * @remarks
 * Coriolis forces press the core of the flow on one flank and drive a pair of eddies: the flank that pushes takes two to
 * three times as much at Ro 0.3, the one that leads about half, the cheeks somewhat more; the mean is 1.2 to 1.4 at Ro 0.25.
 * It levels off towards 1.6. The law is ours and its size from memory, 1.0 to 1.6: in passages with ribs rotation was found to add little
 * (J. Turbomachinery 134 (2012) 011022, abstract). For an undriven rotor Ro does not depend on its speed.
 * Source: after Wagner, Johnson & Kopper, J. Turbomachinery 113 (1991) 321, smooth square passages (from memory); that
 * rotation adds at Re 1000 to 2000 too: Hogan, Convective heat transfer in rotating, circular channels, MIT 2012 (abstract).
 *
 * @param Ro - rotation number on the hydraulic diameter [-]
 * @returns factor on the Nusselt number, mean of all walls [-]
 *
 * @example
 * enhancementRotation(0.25) // => 1.2773
 */
export function enhancementRotation(Ro: number): number {
  return 1 + 0.6 * Math.tanh(2 * Ro);
}

/** Where the enhancement of a passage is defined [-] */
const REFERENCE_RE = 1e4;
/**
 * Nusselt number of the passage between two vanes: cast walls, and a sharp turn at the entry.
 *
 *     Nu⁶ = Nu_lam⁶ + Nu_rough⁶
 *     Nu_rough = E Nu_smooth(10⁴) (Re/10⁴)^m,  m = 0.8 + 0.25 n,  n = 0.68 Pr^0.215
 *
 * @remarks
 * The enhancement E is what roughness and turn give over a smooth tube at Re 10⁴, where Nu is E Nu_smooth within 1 %
 * (2 % for E of 0.8); times `enhancementRotation` where the passage turns. E 1.9 with the rotation of an undriven rotor
 * gives what was measured on one.
 * A rough wall has (f_rough/f_smooth)^n times the heat transfer of a smooth one; f_rough is constant and f_smooth falls
 * as Re^−0.25, so that h grows as Re^0.96. The flow is tripped where it separates at the entry, so the law holds below
 * Re 2300, down to where a laminar flow gives more. Both are measured: the coefficient of an undriven rotor is linear
 * in its speed.
 * Source: Norris, in Bergles & Webb (eds.), Augmentation of Convective Heat and Mass Transfer, ASME 1970 (from memory);
 * exponent checked on McPhee & Johnson, Int. J. Therm. Sci. 47 (2008) 458; laminar and smooth as in `nusseltVanePassage`.
 *
 * @param Re - Reynolds number on the hydraulic diameter [-]
 * @param Pr - Prandtl number [-]
 * @param passage - hydraulic diameter over length, and enhancement over a smooth tube at Re 10 000 [-]
 * @returns mean Nusselt number on the hydraulic diameter [-]
 *
 * @example
 * nusseltVanes(10000, 0.7, { diameterOverLength: 0.2, enhancement: 1.75 }) // => 70.03
 */
export function nusseltVanes(
  Re: number,
  Pr: number,
  { diameterOverLength, enhancement }: { diameterOverLength: number; enhancement: number },
): number {
  const exponent = exponentRoughVanes(Pr);
  const reference = enhancement * nusseltVanePassage(REFERENCE_RE, Pr, diameterOverLength);
  const rough = reference * (Re / REFERENCE_RE) ** exponent;
  const laminar = laminarEntry(Re, Pr, diameterOverLength);
  // how sharply the laminar law gives way: by the power of 10 in smooth tubes (Churchill 1977), here a tripped flow, no kink
  return Math.cbrt(Math.sqrt((laminar * laminar * laminar) ** 2 + (rough * rough * rough) ** 2));
}

/**
 * How the heat transfer of a rough wall grows with the Reynolds number.
 *
 *     m = 0.8 + 0.25 n,  n = 0.68 Pr^0.215
 *
 * @remarks
 * Its friction stays as it is where that of a smooth wall falls as Re^−0.25. Source: as `nusseltVanes`.
 *
 * @param Pr - Prandtl number [-]
 * @returns exponent of the Reynolds number [-]
 *
 * @example
 * exponentRoughVanes(0.7) // => 0.95745
 */
export const exponentRoughVanes = (Pr: number): number => 0.8 + 0.25 * 0.68 * Pr ** 0.215;

function laminarEntry(Re: number, Pr: number, diameterOverLength: number): number {
  const G = diameterOverLength * Re * Pr;
  return 3.66 + (0.0668 * G) / (1 + 0.04 * Math.cbrt(G) ** 2);
}

function turbulentEntry(Re: number, Pr: number, diameterOverLength: number): number {
  const f = 1 / (0.79 * Math.log(Re) - 1.64) ** 2;
  const smooth = ((f / 8) * (Re - 1000) * Pr) / (1 + 12.7 * Math.sqrt(f / 8) * (Math.cbrt(Pr) ** 2 - 1));
  return smooth * (1 + Math.cbrt(diameterOverLength) ** 2);
}

/**
 * Conductance of a wall to air that flows past it and warms up on the way.
 *
 *     G = ṁ c_p (1 − e^(−hA/ṁc_p))
 *
 * @remarks
 * Heat given is G (T_wall − T_in). Wall at one temperature; no storage in the air.
 * Source: Incropera & DeWitt, Fundamentals of Heat and Mass Transfer, section 8.3 (constant surface temperature).
 *
 * @param flow_WpK - heat capacity of the flow ṁ c_p [W/K]
 * @param wall_WpK - convection of the wall h A [W/K]
 * @returns conductance on the inlet difference [W/K]
 *
 * @example
 * conductanceWarmingAir(100, 50) // => 39.347
 */
export function conductanceWarmingAir(flow_WpK: number, wall_WpK: number): number {
  return flow_WpK > 0 ? -flow_WpK * Math.expm1(-wall_WpK / flow_WpK) : 0;
}

/**
 * Efficiency of a vane as a fin between two cheeks of equal temperature.
 *
 *     η = tanh(mL)/(mL),  m = √(2h/(k t)),  L = half the gap
 *
 * @remarks
 * Plane fin with an adiabatic middle. Source: Incropera & DeWitt, Fundamentals of Heat and Mass Transfer, section 3.6.
 *
 * @param h - convection coefficient [W/(m² K)]
 * @param kt - conductivity times vane thickness [W/K]
 * @param half_m - half the distance between the cheeks [m]
 * @returns fin efficiency [-]
 *
 * @example
 * efficiencyVane(100, 0.18, 0.0085) // => 0.9741
 */
export function efficiencyVane(h: number, kt: number, half_m: number): number {
  const mL = Math.sqrt((2 * h) / kt) * half_m;
  return mL > 1e-6 ? Math.tanh(mL) / mL : 1;
}
