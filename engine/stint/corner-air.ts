/** The conductance map of a corner in one leg of the stint: its duct, its tape, the day and the car ahead. */
import { dynamicPressureRatioWake, wakeHeatRise } from '../air/wake.ts';
import { conductanceMap, type ConductanceMap } from '../disc/conductance-map.ts';
import { airPathMap, type AirPathMap } from '../duct/air-path-map.ts';
import { solveAirPath } from '../duct/network.ts';
import type { Scenario } from '../scenario/schema.ts';
import { airPathOf, blankingAt, specOf, type Corner } from './corners.ts';
import { dayOf } from './day.ts';
import { clearAir, gapAt, type Gap } from './legs.ts';
import { memo } from './memo.ts';

/** Grid of car speed; beyond its end the flows go on in proportion [m/s] */
const SPEED_STEP_MPS = 4;
const SPEEDS = 31;
const speeds_mps = Float64Array.from({ length: SPEEDS }, (_, i) => i * SPEED_STEP_MPS);

export interface CornerAirRequest {
  corner: Corner;
  scenario: Scenario;
  gap: Gap;
}

/** Map of a corner in a leg; made again only when brake, tape, day, gap or cooling correction changed. */
export const cornerAir = memo(
  64,
  ({ corner, scenario: s, gap }: CornerAirRequest) => [
    corner.brake,
    blankingAt(s, corner.axle, corner.side),
    s.conditions,
    gap,
    s.traffic.car_ahead_drag_area_m2,
    s.car.loaded_radius_m,
    s.correction.cooling.factor,
  ],
  (request) => {
    if (request.gap.share === 0) return mapBehind(request, clearAir);
    const following = mapBehind(request, request.gap);
    return request.gap.share === 1
      ? following
      : mix(mapBehind(request, clearAir), following, request.gap.share);
  },
);

function mapBehind(request: CornerAirRequest, gap: Gap): ConductanceMap {
  const { corner, scenario } = request;
  const day = dayOf(scenario.conditions);
  const spec = specOf(corner.brake, scenario.car.loaded_radius_m);
  const warm_K = wakeWarmth(gap, scenario);
  return conductanceMap(spec, airPath(request, gap), {
    ambient_K: day.ambient_K + warm_K,
    pressure_Pa: day.pressure_Pa,
    spray: day.wet ? { water_kgpm3: day.spray_kgpm3 } : null,
    cooling: scenario.correction.cooling.factor,
  });
}

/** Flows of a corner over the grid of speeds behind a car, or in clear air. */
export function airPath({ corner, scenario }: CornerAirRequest, gap: Gap = clearAir): AirPathMap {
  const { axle, side, brake } = corner;
  const geometry = airPathOf(brake, specOf(brake, scenario.car.loaded_radius_m));
  const open = {
    openFraction: 1 - blankingAt(scenario, axle, side) / 100,
    density_kgpm3: dayOf(scenario.conditions).density_kgpm3,
  };
  const wheelRadius_m = scenario.car.loaded_radius_m;
  const ratioAt = (speed_mps: number): number => {
    const gap_m = gapAt(gap, speed_mps);
    return Number.isFinite(gap_m)
      ? dynamicPressureRatioWake(gap_m, scenario.traffic.car_ahead_drag_area_m2)
      : 1;
  };
  if (gap.gap_s === null)
    return airPathMap(geometry, speeds_mps, { ...open, wheelRadius_m, qRatio: ratioAt(0) });
  // a gap in seconds is another distance, and so another wake, at every speed
  const rows = Array.from(speeds_mps, (speed_mps) =>
    solveAirPath(geometry, {
      ...open,
      speed_mps,
      wheel_radps: speed_mps / wheelRadius_m,
      qRatio: ratioAt(speed_mps),
    }),
  );
  return {
    speed_mps: speeds_mps,
    duct_kgps: Float64Array.from(rows, (row) => row.duct_kgps),
    vane_kgps: Float64Array.from(rows, (row) => row.vane_kgps),
    leak_kgps: Float64Array.from(rows, (row) => row.leak_kgps),
    plenum_Pa: Float64Array.from(rows, (row) => row.plenum_Pa),
  };
}

/** Speed at which the warmth of the wake behind a gap in seconds is taken [m/s] */
const WARMTH_SPEED_MPS = 45;

function wakeWarmth(gap: Gap, { traffic }: Scenario): number {
  const gap_m = gapAt(gap, WARMTH_SPEED_MPS);
  return Number.isFinite(gap_m) ? wakeHeatRise(gap_m, traffic.car_ahead_drag_area_m2) : 0;
}

/** A lap partly in clear air and partly behind a car: the mean of both by time. */
function mix(clear: ConductanceMap, behind: ConductanceMap, share: number): ConductanceMap {
  const between = (a: number, b: number): number => a + share * (b - a);
  const column = (a: Float64Array, b: Float64Array): Float64Array =>
    a.map((value, i) => between(value, b[i]!));
  return {
    ...clear,
    ambient_K: between(clear.ambient_K, behind.ambient_K),
    face: column(clear.face, behind.face),
    vane: column(clear.vane, behind.vane),
    recirculated: column(clear.recirculated, behind.recirculated),
    sprayFace_W: column(clear.sprayFace_W, behind.sprayFace_W),
    sprayVane_W: column(clear.sprayVane_W, behind.sprayVane_W),
  };
}
