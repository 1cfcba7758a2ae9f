/** How one kind of lap is driven: the speed profile of a leg and the heat of its brakes. */
import { towDragShare } from '../air/tow.ts';
import { axleHeat, type HeatOverLap } from '../car/axle-heat.ts';
import { brakeHeat, type BrakeHeat } from '../car/brake-heat.ts';
import type { AirState, CarDynamics, Driver } from '../car/types.ts';
import { layoutCircuit, type Corner, type Layout } from '../circuit/layout.ts';
import { scaleProfile } from '../circuit/scale-profile.ts';
import { speedProfile, type SpeedProfile } from '../circuit/speed-profile.ts';
import type { Scenario } from '../scenario/schema.ts';
import { mpsFromKmh } from '../units.ts';
import { dayOf, type Day } from './day.ts';
import { gapAt, type Gap } from './legs.ts';
import { measuredLap } from './measured-lap.ts';
import { memo } from './memo.ts';
import type { Axle, LapKind } from './result.ts';
import { traceNumber } from './trace-number.ts';

/** Density of the air at which a car's power is rated. Source: U.S. Standard Atmosphere, 1976, sea level [kg/m³] */
const RATED_DENSITY = 1.225;
/** Speed at which a gap in seconds becomes the distance of the tow. Common practice, no source: a mean lap speed [m/s] */
const TOW_SPEED_MPS = 45;
/** Share of the grip used behind a safety car. Common practice, no source [-] */
const SAFETY_PACE = 0.5;

export interface Motion {
  profile: SpeedProfile;
  heat: BrakeHeat;
  /** The same heat as each axle sees it, where the balance moves within the lap. */
  axles?: Record<Axle, HeatOverLap>;
  corners: Corner[];
  mass_kg: number;
}

export interface MotionRequest {
  kind: LapKind;
  /** The scenario that decides speed and heat; with a held trace not the one that decides the air. */
  scenario: Scenario;
  gap: Gap;
  mass_kg: number;
  ends: LapEnds;
}

/** Speeds at the line where a lap does not go on from one like it, or into one [m/s] */
export interface LapEnds {
  entry_mps?: number;
  exit_mps?: number;
  /** How far before the line the lap's last speed holds already, in the pit lane [m] */
  lane_m?: number;
}

/** All that a lap's speed and heat depend on; for the memories of whatever is made from a lap. */
export function motionKey({ kind, scenario: s, gap, mass_kg, ends }: MotionRequest): unknown[] {
  const { laps: _laps, phases: _phases, hold_trace: _hold, ...paces } = s.stint;
  const trace = s.trace && traceNumber(s.trace);
  const tow = towOf(s, gap);
  return [kind, s.car, s.driver, s.circuit.segments, trace, s.conditions, gap, tow, mass_kg, ends, paces];
}

/** Lap of a circuit or of a measured trace; made again only when something it depends on changed. */
export const motionOf = memo(24, motionKey, drive);

const layoutOf = memo(
  6,
  (segments: Scenario['circuit']['segments']) => [segments],
  (segments) => layoutCircuit({ id: '', name: '', purpose: '', segments: segments.map(completeSegment) }),
);

export const circuitLayout = (scenario: Scenario): Layout => layoutOf(scenario.circuit.segments);

/** Length of the lap that is driven, of the circuit or of the measured trace [m]. */
export const lapLength = (scenario: Scenario): number =>
  scenario.trace
    ? measuredLap({ trace: scenario.trace, car: scenario.car }).distance_m.at(-1)!
    : circuitLayout(scenario).length_m;

function completeSegment({
  length_m,
  radius_m,
  turn,
  slope_pct,
  name,
}: Scenario['circuit']['segments'][number]) {
  const way = turn === undefined ? {} : { turn };
  return { length_m, radius_m, slope_pct: slope_pct ?? 0, ...way, ...(name === undefined ? {} : { name }) };
}

function drive(request: MotionRequest): Motion {
  const { kind, scenario, gap, mass_kg, ends } = request;
  const day = dayOf(scenario.conditions);
  const car = carOf(scenario, day, mass_kg);
  const air = airOf(scenario, day, gap);
  const cap_mps = kind === 'safety' ? mpsFromKmh(scenario.stint.safety_car_kmh) : Infinity;
  if (scenario.trace) {
    const measured = measuredLap({ trace: scenario.trace, car: scenario.car });
    const profile = scaleProfile(measured, paceOf(scenario, kind), cap_mps);
    const heat = brakeHeat(profile, car, air);
    const { front, rear } = profile.brakes ?? {};
    const moves = front && rear && axleHeat(heat, scenario.car.brake_balance_front, { front, rear });
    return { profile, heat, corners: [], mass_kg, ...(moves && { axles: moves }) };
  }
  const layout = circuitLayout(scenario);
  const profile = speedProfile({
    layout,
    car,
    driver: driverOf(scenario, day, kind),
    air,
    ...ends,
    ...(kind === 'safety' ? { speedCap_mps: cap_mps } : {}),
  });
  return { profile, heat: brakeHeat(profile, car, air), corners: layout.corners, mass_kg };
}

const paceOf = ({ stint }: Scenario, kind: LapKind): number =>
  ({ out: stint.out_lap_pace, push: 1, safety: SAFETY_PACE, in: stint.in_lap_pace })[kind];

export function carOf({ car }: Scenario, day: Day, mass_kg: number): CarDynamics {
  return {
    mass_kg,
    rotationalFactor: car.rotational_factor,
    rolling: car.rolling_coefficient,
    weightFront: car.weight_front,
    cgHeight_m: car.cg_height_m,
    wheelbase_m: car.wheelbase_m,
    power_W: car.power_kW * 1000,
    efficiency: car.driveline_efficiency,
    dragArea_m2: car.drag_area_m2,
    downforceArea_m2: car.downforce_area_m2,
    drivenAxle: car.driven_axle,
    grip: day.wet ? car.grip_wet : car.grip_dry,
    loadedRadius_m: car.loaded_radius_m,
    slip: car.braking_slip,
    engineBraking_W: car.engine_braking_kW * 1000,
  };
}

function driverOf(scenario: Scenario, day: Day, kind: LapKind): Driver {
  const { driver } = scenario;
  const pace = paceOf(scenario, kind);
  return {
    corneringShare: pace * driver.grip_share_cornering,
    brakingShare: pace * (day.wet ? driver.grip_share_braking_wet : driver.grip_share_braking_dry),
    tractionShare: pace * driver.grip_share_traction,
    coast_s: driver.coast_s,
    buildUp_s: driver.build_up_s,
  };
}

/** Share of the drag that remains in the tow of the car ahead [-] */
function towOf({ traffic }: Scenario, gap: Gap): number {
  const gap_m = gap.tow ? gapAt(gap, TOW_SPEED_MPS) : Infinity;
  if (!Number.isFinite(gap_m)) return 1;
  return towDragShare({ gap_m, offset_m: traffic.offset_m, dragArea_m2: traffic.car_ahead_drag_area_m2 });
}

export function airOf(scenario: Scenario, day: Day, gap: Gap): AirState {
  const { car } = scenario;
  return {
    density_kgpm3: day.density_kgpm3,
    powerFactor: car.power_follows_density ? day.density_kgpm3 / RATED_DENSITY : 1,
    dragFactor: 1 - gap.share * (1 - towOf(scenario, gap)),
    ...(gap.pullOut_kmh === null ? {} : { pullOut_mps: mpsFromKmh(gap.pullOut_kmh) }),
  };
}
