import type { Layout } from './layout.ts';
import { radians } from '../units.ts';

/** The lap as a drawing, on the nodes of its layout; the last point is the first. */
export interface Outline {
  x_m: Float64Array;
  y_m: Float64Array;
  /** gap between end and start before it was shared out over the lap [m] */
  closing_m: number;
  /** total change of heading over the lap, left positive [rad] */
  turning_rad: number;
}

/**
 * Draws a layout by following its heading, and shares the closing error out evenly over the lap.
 *
 *     ψ' = κ,  x' = cos ψ,  y' = sin ψ
 *
 * Each step is a chord at its mid heading: for steps far shorter than a radius that is second-order exact.
 */
export function outlineOf(layout: Layout, startHeading_deg = 0): Outline {
  const { curvature_pm, step_m } = layout;
  const n = curvature_pm.length - 1;
  const x_m = new Float64Array(n + 1);
  const y_m = new Float64Array(n + 1);
  const start = radians(startHeading_deg);
  let heading = start;
  for (let i = 0; i < n; i++) {
    const turn = (step_m * (curvature_pm[i]! + curvature_pm[i + 1]!)) / 2;
    x_m[i + 1] = x_m[i]! + step_m * Math.cos(heading + turn / 2);
    y_m[i + 1] = y_m[i]! + step_m * Math.sin(heading + turn / 2);
    heading += turn;
  }
  const dx = x_m[n]!;
  const dy = y_m[n]!;
  for (let i = 0; i <= n; i++) {
    x_m[i]! -= (dx * i) / n;
    y_m[i]! -= (dy * i) / n;
  }
  return { x_m, y_m, closing_m: Math.hypot(dx, dy), turning_rad: heading - start };
}
