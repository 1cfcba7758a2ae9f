/** A corner of the shipped heavy car for one step, its nodes at chosen temperatures. */
import type { ConductanceMap } from '../../engine/disc/conductance-map.ts';
import { enthalpyAt, enthalpyTable } from '../../engine/disc/enthalpy-table.ts';
import { CHEEK, NODE, NODES } from '../../engine/disc/network.ts';
import { createStepper, type Stepper } from '../../engine/disc/stepper.ts';
import { defaultScenario } from '../../engine/scenario/library.ts';
import { cornersOf, specOf } from '../../engine/stint/corners.ts';
import { drivenSlab } from './bare-slab.ts';

export const SPEED = 35;
const { rim, bell, fluid, caliper, plate, pad, padFace, face, wall } = NODE;

/** From each node to its parent: the tree of the drawing in `network.ts`; the rim joins at c3, the fourth node of the cheek. */
export const links: [from: number, to: number][] = [
  [rim, CHEEK[3]!],
  [bell, wall],
  [fluid, caliper],
  [caliper, plate],
  [plate, pad],
  [pad, padFace],
  [padFace, face],
  ...Array.from(CHEEK.subarray(1), (node, i): [number, number] => [node, CHEEK[i]!]),
];

export const spec = specOf(cornersOf(defaultScenario())[0]!.brake, defaultScenario().car.loaded_radius_m);
export const temperatures = (at: (node: number) => number): number[] =>
  Array.from({ length: NODES }, (_, i) => at(i));

/** The front corner of the heavy car with its nodes where they are put. */
export function cornerAt(nodes_K: number[]): Stepper {
  const stepper = createStepper(spec, { disc_K: 300, pad_K: 300, caliper_K: 300 });
  const { mass_kg, material } = stepper.network;
  nodes_K.forEach((T, i) => {
    stepper.enthalpy_J[i] = mass_kg[i]! * enthalpyAt(enthalpyTable(material[i]!), T);
  });
  return stepper;
}
/** The same without any way for heat to move. */
export function bareAt(nodes_K: number[]): Stepper {
  const stepper = cornerAt(nodes_K);
  stepper.network.link.fill(0);
  stepper.radiation.fill(0);
  return Object.assign(stepper, { bridge_WpK4: 0, hub_WpK: 0, mount_WpK: 0, drag_N: 0 });
}

/** One step; what each node gained and each book got, per second [W] */
export function step(
  stepper: Stepper,
  map: ConductanceMap,
  dt: number,
  given: Partial<Record<'start' | 'end' | 'pressed', number>> = {},
) {
  const before = stepper.enthalpy_J.slice();
  const { start = 0, end = 0, pressed = 0 } = given;
  const one = (value: number): Float64Array => Float64Array.of(value);
  const lap = {
    steps: 1,
    dt_s: one(dt),
    speed_mps: one(SPEED),
    power_W: one((start + end) / 2),
    rise_W: one(end - start),
    bend_W: one(0),
  };
  const columns = drivenSlab(stepper, { ...lap, pressed: Uint8Array.of(pressed) }, map);
  const gained = stepper.enthalpy_J.map((H, i) => (H - before[i]!) / dt);
  const booked = stepper.booked_J.map((J) => J / dt);
  return { gained, booked, columns };
}
