/** Where along the way the pressure goes. */

import type { AirFlows, AirPathGeometry, AirPathState } from './air-path.ts';
import { ductResistance } from './duct-resistance.ts';

export interface PressureDrops {
  /** Dynamic pressure of the air the car meets: all there is to have. */
  readonly ram_Pa: number;
  /** Lost before the mouth: what the mouth's place on the car does not recover. */
  readonly recovery_Pa: number;
  readonly mouth_Pa: number;
  readonly areaChange_Pa: number;
  readonly friction_Pa: number;
  readonly bends_Pa: number;
  readonly flattened_Pa: number;
  readonly exit_Pa: number;
  /** What is left behind the disc to drive vanes and leak. */
  readonly plenum_Pa: number;
}

/**
 * Pressure lost in each part of the duct at a solved flow.
 *
 *     Δp = R ṁ² / 2ρ
 *
 * @remarks
 * The parts add up to the ram pressure. The mouth takes what the others leave, which is the right answer for a shut
 * mouth too. Needs a duct.
 * Source: definition of the loss coefficient.
 *
 * @param geometry - the air path
 * @param state - as for the flows
 * @param flows - the solution for both
 * @returns pressure drops [Pa]
 */
export function pressureDrops(
  geometry: AirPathGeometry,
  state: AirPathState,
  flows: AirFlows,
): PressureDrops {
  const ram_Pa = state.qRatio * 0.5 * state.density_kgpm3 * state.speed_mps ** 2;
  const resistance = ductResistance(geometry);
  const drop_Pa = (flows.duct_kgps * Math.abs(flows.duct_kgps)) / (2 * state.density_kgpm3);
  const areaChange_Pa = resistance.areaChange_pm4 * drop_Pa;
  const friction_Pa = resistance.friction_pm4 * drop_Pa;
  const bends_Pa = resistance.bends_pm4 * drop_Pa;
  const flattened_Pa = resistance.flattened_pm4 * drop_Pa;
  const exit_Pa = resistance.exit_pm4 * drop_Pa;
  const behindMouth_Pa = areaChange_Pa + friction_Pa + bends_Pa + flattened_Pa + exit_Pa;
  return {
    ram_Pa,
    recovery_Pa: (1 - geometry.recovery) * ram_Pa,
    mouth_Pa: geometry.recovery * ram_Pa - flows.plenum_Pa - behindMouth_Pa,
    areaChange_Pa,
    friction_Pa,
    bends_Pa,
    flattened_Pa,
    exit_Pa,
    plenum_Pa: flows.plenum_Pa,
  };
}
