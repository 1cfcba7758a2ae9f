/** A corner stripped to one cheek: no air, no pads, no bell, no radiation; what it is made of stays. */
import type { ConductanceMap } from '../../engine/disc/conductance-map.ts';
import type { CornerSpec } from '../../engine/disc/corner-spec.ts';
import { driveLap } from '../../engine/disc/kernel.ts';
import type { LapSteps } from '../../engine/disc/lap-input.ts';
import { materials, type MaterialName } from '../../engine/disc/materials.ts';
import { valueAtTemperature } from '../../engine/disc/materials/material.ts';
import { createStepper, type Stepper } from '../../engine/disc/stepper.ts';
import { WALLS } from '../../engine/disc/wall-grid.ts';

/** Small heat from here keeps a material's properties at their values for 20 °C [K] */
export const ROOM_K = 293.15;

/** A material at one temperature as the engine has it [W/(m K), kg/m³, J/(kg K)] */
export function propertiesAt(name: MaterialName, temperature_K: number) {
  const material = materials[name];
  return {
    k: valueAtTemperature(material, material.conductivity, temperature_K),
    density: material.density_kgpm3,
    c: valueAtTemperature(material, material.heatCapacity, temperature_K),
  };
}

export const IRON = propertiesAt('grey iron', ROOM_K);
export const DIFFUSIVITY = IRON.k / (IRON.density * IRON.c);
/** Next to nothing: a mass or area of zero would have no temperature. */
const TRACE = 1e-9;

export interface Slab {
  thickness_m: number;
  /** Heated area [m²] */
  area_m2: number;
  material?: MaterialName;
}

export function slabSpec({ thickness_m, area_m2, material = 'grey iron' }: Slab): CornerSpec {
  return {
    disc: {
      vented: false,
      material,
      outer_m: TRACE,
      inner_m: TRACE / 2,
      cheek_m: thickness_m,
      gap_m: 0,
      vanes: 0,
      vane_m: 0,
      vaneShape: 'none',
      vaneStretch: 1,
      vaneEnhancement: 1,
      ringMass_kg: materials[material].density_kgpm3 * thickness_m * area_m2,
      swept_m2: area_m2,
      emissivityTrack: 0,
      emissivityOther: 0,
    },
    bell: { material: 'aluminium', mass_kg: 1, joint_WpK: 0, area_m2: TRACE, hub_WpK: 0, emissivity: 0 },
    pad: {
      area_m2: TRACE,
      thickness_m: 0.02,
      plate_m: 0.006,
      material: 'semi-metallic',
      conductivity: TRACE,
      shim_m: 0,
      discShare: 1,
      drag_N: 0,
      runningGap_m: 1,
    },
    caliper: { mass_kg: 1, area_m2: TRACE, piston_WpK: 0, mount_WpK: 0, emissivity: 0, ductWash: 0 },
    fluid: { volume_m3: 1e-5, coupling_WpK: 0 },
    wheel: {
      crossflow: 0,
      ductOnFace: 0,
      still: 0,
      covered: 0,
      openShare: 1,
      loadedRadius_m: 0.33,
    },
    leakArea_m2: 0,
  };
}

/** Air that takes nothing, or the same from face and wall at any speed and temperature. */
export function stillMap(face_WpK = 0, wall_WpK = 0): ConductanceMap {
  const column = (): Float64Array => new Float64Array(2);
  const walls = (value_WpK: number): Float64Array => new Float64Array(2 * WALLS).fill(value_WpK);
  return {
    speedStep_mps: 100,
    speeds: 2,
    air_K: column().fill(ROOM_K),
    face: walls(face_WpK),
    vane: walls(wall_WpK),
    rim: walls(0),
    bell: walls(0),
    caliper: walls(0),
    wheelhouse: column().fill(1e12),
    wheelhouseBuoyant: 0,
    radiationKept: 0,
    recirculated: column(),
    faceInWheelhouse: 1,
    sprayFace_W: column(),
    sprayVane_W: column(),
  };
}

export const slabAt = (slab: Slab, start_K: number): Stepper =>
  createStepper(slabSpec(slab), { disc_K: start_K, pad_K: start_K, caliper_K: start_K });

/** Equal steps of a power that is given with its exact integral from 0. */
export function evenSteps(
  span_s: number,
  steps: number,
  power: { at: (t: number) => number; sum: (t: number) => number },
): LapSteps {
  const dt = span_s / steps;
  const column = (value: (t: number) => number): Float64Array =>
    Float64Array.from({ length: steps }, (_, n) => value(n * dt));
  const mean = (t: number): number => (power.sum(t + dt) - power.sum(t)) / dt;
  const rise = (t: number): number => power.at(t + dt) - power.at(t);
  return {
    steps,
    dt_s: column(() => dt),
    speed_mps: column(() => 0),
    power_W: column(mean),
    rise_W: column(rise),
    bend_W: column((t) => (power.at(t) + power.at(t + dt)) / 2 - mean(t)),
    pressed: new Uint8Array(steps),
  };
}

type Trace = NonNullable<Parameters<typeof driveLap>[4]>;

/** Runs the steps; the columns hold one entry a step and none for the start. */
export function drivenSlab(stepper: Stepper, lap: LapSteps, map: ConductanceMap): Trace {
  const column = (): Float64Array => new Float64Array(lap.steps);
  const out: Trace = {
    face_K: column(),
    cheek_K: column(),
    wall_K: column(),
    rim_K: column(),
    bell_K: column(),
    pad_K: column(),
    caliper_K: column(),
    fluid_K: column(),
    wheelhouse_K: column(),
  };
  driveLap(stepper, lap, 1, map, out, -1);
  return out;
}
