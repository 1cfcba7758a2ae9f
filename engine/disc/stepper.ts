/** The state of one corner in the middle of a stint, and all that the kernel needs beside a lap and a map. */
import { effectiveRadius, type CornerSpec } from './corner-spec.ts';
import { CELLS, enthalpyAt, enthalpyTable } from './enthalpy-table.ts';
import { heatToDisc } from './heat-split.ts';
import { buildNetwork, joinTables, NODE, NODES, type JoinedTables, type Network } from './network.ts';
import { coefficientBridge, radiationOf } from './radiation.ts';

/** Where the ledger books each kind of heat. */
export const BOOK = {
  faceAir: 0,
  vaneAir: 1,
  otherAir: 2,
  radiation: 3,
  conducted: 4,
  brakeHeat: 5,
} as const;

export interface Stepper {
  network: Network;
  tables: JoinedTables;
  /** Enthalpy of each node [J] */
  enthalpy_J: Float64Array;
  /** Heat booked so far, by BOOK [J] */
  booked_J: Float64Array;
  /** Radiating surfaces: ε A F σ of face, wall (through the vanes' outer openings), rim, bell, caliper [W/K⁴] */
  radiation: Float64Array;
  /** Edge of the disc to the caliper over it [W/K⁴] */
  bridge_WpK4: number;
  /** Bell to hub and caliper to upright; both taken at ambient [W/K] */
  hub_WpK: number;
  mount_WpK: number;
  discShare: number;
  /** Power of the dragging pads per speed of the car [W/(m/s)] */
  drag_N: number;
}

/** A corner at its start temperatures, its books empty. */
export function createStepper(
  spec: CornerSpec,
  start: { disc_K: number; pad_K: number; caliper_K: number },
): Stepper {
  const network = buildNetwork(spec);
  const { disc, wheel } = spec;
  const enthalpy_J = new Float64Array(NODES);
  for (let i = 0; i < NODES; i++) {
    const isCaliper = i === NODE.fluid || i === NODE.caliper;
    const isPad = i === NODE.plate || i === NODE.pad || i === NODE.padFace;
    const start_K = isCaliper ? start.caliper_K : isPad ? start.pad_K : start.disc_K;
    enthalpy_J[i] = network.mass_kg[i]! * enthalpyAt(enthalpyTable(network.material[i]!), start_K);
  }
  return {
    network,
    tables: joinTables(network),
    enthalpy_J,
    booked_J: new Float64Array(6),
    radiation: radiationOf(spec),
    bridge_WpK4: coefficientBridge(spec),
    hub_WpK: spec.bell.hub_WpK,
    mount_WpK: spec.caliper.mount_WpK,
    discShare: spec.pad.discShare ?? heatToDisc(spec),
    drag_N: (spec.pad.drag_N * effectiveRadius(disc)) / wheel.loadedRadius_m,
  };
}

/** Temperature of every node by the tables of the stepper [K]. */
export function nodeTemperatures({ enthalpy_J, tables }: Stepper): Float64Array {
  const { entries, offset, cellsPerJoule } = tables;
  return enthalpy_J.map((H, i) => {
    const at = H * cellsPerJoule[i]!;
    const cell = Math.min(Math.max(Math.floor(at), 0), CELLS - 1);
    const a = offset[i]! + 2 * cell;
    return entries[a]! + (at - cell) * (entries[a + 2]! - entries[a]!);
  });
}

/**
 * Heat in the corner, recomputed from the temperatures of its nodes.
 *
 *     H = Σ m h(T)
 *
 * @remarks
 * Source: definition of enthalpy; zero where the tables of the materials begin, at 220 K.
 *
 * @param stepper - the corner; only its network is read
 * @param temperatures_K - temperature of each node [K]
 * @returns enthalpy of all nodes [J]
 *
 * @example
 * storedHeat({ network: { mass_kg: [2], material: ['steel'] } }, [320]) // => 83860.4
 */
export function storedHeat({ network }: Stepper, temperatures_K: Float64Array): number {
  return temperatures_K.reduce(
    (sum, T, i) => sum + network.mass_kg[i]! * enthalpyAt(enthalpyTable(network.material[i]!), T),
    0,
  );
}
