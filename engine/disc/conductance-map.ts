/**
 * Conductances from a corner to the air, on a grid of car speed by wall temperature. The stepper interpolates in them:
 * bins of constant value would break monotonicity, and evaluating correlations in the loop would cost more than the loop.
 */
import { densityDryAir } from '../air/dry-air.ts';
import type { AirPathMap } from '../duct/air-path-map.ts';
import { effectiveSpray, type Spray } from './spray.ts';
import type { CornerSpec } from './corner-spec.ts';
import { bellConductance, caliperConductance } from './body-convection.ts';
import { faceConductance, rimConductance } from './face-convection.ts';
import { filmAir } from './film-air.ts';
import { materials } from './materials.ts';
import { filmOf } from './outside-air.ts';
import { vaneConductance } from './vane-convection.ts';
import { vanePassage } from './vane-passage.ts';
import { fillWalls, KNOTS_K, WALLS } from './wall-grid.ts';
import { capacityBuoyant, capacityDriven, shareRadiationKept } from './wheelhouse.ts';

/** Speeds of a map at most. */
export const SPEEDS = 31;

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
  /** Each by the temperature of its own surface, entry speed·WALLS + wall [W/K] */
  face: Float64Array;
  vane: Float64Array;
  rim: Float64Array;
  bell: Float64Array;
  caliper: Float64Array;
  /** One entry a speed: heat capacity of the air that the car's speed drives through the wheelhouse [W/K] */
  wheelhouse: Float64Array;
  /** The same for the air that its own buoyancy drives, per root of its warmth [W/K^1.5] */
  wheelhouseBuoyant: number;
  /** Share of what the corner radiates that its wheelhouse's air takes up [-] */
  radiationKept: number;
  /** Share of the vanes' air that comes from the wheelhouse [-] */
  recirculated: Float64Array;
  /** How much of the faces the wheelhouse's air meets; the rest is fed by the duct [-] */
  faceInWheelhouse: number;
  /** Heat that spray takes from a hot face and from hot vanes [W] */
  sprayFace_W: Float64Array;
  sprayVane_W: Float64Array;
}

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
    rim: new Float64Array(speeds * WALLS),
    bell: new Float64Array(speeds * WALLS),
    caliper: new Float64Array(speeds * WALLS),
    wheelhouse: column(),
    wheelhouseBuoyant: 0,
    radiationKept: shareRadiationKept(spec.wheel.openShare),
    recirculated: column(),
    faceInWheelhouse: 1 - spec.wheel.ductOnFace / 2,
    sprayFace_W: column(),
    sprayVane_W: column(),
  };
  const density = densityDryAir(air.ambient_K, air.pressure_Pa);
  const day = { density_kgpm3: density, air_K: air.ambient_K };
  map.wheelhouseBuoyant = capacityBuoyant(spec.wheel, day);
  const airs = KNOTS_K.map((wall_K) => filmAir(wall_K, air.ambient_K));
  const atKnots = (): Float64Array => new Float64Array(KNOTS_K.length);
  const [face, vane, rim, bell, caliper] = [atKnots(), atKnots(), atKnots(), atKnots(), atKnots()];
  for (let i = 0; i < speeds; i++) {
    const speed_mps = path.speed_mps[i]!;
    const vane_kgps = Math.abs(path.vane_kgps[i]!);
    const leak_kgps = path.leak_kgps[i]!;
    const wash_mps = spec.leakArea_m2 > 0 ? Math.max(leak_kgps, 0) / (density * spec.leakArea_m2) : 0;
    const outside = { speed_mps, wash_mps, air_K: air.ambient_K, pressure_Pa: air.pressure_Pa };
    const turning = {
      vane_kgps,
      wheel_radps: speed_mps / spec.wheel.loadedRadius_m,
      density_kgpm3: density,
    };
    const inVanes = { ...turning, air_K: air.ambient_K, still: spec.wheel.still, wall_K: 0 };
    for (let knot = 0; knot < KNOTS_K.length; knot++) {
      const wall_K = KNOTS_K[knot]!;
      const film = filmOf(spec, outside, wall_K, airs[knot]);
      face[knot] = air.cooling * faceConductance(spec, outside, wall_K, film);
      rim[knot] = air.cooling * rimConductance(spec, outside, wall_K, film);
      bell[knot] = air.cooling * bellConductance(spec, outside, wall_K, film);
      caliper[knot] = air.cooling * caliperConductance(spec, outside, wall_K, film);
      inVanes.wall_K = wall_K;
      if (passage) vane[knot] = air.cooling * vaneConductance(spec.disc, passage, inVanes, airs[knot]);
    }
    fillWalls(map.face, i * WALLS, face);
    fillWalls(map.rim, i * WALLS, rim);
    fillWalls(map.bell, i * WALLS, bell);
    fillWalls(map.caliper, i * WALLS, caliper);
    fillWalls(map.vane, i * WALLS, vane);
    map.wheelhouse[i] = capacityDriven(spec.wheel, { ...day, speed_mps, duct_kgps: path.duct_kgps[i]! });
    map.recirculated[i] = shareRecirculated(vane_kgps, leak_kgps);
    const spray = effectiveSpray(air.spray, spec, { speed_mps, duct_m3ps: path.duct_kgps[i]! / density });
    map.sprayFace_W[i] = spray.face_W;
    map.sprayVane_W[i] = spray.vane_W;
  }
  return map;
}

/** How much of the vanes' air comes from the wheelhouse: what the leak draws in, and all of it where nothing flows. */
function shareRecirculated(vane_kgps: number, leak_kgps: number): number {
  if (vane_kgps === 0) return 1;
  return Math.min(1, Math.max(0, -leak_kgps / vane_kgps));
}
