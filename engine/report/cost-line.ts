/** What cooling air costs, as records of the JSON result and as lines of a terminal's table. */
import type { DuctCost } from '../stint/result.ts';
import { kmhFromMps } from '../units.ts';

/** At most, of one corner at the car's top speed on a level road. */
export interface CostRecord {
  topSpeed_kmh: number;
  drag_N: number;
  power_kW: number;
  topSpeedLoss_kmh: number;
}

export function costRecord({ topSpeed_mps, drag_N, power_W, topSpeedLoss_mps }: DuctCost): CostRecord {
  return {
    topSpeed_kmh: kmhFromMps(topSpeed_mps),
    drag_N,
    power_kW: power_W / 1000,
    topSpeedLoss_kmh: kmhFromMps(topSpeedLoss_mps),
  };
}

/** Speed at which drag and power are told [km/h] */
const TOLD_AT_KMH = 200;

/** What of a corner's record the line tells. */
export interface Costly {
  side: 'both' | 'left' | 'right';
  air: { speed_kmh: number; drag_N: number; dragPower_kW: number }[];
  ductCost: CostRecord | null;
}

/** One line for each corner with a duct; a corner that stands for both sides tells of both. */
export function costLine(name: string, { side, air, ductCost }: Costly): string[] {
  const row = air.find(({ speed_kmh }) => speed_kmh === TOLD_AT_KMH);
  if (!ductCost || !row) return [];
  const count = side === 'both' ? 2 : 1;
  const drag = `${(count * row.drag_N).toFixed(0)} N and ${(count * row.dragPower_kW).toFixed(1)} kW at ${TOLD_AT_KMH} km/h`;
  const loss = `${(count * ductCost.topSpeedLoss_kmh).toFixed(1)} km/h of top speed`;
  return [
    `${name}: cooling air costs at most ${drag}, ${loss}${count === 2 ? ', both corners together' : ''}`,
  ];
}
