/** Convection inside the short passages between the vanes. */

/**
 * Nusselt number of a smooth short passage with the air entering, from laminar to turbulent without a jump.
 *
 *     laminar   Nu = 3.66 + 0.0668 G / (1 + 0.04 G^(2/3)),  G = (d/L) Re Pr
 *     turbulent Nu = (f/8)(Re − 1000) Pr / (1 + 12.7 √(f/8) (Pr^(2/3) − 1)) · (1 + (d/L)^(2/3)),  f = (0.79 ln Re − 1.64)^−2
 *     between Re 2300 and 4000 in proportion to Re
 *
 * @remarks
 * Properties at film temperature, 0.5 < Pr < 2000, Re up to 5e6; below 2300 laminar. Rotation, roughness and the turn at
 * the entry are not in it: they are the passage's enhancement factor.
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

function laminarEntry(Re: number, Pr: number, diameterOverLength: number): number {
  const G = diameterOverLength * Re * Pr;
  return 3.66 + (0.0668 * G) / (1 + 0.04 * G ** (2 / 3));
}

function turbulentEntry(Re: number, Pr: number, diameterOverLength: number): number {
  const f = (0.79 * Math.log(Re) - 1.64) ** -2;
  const smooth = ((f / 8) * (Re - 1000) * Pr) / (1 + 12.7 * Math.sqrt(f / 8) * (Pr ** (2 / 3) - 1));
  return smooth * (1 + diameterOverLength ** (2 / 3));
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
