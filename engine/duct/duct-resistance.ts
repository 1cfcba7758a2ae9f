/**
 * The duct as resistances in series. A resistance is K/A² [1/m⁴], so that Δp = R ṁ²/2ρ whatever the section, and
 * R = 1/(loss-free area)².
 */

import type { AirPathGeometry } from './air-path.ts';
import { lossFlattened } from './flattened.ts';
import { frictionCompressedHose, lossFriction } from './hose.ts';
import { LOSS_EXIT, lossContraction, lossExpansion } from './loss-area-change.ts';
import { lossBendRennels } from './loss-bend.ts';
import { conductanceMouth } from './loss-perforated.ts';

export interface DuctResistance {
  readonly areaChange_pm4: number;
  readonly friction_pm4: number;
  readonly bends_pm4: number;
  /** Where the hose is squeezed flat: into it, along it and out of it. */
  readonly flattened_pm4: number;
  /** The jet out of the hoses, lost in the plenum. */
  readonly exit_pm4: number;
}

/**
 * Resistance of everything behind the mouth, by part.
 *
 * @remarks
 * Hoses lie side by side and share the flow equally. The hose's length holds its bends and its flattened part, whose
 * wall friction is in their own losses: friction counts for the straight round rest.
 * Source: the loss coefficients named in their files, in series.
 *
 * @param geometry - the air path; its duct must exist
 * @returns resistances of area change, friction, bends, flattened part and exit [1/m⁴]
 */
export function ductResistance(geometry: AirPathGeometry): DuctResistance {
  const { mouthArea_m2, hoses, hoseDiameter_m, bends } = geometry;
  const hoses_m2 = hoses * (Math.PI / 4) * hoseDiameter_m ** 2;
  const friction = frictionCompressedHose(geometry.friction, geometry.compression);
  const inBends_m = hoseDiameter_m * bends.reduce((sum, bend) => sum + bend.angle_rad * bend.radiusRatio, 0);
  const flat_m = Math.min(geometry.pinch?.length_m ?? 0, geometry.hoseLength_m);
  const straight_m = Math.max(0, geometry.hoseLength_m - inBends_m - flat_m);
  const bendLoss = bends.reduce((sum, b) => sum + lossBendRennels(b.angle_rad, b.radiusRatio, friction), 0);
  return {
    areaChange_pm4: resistanceAreaChange(mouthArea_m2, hoses_m2),
    friction_pm4: lossFriction(friction, straight_m, hoseDiameter_m) / hoses_m2 ** 2,
    bends_pm4: bendLoss / hoses_m2 ** 2,
    flattened_pm4: geometry.pinch
      ? lossFlattened(geometry.pinch.flattened, friction, flat_m / hoseDiameter_m) / hoses_m2 ** 2
      : 0,
    exit_pm4: LOSS_EXIT / hoses_m2 ** 2,
  };
}

/**
 * Loss-free area of the whole duct, from the air ahead of its mouth to the plenum behind the disc.
 *
 *     G = A g / √(1 + (A g)² ΣR)
 *
 * @remarks
 * Written with the mouth's conductance g so that a closed mouth, or no duct, gives 0 and no infinity.
 * Source: losses in series.
 *
 * @param geometry - the air path
 * @param openFraction - share of the mouth's area that is not taped, 0 to 1 [-]
 * @returns area A/√K of the duct [m²]
 *
 * @example
 * ductLossFreeArea({ mouthArea_m2: 0.00453646, hoses: 1, hoseDiameter_m: 0.076, hoseLength_m: 1.4,
 *   friction: 0.05, compression: 0, pinch: null, bends: [] }, 1) * 1e4 // => 29.16
 */
export function ductLossFreeArea(geometry: AirPathGeometry, openFraction: number): number {
  const mouth_m2 = geometry.mouthArea_m2 * conductanceMouth(openFraction, geometry.blankDepth);
  if (mouth_m2 === 0) return 0;
  const { areaChange_pm4, friction_pm4, bends_pm4, flattened_pm4, exit_pm4 } = ductResistance(geometry);
  const behind_pm4 = areaChange_pm4 + friction_pm4 + bends_pm4 + flattened_pm4 + exit_pm4;
  return mouth_m2 / Math.sqrt(1 + mouth_m2 ** 2 * behind_pm4);
}

function resistanceAreaChange(from_m2: number, to_m2: number): number {
  return to_m2 < from_m2
    ? lossContraction(to_m2 / from_m2) / to_m2 ** 2
    : lossExpansion(from_m2 / to_m2) / from_m2 ** 2;
}
