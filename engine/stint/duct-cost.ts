/** What the air of a duct costs the car at most: all of its momentum, as if none came back where it leaves. */
import { topSpeed, topSpeedLoss } from '../car/top-speed.ts';
import { dragAreaCoolingAir, dragCoolingAir, powerCoolingAir } from '../duct/mouth-drag.ts';
import type { Scenario } from '../scenario/schema.ts';
import type { Corner } from './corners.ts';
import { dayOf } from './day.ts';
import { airPath } from './corner-air.ts';
import { clearAir } from './legs.ts';
import { airOf, carOf } from './motion.ts';
import type { DuctCost } from './result.ts';

/** Of one corner, in clear air on a level road, blanked as the stint starts and with its fuel; null without a duct. */
export function ductCost(corner: Corner, scenario: Scenario): DuctCost | null {
  if (!corner.brake.duct) return null;
  const map = airPath({ corner, scenario, gap: clearAir });
  const day = dayOf(scenario.conditions);
  const car = carOf(scenario, day, scenario.car.mass_kg + scenario.car.fuel_kg);
  const air = airOf(scenario, day, clearAir);
  const speed_mps = topSpeed(car, air);
  // the flow grows with speed: any speed of the grid gives its share
  const flow_kgps = (map.duct_kgps[1]! * speed_mps) / map.speed_mps[1]!;
  const added_m2 = dragAreaCoolingAir(flow_kgps, speed_mps, day.density_kgpm3);
  return {
    topSpeed_mps: speed_mps,
    drag_N: dragCoolingAir(flow_kgps, speed_mps),
    power_W: powerCoolingAir(flow_kgps, speed_mps),
    topSpeedLoss_mps: topSpeedLoss(car, air, added_m2),
  };
}

/** Of both corners of an axle; a corner that stands for both counts twice. Losses of top speed this small add. */
export function axleDuctCost(
  corners: readonly { side: Corner['side']; ductCost: DuctCost | null }[],
): DuctCost | null {
  const costs = corners.flatMap(({ side, ductCost: cost }) =>
    cost ? (side === 'both' ? [cost, cost] : [cost]) : [],
  );
  const [first] = costs;
  if (!first) return null;
  const sum = (of: (cost: DuctCost) => number): number => costs.reduce((total, cost) => total + of(cost), 0);
  return {
    topSpeed_mps: first.topSpeed_mps,
    drag_N: sum((cost) => cost.drag_N),
    power_W: sum((cost) => cost.power_W),
    topSpeedLoss_mps: sum((cost) => cost.topSpeedLoss_mps),
  };
}
