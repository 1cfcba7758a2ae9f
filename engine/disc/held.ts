/**
 * What the kernel holds of a corner and its map while it drives a lap. An array that is handed to a function is tested for type
 * and length at every access, one that it holds is not: so both are copied, tables and maps only when they are others than before.
 */
import { SPEEDS, type ConductanceMap } from './conductance-map.ts';
import { CELLS } from './enthalpy-table.ts';
import { MATERIALS, NODES, type JoinedTables } from './network.ts';
import type { Stepper } from './stepper.ts';
import { WALLS } from './wall-grid.ts';

/** Entries of one surface in `conductances`. */
export const GRID = SPEEDS * WALLS;

/** Places in `mapWide`: speed from row to row [m/s], the last row but one [-], and shares and draught of the map. */
export const WIDE = { speedStep: 0, lastSpeed: 1, onFace: 2, buoyant: 3, kept: 4 } as const;

export interface Held {
  /** Enthalpy of each node, at first as the lap begins [J] */
  H: Float64Array;
  /** Link of each node to its parent, at first with the pads off. */
  G: Float64Array;
  /** See `JoinedTables`. */
  entries: Float64Array;
  offset: Uint16Array;
  cellsPerJoule: Float64Array;
  /** Radiating surfaces and the bridge from rim to caliper [W/K⁴] */
  radiating: Float64Array;
  bridge_WpK4: Float64Array;
  /** Bell to hub, caliper to upright [W/K] */
  hub_WpK: Float64Array;
  mount_WpK: Float64Array;
  /** Conductance of face, vanes, rim, bell and caliper in turn, by speed and wall [W/K] */
  conductances: Float64Array;
  /** By speed, as `ConductanceMap` has them. */
  air_K: Float64Array;
  wheelhouse_WpK: Float64Array;
  recirculatedAt: Float64Array;
  sprayFace_W: Float64Array;
  sprayVane_W: Float64Array;
  /** By WIDE. */
  mapWide: Float64Array;
  /** Takes up a corner and its map. */
  hold: (s: Stepper, map: ConductanceMap) => void;
}

/** All made inside one function, as `makeRates` says why. */
export function makeHeld(): Held {
  const column = (size: number): Float64Array => new Float64Array(size);
  const [H, G, cellsPerJoule] = [column(NODES), column(NODES), column(NODES)];
  const entries = column(MATERIALS * 2 * (CELLS + 1));
  // of few bits, so that an index made of one cannot overflow
  const offset = new Uint16Array(NODES);
  const [radiating, bridge_WpK4, hub_WpK, mount_WpK] = [column(5), column(1), column(1), column(1)];
  const conductances = column(5 * GRID);
  const [air_K, wheelhouse_WpK, recirculatedAt] = [column(SPEEDS), column(SPEEDS), column(SPEEDS)];
  const [sprayFace_W, sprayVane_W] = [column(SPEEDS), column(SPEEDS)];
  const mapWide = column(5);
  let tables: JoinedTables | null = null;
  let held: ConductanceMap | null = null;

  function hold(s: Stepper, map: ConductanceMap): void {
    if (tables !== s.tables) entries.set((tables = s.tables).entries);
    if (held !== map) holdMap((held = map));
    offset.set(s.tables.offset);
    cellsPerJoule.set(s.tables.cellsPerJoule);
    H.set(s.enthalpy_J);
    G.set(s.network.link);
    radiating.set(s.radiation);
    bridge_WpK4[0] = s.bridge_WpK4;
    hub_WpK[0] = s.hub_WpK;
    mount_WpK[0] = s.mount_WpK;
  }

  function holdMap(map: ConductanceMap): void {
    conductances.set(map.face);
    conductances.set(map.vane, GRID);
    conductances.set(map.rim, 2 * GRID);
    conductances.set(map.bell, 3 * GRID);
    conductances.set(map.caliper, 4 * GRID);
    air_K.set(map.air_K);
    wheelhouse_WpK.set(map.wheelhouse);
    recirculatedAt.set(map.recirculated);
    sprayFace_W.set(map.sprayFace_W);
    sprayVane_W.set(map.sprayVane_W);
    mapWide[WIDE.speedStep] = map.speedStep_mps;
    mapWide[WIDE.lastSpeed] = map.speeds - 2;
    mapWide[WIDE.onFace] = map.faceInWheelhouse;
    mapWide[WIDE.buoyant] = map.wheelhouseBuoyant;
    mapWide[WIDE.kept] = map.radiationKept;
  }

  return {
    ...{ H, G, entries, offset, cellsPerJoule, radiating, bridge_WpK4, hub_WpK, mount_WpK },
    ...{ conductances, air_K, wheelhouse_WpK, recirculatedAt, sprayFace_W, sprayVane_W, mapWide, hold },
  };
}
