/**
 * Conductances from a corner to the air, on a grid of car speed by wall temperature. The stepper interpolates in them:
 * bins of constant value would break monotonicity, and evaluating correlations in the loop would cost more than the loop.
 */
import { conductivityAir, densityDryAir, heatCapacityAir, viscosityAir } from '../air/dry-air.ts';
import type { AirPathMap } from '../duct/air-path-map.ts';
import { effectiveSpray, type Spray } from './spray.ts';
import type { CornerSpec } from './corner-spec.ts';
import { materials } from './materials.ts';
import { blendConvection, nusseltPassingAir, nusseltRotatingDisc } from './nusselt-face.ts';
import { vaneConductance } from './vane-convection.ts';
import { vanePassage } from './vane-passage.ts';

/** Wall temperatures of the grid: 250, 500 ... 1500 K. */
export const WALL_LOW_K = 250;
export const WALL_STEP_K = 250;
export const WALLS = 6;

export interface CornerAir {
  ambient_K: number;
  pressure_Pa: number;
  spray: Spray | null;
  /** Measured over modelled convection [-] */
  cooling: number;
}

export interface ConductanceMap {
  /** Grid of car speed: entry i is at i·speedStep_mps. */
  speedStep_mps: number;
  speeds: number;
  /** Air that reaches the corner: the day's, or a wake's [K] */
  air_K: Float64Array;
  /** Faces and vanes, entry speed·WALLS + wall [W/K] */
  face: Float64Array;
  vane: Float64Array;
  /** One entry a speed [W/K] */
  rim: Float64Array;
  bell: Float64Array;
  caliper: Float64Array;
  /** Heat capacity of the air that passes the wheelhouse [W/K] */
  wheelhouse: Float64Array;
  /** Share of the vanes' air that comes from the wheelhouse [-] */
  recirculated: Float64Array;
  /** How much of the faces the wheelhouse's air meets; the rest is fed by the duct [-] */
  faceInWheelhouse: number;
  /** Heat that spray takes from a hot face and from hot vanes [W] */
  sprayFace_W: Float64Array;
  sprayVane_W: Float64Array;
}

/** Speed of the air through a wheelhouse while the car stands, from buoyancy. From memory [m/s] */
const STANDING_MPS = 0.5;
/** Convection of the caliper over that of a face: it sits in the wheel's lee. From memory [-] */
const CALIPER_SHELTER = 0.5;

