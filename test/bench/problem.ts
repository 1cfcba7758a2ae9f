/**
 * The reference stint as plain numbers, for whoever solves it with an integrator from a library: the engine's network, tables
 * and maps, and the drive as it stands between the nodes of the driven profile. No step of the engine takes part.
 */
import type { ConductanceMap } from '../../engine/disc/conductance-map.ts';
import { CELLS, enthalpyTable } from '../../engine/disc/enthalpy-table.ts';
import { CAST, CHEEK, NODE, NODES } from '../../engine/disc/network.ts';
import { createStepper } from '../../engine/disc/stepper.ts';
import type { CornerModel, StintModel } from '../../engine/stint/compile.ts';
import type { Answer } from './errors.ts';
import { links } from '../support/one-corner.ts';
import { stretchesOf, type Span, type Stretch } from '../validation/whole-stint/drive.ts';

/** A time in which the pads are pressed or not and nothing jumps; power and speed have kinks between its pieces. */
export interface Stage {
  leg: number;
  from_s: number;
  to_s: number;
  pressed: boolean;
  /** Begin of each piece; speed v0 + v1 τ and power of all brakes p0 + p1 τ + p2 τ², τ from there. */
  begin_s: number[];
  v0: number[];
  v1: number[];
  p0: number[];
  p1: number[];
  p2: number[];
}

const ENTRIES = CELLS + 1;
const numbers = (values: ArrayLike<number>): number[] => Array.from(values);
/** Parent of each node; the face, the root, has none. */
const parents = (): number[] =>
  Array.from({ length: NODES }, (_, node) => links.find(([from]) => from === node)?.[1] ?? -1);

/** `sample_s` are the moments at which the answer is wanted. */
export function problemOf(model: StintModel, sample_s: Float64Array) {
  return {
    node: NODE,
    nodes: NODES,
    parent: parents(),
    /** Whether a node's link runs inside the cast ring, between conduction potentials. */
    cast: Array.from({ length: NODES }, (_, node) => node >= CAST),
    stages: stagesOf(stretchesOf(model.scenario)),
    sample_s: numbers(sample_s),
    corners: model.corners.map(cornerOf),
  };
}

export type Problem = ReturnType<typeof problemOf>;
export type ProblemCorner = Problem['corners'][number];

function cornerOf({ spec, start, shares, maps }: CornerModel) {
  const { network, enthalpy_J, radiation, bridge_WpK4, hub_WpK, mount_WpK, discShare, drag_N } =
    createStepper(spec, start);
  const names = [...new Set(network.material)];
  const tables = names.map(enthalpyTable);
  const tableOf = (node: number): number => names.indexOf(network.material[node]!);
  return {
    ...{ bridge_WpK4, hub_WpK, mount_WpK, discShare, drag_N, shares },
    start_J: numbers(enthalpy_J),
    link: numbers(network.link),
    pressed_WpK: network.pressed_WpK,
    cheekShare: numbers(network.cheekShare),
    radiation: numbers(radiation),
    /** The tables of all materials one after another, where each node's begins, and how many of its entries a joule is. */
    temperature_K: tables.flatMap((table) => numbers(table.temperature_K)),
    potential: tables.flatMap((table) => numbers(table.potential)),
    offset: network.material.map((_, node) => tableOf(node) * ENTRIES),
    entriesPerJoule: network.material.map(
      (_, node) => 1 / (network.mass_kg[node]! * tables[tableOf(node)]!.step_Jpkg),
    ),
    maps: maps.map(mapOf),
  };
}

/** Temperature of a node whose enthalpy is so many entries of its table [K] */
export function temperatureOf({ temperature_K, offset }: ProblemCorner, node: number, entry: number): number {
  const cell = Math.min(Math.max(Math.floor(entry), 0), CELLS - 1);
  const from = temperature_K[offset[node]! + cell]!;
  return from + (entry - cell) * (temperature_K[offset[node]! + cell + 1]! - from);
}

/** The engine's columns from the temperatures of all nodes, entry by node and sample [K] */
export function answerOf({ cheekShare }: ProblemCorner, T: readonly (readonly number[])[]): Answer {
  const meanAt = (sample: number): number =>
    numbers(CHEEK).reduce((sum, node, i) => sum + cheekShare[i]! * T[node]![sample]!, 0);
  return {
    face_K: T[NODE.face]!,
    cheek_K: T[NODE.face]!.map((_, sample) => meanAt(sample)),
    wall_K: T[NODE.wall]!,
    rim_K: T[NODE.rim]!,
    bell_K: T[NODE.bell]!,
    pad_K: T[NODE.padFace]!,
    caliper_K: T[NODE.caliper]!,
    fluid_K: T[NODE.fluid]!,
  };
}

const mapOf = (map: ConductanceMap) =>
  Object.fromEntries(
    Object.entries(map).map(([key, value]: [string, number | Float64Array]) => [
      key,
      typeof value === 'number' ? value : numbers(value),
    ]),
  ) as { [K in keyof ConductanceMap]: ConductanceMap[K] extends number ? number : number[] };

function stagesOf(stretches: readonly Stretch[]): Stage[] {
  const stages: Stage[] = [];
  let start_s = 0;
  for (const { leg, duration_s, massRatio, spans } of stretches) {
    let stage: Stage | undefined;
    for (const span of spans) {
      if (!stage || stage.pressed !== span.pressed) stages.push((stage = emptyStage(leg, start_s, span)));
      addPiece(stage, span, { start_s, massRatio });
    }
    start_s += duration_s;
  }
  return stages;
}

const emptyStage = (leg: number, start_s: number, { from_s, pressed }: Span): Stage => ({
  ...{ leg, pressed, from_s: start_s + from_s, to_s: NaN },
  ...{ begin_s: [], v0: [], v1: [], p0: [], p1: [], p2: [] },
});

/** The parabola through both ends and the middle is the power itself. */
function addPiece(
  stage: Stage,
  { from_s, to_s, power_W, speed_mps }: Span,
  { start_s, massRatio }: { start_s: number; massRatio: number },
): void {
  const h = to_s - from_s;
  const [a, middle, b] = [from_s, (from_s + to_s) / 2, to_s].map((t) => massRatio * power_W(t)) as [
    number,
    number,
    number,
  ];
  const bend = 2 * (a + b - 2 * middle);
  stage.begin_s.push(start_s + from_s);
  stage.v0.push(speed_mps(from_s));
  stage.v1.push((speed_mps(to_s) - speed_mps(from_s)) / h);
  stage.p0.push(a);
  stage.p1.push((b - a - bend) / h);
  stage.p2.push(bend / (h * h));
  stage.to_s = start_s + to_s;
}
