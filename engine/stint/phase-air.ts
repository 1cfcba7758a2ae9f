/** The air of a corner in each phase of the stint: with its tape and its day, in clear air and behind the car ahead. */
import type { Scenario } from '../scenario/schema.ts';
import { airKey, airPath, wakeAt, type CornerAirRequest } from './corner-air.ts';
import type { Corner } from './corners.ts';
import { dayOf } from './day.ts';
import { clearAir, legsOf } from './legs.ts';
import { memo } from './memo.ts';
import type { AirColumns, PhaseAir } from './result.ts';

/** One a leg, whether anything is driven in it or not. */
export const phaseAirs = (corner: Corner, scenario: Scenario): PhaseAir[] =>
  legsOf(scenario).map((leg) => {
    const at = (gap = leg.gap): AirColumns => airOver({ corner, scenario: leg.scenario, gap });
    return { clear: at(clearAir), traffic: leg.gap.share === 0 ? null : at() };
  });

/** The mean by time of clear air and of the wake at each speed, as its conductances are. */
const airOver: (request: CornerAirRequest) => AirColumns = memo(64, airKey, (request) => {
  const { scenario, gap } = request;
  const behind = airPath(request);
  const { density_kgpm3 } = dayOf(scenario.conditions);
  const wakes = Array.from(behind.speed_mps, (speed_mps) => wakeAt(scenario, gap, speed_mps));
  const clear = gap.share === 0 ? behind : airPath({ ...request, gap: clearAir });
  const mean = (a: Float64Array, b: Float64Array): Float64Array =>
    a.map((value, i) => value + wakes[i]!.weight * (b[i]! - value));
  return {
    speedStep_mps: behind.speed_mps[1]!,
    duct_kgps: mean(clear.duct_kgps, behind.duct_kgps),
    vane_kgps: mean(clear.vane_kgps, behind.vane_kgps),
    leak_kgps: mean(clear.leak_kgps, behind.leak_kgps),
    plenum_Pa: mean(clear.plenum_Pa, behind.plenum_Pa),
    ram_Pa: behind.speed_mps.map((speed_mps, i) => {
      const { qRatio, weight } = wakes[i]!;
      return 0.5 * density_kgpm3 * speed_mps ** 2 * (1 + weight * (qRatio - 1));
    }),
  };
});