/** The map of one corner for one blanking, day and gap. The air path's grid of speeds must be even and start at 0. */
export function conductanceMap(spec: CornerSpec, path: AirPathMap, air: CornerAir): ConductanceMap {
  const speeds = path.speed_mps.length;
  const passage = vanePassage(spec.disc, materials[spec.disc.material].density_kgpm3);
  const column = (): Float64Array => new Float64Array(speeds);
  const map: ConductanceMap = {
    speedStep_mps: path.speed_mps[1]!,
    speeds,
    air_K: column().fill(air.ambient_K),
    face: new Float64Array(speeds * WALLS),
    vane: new Float64Array(speeds * WALLS),
    rim: column(),
    bell: column(),
    caliper: column(),
    wheelhouse: column(),
    recirculated: column(),
    faceInWheelhouse: 1 - spec.wheel.ductOnFace / 2,
    sprayFace_W: column(),
    sprayVane_W: column(),
  };
  const density = densityDryAir(air.ambient_K, air.pressure_Pa);
  const rim_m2 = Math.PI * spec.disc.outer_m * 2 * spec.disc.cheek_m;
  for (let i = 0; i < speeds; i++) {
    const speed_mps = path.speed_mps[i]!;
    const vane_kgps = Math.abs(path.vane_kgps[i]!);
    const leak_kgps = path.leak_kgps[i]!;
    const wash_mps = spec.leakArea_m2 > 0 ? Math.max(leak_kgps, 0) / (density * spec.leakArea_m2) : 0;
    const onFaces = (wall_K: number): FaceConvection =>
      faceConvection(spec, {
        speed_mps,
        wash_mps,
        film_K: (wall_K + air.ambient_K) / 2,
        pressure_Pa: air.pressure_Pa,
      });
    const turning = {
      vane_kgps,
      wheel_radps: speed_mps / spec.wheel.loadedRadius_m,
      density_kgpm3: density,
    };
    for (let j = 0; j < WALLS; j++) {
      const wall_K = WALL_LOW_K + j * WALL_STEP_K;
      map.face[i * WALLS + j] = air.cooling * faceArea(spec) * onFaces(wall_K).mean;
      const inVanes = {
        ...turning,
        wall_K,
        air_K: air.ambient_K,
        still: spec.wheel.still,
      };
      map.vane[i * WALLS + j] = passage ? air.cooling * vaneConductance(spec.disc, passage, inVanes) : 0;
    }
    const warm = onFaces(600).open;
    const cool = onFaces(400).open;
    map.rim[i] = air.cooling * rim_m2 * warm;
    map.bell[i] = air.cooling * spec.bell.area_m2 * cool;
    map.caliper[i] = air.cooling * spec.caliper.area_m2 * Math.max(CALIPER_SHELTER * cool, spec.wheel.still);
    map.wheelhouse[i] =
      density * heatCapacityAir(air.ambient_K) * wheelOpening(spec) * (speed_mps + STANDING_MPS);
    map.recirculated[i] = leak_kgps < 0 && vane_kgps > 0 ? Math.min(1, -leak_kgps / vane_kgps) : 0;
    const spray = effectiveSpray(air.spray, spec, {
      speed_mps,
      duct_m3ps: path.duct_kgps[i]! / density,
    });
    map.sprayFace_W[i] = spray.face_W;
    map.sprayVane_W[i] = spray.vane_W;
  }
  return map;
}

/** Rim's radius over the tyre's, and the share of car speed at which air passes the open part of a wheel. From memory [-] */
const RIM_RADIUS = 0.68;
const THROUGH_WHEEL = 0.58;

/** Open area through which air leaves the wheel, times its share of car speed [m²]. */
const wheelOpening = ({ wheel }: CornerSpec): number =>
  THROUGH_WHEEL * wheel.openShare * Math.PI * (RIM_RADIUS * wheel.loadedRadius_m) ** 2;

/** Free area of both faces [m²]. */
const faceArea = (spec: CornerSpec): number => spec.disc.swept_m2 * (1 - spec.wheel.covered);

interface FaceConvection {
  /** where the wheelhouse's air passes [W/(m² K)] */
  open: number;
  /** over both faces, the duct-fed part of the inner one included [W/(m² K)] */
  mean: number;
}

function faceConvection(
  { disc, wheel }: CornerSpec,
  at: {
    speed_mps: number;
    wash_mps: number;
    film_K: number;
    pressure_Pa: number;
  },
): FaceConvection {
  const k = conductivityAir(at.film_K);
  const viscosity = viscosityAir(at.film_K) / densityDryAir(at.film_K, at.pressure_Pa);
  const radius_m = disc.outer_m / 2;
  const rotation = ((at.speed_mps / wheel.loadedRadius_m) * radius_m ** 2) / viscosity;
  const turning = blendConvection((nusseltRotatingDisc(rotation) * k) / radius_m, wheel.still);
  const past = (air_mps: number): number =>
    blendConvection(turning, (nusseltPassingAir((air_mps * disc.outer_m) / viscosity) * k) / disc.outer_m);
  const passing_mps = wheel.crossflow * at.speed_mps;
  const open = past(passing_mps);
  const fed = past(Math.hypot(passing_mps, at.wash_mps));
  const share = wheel.ductOnFace / 2;
  return { open, mean: (1 - share) * open + share * fed };
}
