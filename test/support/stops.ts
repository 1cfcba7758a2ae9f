import type { BrakeHeat } from '../../engine/car/brake-heat.ts';
import type { Layout } from '../../engine/circuit/layout.ts';
import type { SpeedProfile } from '../../engine/circuit/speed-profile.ts';

export interface Stop {
  /** the corner it is for */
  corner: string;
  start_s: number;
  end_s: number;
  from_mps: number;
  to_mps: number;
  heat_J: number;
}

/** Braking phases of a lap, each as long as the brakes make heat without a break. */
export function stopsOf(lap: SpeedProfile, heat: BrakeHeat, layout: Layout): Stop[] {
  const stops: Stop[] = [];
  const n = lap.speed_mps.length - 1;
  for (let i = 0; i < n; i++) {
    if (heat.power_W[i] === 0) continue;
    let end = i;
    while (end < n && heat.power_W[end]! > 0) end++;
    const at_m = lap.distance_m[i]!;
    stops.push({
      corner: (layout.corners.find(({ to_m }) => to_m > at_m) ?? layout.corners[0])!.name,
      start_s: lap.time_s[i]!,
      end_s: lap.time_s[end]!,
      from_mps: lap.speed_mps[i]!,
      to_mps: lap.speed_mps[end]!,
      heat_J: heat.cumulative_J[end]! - heat.cumulative_J[i]!,
    });
    i = end;
  }
  return stops;
}
