/** Water that a wet track throws at a hot disc. */
import type { CornerSpec } from './corner-spec.ts';

export interface Spray {
  /** Water carried by the air at the brakes [kg/m³] */
  water_kgpm3: number;
}

/** Heat to warm water from 20 °C and evaporate it at 100 °C: 0.33 + 2.26 MJ/kg. Source: IAPWS-IF97 saturation table [J/kg] */
const EVAPORATION_JPKG = 2.59e6;
/**
 * Share of the water met that evaporates on the disc; the rest is flung off. Set so that 1 to 5 g/m³ take 0.5 to 2.6 kW from a
 * hot disc of the heavy car at 170 km/h. Common practice, no source [-]
 */
const CAUGHT = 0.28;

/**
 * Heat that spray would take from a disc hot enough to boil all it catches.
 *
 *     Q = c V̇ η h_evap,  faces: V̇ = crossflow V D t;  vanes: V̇ = the duct's
 *
 * @remarks
 * The stepper scales it down as the surface comes near ambient. Source: energy balance; the caught share is from memory.
 *
 * @param spray - water in the air, or null on a dry track [kg/m³]
 * @param spec - the corner
 * @param at - car speed [m/s] and the duct's flow [m³/s]
 * @returns heat from faces and from vanes [W]
 */
export function effectiveSpray(
  spray: Spray | null,
  { disc, wheel }: CornerSpec,
  at: { speed_mps: number; duct_m3ps: number },
): { face_W: number; vane_W: number } {
  if (!spray) return { face_W: 0, vane_W: 0 };
  const taken = spray.water_kgpm3 * CAUGHT * EVAPORATION_JPKG;
  const met_m2 = disc.outer_m * (2 * disc.cheek_m + disc.gap_m);
  return {
    face_W: taken * wheel.crossflow * at.speed_mps * met_m2,
    vane_W: disc.vented ? taken * at.duct_m3ps : 0,
  };
}
