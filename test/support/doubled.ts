/** A corner with everything that has a size made larger or smaller by one factor. */
import type { ConductanceMap } from '../../engine/disc/conductance-map.ts';
import type { Network } from '../../engine/disc/network.ts';
import type { Stepper } from '../../engine/disc/stepper.ts';

/** Whether a field has the corner's size (masses, areas, conductances, flows, heats) or is the same for a corner of any size. */
type Kinds<T> = Record<keyof T, 'size' | 'same'>;

const mapKinds: Kinds<ConductanceMap> = {
  speedStep_mps: 'same',
  speeds: 'same',
  air_K: 'same',
  face: 'size',
  vane: 'size',
  rim: 'size',
  bell: 'size',
  caliper: 'size',
  wheelhouse: 'size',
  wheelhouseBuoyant: 'size',
  radiationKept: 'same',
  recirculated: 'same',
  faceInWheelhouse: 'same',
  sprayFace_W: 'size',
  sprayVane_W: 'size',
};

const networkKinds: Kinds<Network> = {
  mass_kg: 'size',
  material: 'same',
  link: 'size',
  cheekShare: 'same',
  pressed_WpK: 'size',
};

const stepperKinds: Omit<Kinds<Stepper>, 'network' | 'tables'> = {
  enthalpy_J: 'size',
  booked_J: 'size',
  radiation: 'size',
  bridge_WpK4: 'size',
  hub_WpK: 'size',
  mount_WpK: 'size',
  discShare: 'same',
  drag_N: 'size',
};

function scaled<T extends object>(whole: T, kinds: Partial<Kinds<T>>, factor: number): T {
  const sized = Object.entries(kinds).filter(([, kind]) => kind === 'size');
  const fields = sized.map(([key]) => {
    const value = whole[key as keyof T] as number | Float64Array;
    return [key, typeof value === 'number' ? factor * value : value.map((each) => factor * each)];
  });
  return { ...whole, ...(Object.fromEntries(fields) as Partial<T>) };
}

export const scaledMap = (map: ConductanceMap, factor: number): ConductanceMap =>
  scaled(map, mapKinds, factor);

export function scaledStepper(stepper: Stepper, factor: number): Stepper {
  const { tables, network } = stepper;
  return {
    ...scaled<Stepper>(stepper, stepperKinds, factor),
    network: scaled(network, networkKinds, factor),
    tables: { ...tables, cellsPerJoule: tables.cellsPerJoule.map((perJoule) => perJoule / factor) },
  };
}
