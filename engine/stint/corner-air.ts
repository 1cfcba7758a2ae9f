/** The conductance map of a corner in one leg of the stint: its duct, its tape, the day and the car ahead. */
import { shareBesideWake } from '../air/tow.ts';
import { dynamicPressureRatioWake, wakeHeatRise, type WakePlace } from '../air/wake.ts';
import { conductanceMap, type ConductanceMap } from '../disc/conductance-map.ts';
import { airPathMap, type AirPathMap } from '../duct/air-path-map.ts';
import { solveAirPath } from '../duct/network.ts';
import type { Scenario } from '../scenario/schema.ts';
import { mpsFromKmh } from '../units.ts';
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

/** What the flows of a corner follow from. */
export const airKey = ({ corner, scenario: s, gap }: CornerAirRequest): unknown[] => [
  corner.brake,
  blankingAt(s, corner.axle, corner.side),
  s.conditions,
  gap,
  wakeKey(s),
  s.car.loaded_radius_m,
];

/** Map of a corner in a leg; made again only when brake, tape, day, gap or cooling correction changed. */
export const cornerAir: (request: CornerAirRequest) => ConductanceMap = memo(
  256,
  (request: CornerAirRequest) => [...airKey(request), request.scenario.correction.cooling.factor],
  (request) => {
    const { gap } = request;
    const behind = mapBehind(request);
    if (gap.share === 0 || (gap.share === 1 && gap.pullOut_kmh === null)) return behind;
    return mix(cornerAir({ ...request, gap: clearAir }), behind, gap);
  },
);

function mapBehind(request: CornerAirRequest): ConductanceMap {
  const { corner, scenario, gap } = request;
  const day = dayOf(scenario.conditions);
  const spec = specOf(corner.brake, scenario.car.loaded_radius_m);
  const warm_K = wakeWarmth(gap, scenario);
  return conductanceMap(spec, airPath(request), {
    ambient_K: day.ambient_K + warm_K,
    pressure_Pa: day.pressure_Pa,
    spray: day.wet ? { water_kgpm3: day.spray_kgpm3 } : null,
    cooling: scenario.correction.cooling.factor,
  });
}

/** Flows of a corner over the grid of speeds behind the gap's car, or in clear air. */
export function airPath({ corner, scenario, gap }: CornerAirRequest): AirPathMap {
  const { axle, side, brake } = corner;
  const geometry = airPathOf(brake, specOf(brake, scenario.car.loaded_radius_m));
  const open = {
    openFraction: 1 - blankingAt(scenario, axle, side) / 100,
    density_kgpm3: dayOf(scenario.conditions).density_kgpm3,
  };
  const wheelRadius_m = scenario.car.loaded_radius_m;
  const ratioAt = (speed_mps: number): number => wakeAt(scenario, gap, speed_mps).qRatio;
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

function wakeWarmth(gap: Gap, scenario: Scenario): number {
  const gap_m = gapAt(gap, WARMTH_SPEED_MPS);
  return Number.isFinite(gap_m) ? wakeHeatRise(placeIn(scenario, gap_m)) : 0;
}

/** The mouth in the wake of the scenario's car ahead. */
const placeIn = ({ traffic }: Scenario, gap_m: number): WakePlace => ({
  gap_m,
  offset_m: traffic.offset_m,
  dragArea_m2: traffic.car_ahead_drag_area_m2,
  strength: traffic.wake_strength,
});

/** All of the wake but its gap, which each phase may have of its own. */
const wakeKey = ({ traffic }: Scenario): number[] => [
  traffic.car_ahead_drag_area_m2,
  traffic.offset_m,
  traffic.wake_strength,
];

/** The wake of a gap's car at one speed. */
export interface WakeAt {
  /** Dynamic pressure behind it over that of clear air [-] */
  qRatio: number;
  /** How much warmer its air is [K] */
  warmth_K: number;
  /** How much of the time at this speed the car is in it: not beside it, and not in the rest of the lap [-] */
  weight: number;
}

/** What the car ahead does to the air at a speed; nothing in clear air. */
export function wakeAt(scenario: Scenario, gap: Gap, speed_mps: number): WakeAt {
  const gap_m = gapAt(gap, speed_mps);
  if (!Number.isFinite(gap_m)) return { qRatio: 1, warmth_K: 0, weight: 0 };
  return {
    qRatio: dynamicPressureRatioWake(placeIn(scenario, gap_m)),
    warmth_K: wakeWarmth(gap, scenario),
    weight: weightAt(gap, speed_mps),
  };
}

/** How much of the wake there is at each speed of the grid: less beside it, and less of it by the share of the lap. */
const weights = (gap: Gap): Float64Array => speeds_mps.map((speed_mps) => weightAt(gap, speed_mps));

const weightAt = ({ share, pullOut_kmh }: Gap, speed_mps: number): number =>
  pullOut_kmh === null ? share : share * (1 - shareBesideWake(speed_mps, mpsFromKmh(pullOut_kmh)));

/** A lap partly in clear air and partly behind a car: the mean of both by time, at each speed. */
function mix(clear: ConductanceMap, behind: ConductanceMap, gap: Gap): ConductanceMap {
  const weight = weights(gap);
  const between = (a: number, b: number, w: number): number => (w === 1 ? b : a + w * (b - a));
  const column = (a: Float64Array, b: Float64Array): Float64Array =>
    a.map((value, i) => between(value, b[i]!, weight[Math.floor((i * SPEEDS) / a.length)]!));
  return {
    ...clear,
    air_K: column(clear.air_K, behind.air_K),
    face: column(clear.face, behind.face),
    vane: column(clear.vane, behind.vane),
    rim: column(clear.rim, behind.rim),
    bell: column(clear.bell, behind.bell),
    caliper: column(clear.caliper, behind.caliper),
    wheelhouse: column(clear.wheelhouse, behind.wheelhouse),
    // buoyancy counts where the car hardly moves
    wheelhouseBuoyant: between(clear.wheelhouseBuoyant, behind.wheelhouseBuoyant, weight[0]!),
    recirculated: column(clear.recirculated, behind.recirculated),
    sprayFace_W: column(clear.sprayFace_W, behind.sprayFace_W),
    sprayVane_W: column(clear.sprayVane_W, behind.sprayVane_W),
  };
}
