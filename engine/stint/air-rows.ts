/** Flows of a corner in clear air at round speeds, for tables. */
import { dragCoolingAir, powerCoolingAir } from '../duct/mouth-drag.ts';
import type { Scenario } from '../scenario/schema.ts';
import { mpsFromKmh } from '../units.ts';
import { airPath } from './corner-air.ts';
import type { Corner } from './corners.ts';
import { clearAir } from './legs.ts';
import type { AirRow } from './result.ts';

/** 0 to 300 km/h by 20. */
export function airRows(corner: Corner, scenario: Scenario): AirRow[] {
  const map = airPath({ corner, scenario, gap: clearAir });
  const step_mps = map.speed_mps[1]!;
  return Array.from({ length: 16 }, (_, i) => {
    const speed_mps = mpsFromKmh(20 * i);
    const r = speed_mps / step_mps;
    const flow_kgps = r * map.duct_kgps[1]!;
    return {
      speed_mps,
      ductFlow_kgps: flow_kgps,
      vaneFlow_kgps: r * map.vane_kgps[1]!,
      leakFlow_kgps: r * map.leak_kgps[1]!,
      plenum_Pa: r * r * map.plenum_Pa[1]!,
      drag_N: dragCoolingAir(flow_kgps, speed_mps),
      dragPower_W: powerCoolingAir(flow_kgps, speed_mps),
    };
  });
}
