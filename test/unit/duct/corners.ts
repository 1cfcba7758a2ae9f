import type { AirPathGeometry, AirPathState } from '../../../engine/duct/air-path.ts';
import { mpsFromKmh, radians } from '../../../engine/units.ts';

const bends = [60, 45].map((angle) => ({ angle_rad: radians(angle), radiusRatio: 1.5 }));

/** Narrowest area between the vanes: the circle they begin on, less their thickness, times the gap. */
function vaneArea(
  innerRadius_m: number,
  gap_m: number,
  vanes: { count: number; thickness_m: number },
): number {
  return (2 * Math.PI * innerRadius_m - vanes.count * vanes.thickness_m) * gap_m;
}

/** Front corner of a heavy fast closed car, invented. */
export const heavyFront: AirPathGeometry = {
  mouthArea_m2: 0.011,
  recovery: 0.85,
  hoses: 2,
  hoseDiameter_m: 0.076,
  hoseLength_m: 1.5,
  friction: 0.06,
  compression: 0,
  pinch: null,
  bends,
  leakArea_m2: 0.001,
  leakLoss: 2.7,
  exitCp: -0.2,
  wheelhouseCp: -0.2,
  vanes: {
    flowArea_m2: vaneArea(0.128, 0.0171, { count: 60, thickness_m: 0.0045 }),
    loss: 4,
    outerRadius_m: 0.19,
    innerRadius_m: 0.128,
    pumping: 0.5,
  },
};
export const HEAVY_WHEEL_M = 0.345;

/** Front corner of a light club car, invented. */
export const lightFront: AirPathGeometry = {
  ...heavyFront,
  mouthArea_m2: 0.0034,
  recovery: 0.75,
  hoses: 1,
  hoseDiameter_m: 0.0635,
  hoseLength_m: 1.3,
  friction: 0.055,
  leakArea_m2: 0.0009,
  vanes: {
    flowArea_m2: vaneArea(0.093, 0.0096, { count: 40, thickness_m: 0.005 }),
    loss: 4,
    outerRadius_m: 0.145,
    innerRadius_m: 0.093,
    pumping: 0.5,
  },
};
export const LIGHT_WHEEL_M = 0.295;

export const noDuct: AirPathGeometry = { ...heavyFront, mouthArea_m2: 0 };
export const solidDisc: AirPathGeometry = { ...heavyFront, vanes: null };

/** Clear air of 25 °C at sea level, the mouth open, the wheel rolling. */
export function rolling(speed_kmh: number, wheelRadius_m: number = HEAVY_WHEEL_M): AirPathState {
  const speed_mps = mpsFromKmh(speed_kmh);
  return {
    openFraction: 1,
    speed_mps,
    wheel_radps: speed_mps / wheelRadius_m,
    density_kgpm3: 1.184,
    qRatio: 1,
  };
}
