/**
 * The conditions map: safe span and best blanking of every corner over two things that may come, such as ambient by gap. Each
 * cell begins where its neighbour ended, so that few runs are needed for it.
 */
import type { Changes, Value } from '../scenario/changes.ts';
import type { Scenario } from '../scenario/schema.ts';
import type { CompileOptions } from '../stint/compile.ts';
import type { Axle, CornerResult } from '../stint/result.ts';
import type { Sample } from './doubt.ts';
import { looksAt, type Look } from './look.ts';
import { cellAt, guessesFrom, type FoundCell, type SpanCell } from './map-cell.ts';
import { fitBy, triedIn, type SetOfAxle, type Tried } from './map-panels.ts';
import { marginDoubts, type MarginDoubt } from './margin-doubt.ts';
import { together, type Search, type Steps } from './search.ts';

/** A key of the scenario that holds one value, and those that are tried, in order. */
export interface MapAxis {
  key: string;
  values: readonly Value[];
}

export interface MapAsked {
  /** From left to right and from row to row. */
  across: MapAxis;
  down: MapAxis;
  /** For the doubt that margins are weighed by. */
  sample: Sample;
  /** What is brought: each cell tells which of it to fit. */
  sets?: readonly SetOfAxle[];
}

export interface MapCell extends SpanCell {
  /** Of the set the panel to fit, by its place; null: none stays in on all corners of the axle, or no set was given. */
  fit: number | null;
}

export interface MapCorner {
  axle: Axle;
  side: CornerResult['side'];
  doubt: MarginDoubt;
  /** Row by row. */
  rows: MapCell[][];
}

export interface ConditionsMap extends Pick<MapAsked, 'across' | 'down'> {
  /** Those that have a duct. */
  corners: MapCorner[];
}

/** Rows that are filled side by side: a worker keeps the models of so many conditions. */
const ABREAST = 8;

export const conditionsMap = (
  scenario: Scenario,
  asked: MapAsked,
  options: CompileOptions = {},
): Search<ConditionsMap> => ({ ground: { scenario, ...options }, steps: mapping(scenario, asked) });

function* mapping(scenario: Scenario, { across, down, sample, sets = [] }: MapAsked): Steps<ConditionsMap> {
  const doubts = (yield* marginDoubts(scenario, sample)).filter((corner) => hasDuct(scenario, corner));
  const chart: Chart = { scenario, across, down, sets, doubts };
  const firsts = yield* together(doubts.map((doubt) => firstColumn(chart, doubt)));
  const rows = doubts.map((): Trail[][] => []);
  for (let row = 0; row < down.values.length; row += ABREAST) {
    const block = down.values.slice(row, row + ABREAST).map((_, i) => row + i);
    const chains = doubts.flatMap((doubt, c) =>
      block.map((at) => restOfRow(chart, doubt, at, firsts[c]![at]!)),
    );
    const filled = yield* together(chains);
    rows.forEach((own, c) => own.push(...filled.slice(c * block.length, (c + 1) * block.length)));
  }
  const cornersOf = (axle: Axle): Trail[][][] => rows.filter((_, c) => doubts[c]!.axle === axle);
  const corners = doubts.map((doubt, c): MapCorner => {
    const { axle, side } = doubt;
    const cellOf = (row: number, column: number): MapCell => ({
      ...rows[c]![row]![column]!.cell,
      fit: fitBy(cornersOf(axle).map((own) => own[row]![column]!.tried)),
    });
    return { axle, side, doubt, rows: rows[c]!.map((cells, r) => cells.map((_, i) => cellOf(r, i))) };
  });
  return { across, down, corners };
}

interface Chart extends Pick<MapAsked, 'across' | 'down'> {
  scenario: Scenario;
  sets: readonly SetOfAxle[];
  /** Of all corners. */
  doubts: readonly MarginDoubt[];
}

const hasDuct = (scenario: Scenario, { axle, side }: MarginDoubt): boolean =>
  looksAt(scenario).some(
    ({ corner }) => corner.axle === axle && corner.side === side && corner.brake.duct !== null,
  );

/** A cell, and what its corner has to say of the axle's set there. */
interface Trail extends FoundCell {
  tried: Tried;
}

function* firstColumn(chart: Chart, doubt: MarginDoubt): Steps<Trail[]> {
  const trails: Trail[] = [];
  for (const value of chart.down.values) {
    const changes = { [chart.across.key]: chart.across.values[0]!, [chart.down.key]: value };
    trails.push(yield* trailAt(chart, changes, { doubt, trails }));
  }
  return trails;
}

function* restOfRow(chart: Chart, doubt: MarginDoubt, row: number, first: Trail): Steps<Trail[]> {
  const trails = [first];
  for (const value of chart.across.values.slice(1)) {
    const changes = { [chart.across.key]: value, [chart.down.key]: chart.down.values[row]! };
    trails.push(yield* trailAt(chart, changes, { doubt, trails }));
  }
  return trails;
}

function* trailAt(
  chart: Chart,
  changes: Changes,
  { doubt, trails }: { doubt: MarginDoubt; trails: readonly Trail[] },
): Steps<Trail> {
  const look = lookUnder(chart, changes, doubt);
  const found = yield* cellAt(look, doubt, guessesFrom(trails));
  const tried = yield* triedIn(look, doubt, {
    ...found.cell,
    panels: chart.sets.find(({ axle }) => axle === doubt.axle)?.panels ?? [],
    isAlone: chart.doubts.filter(({ axle }) => axle === doubt.axle).length === 1,
  });
  return { ...found, tried };
}

function lookUnder({ scenario }: Chart, changes: Changes, { axle, side }: MarginDoubt): Look {
  const found = looksAt(scenario, changes).find(({ corner }) => corner.axle === axle && corner.side === side);
  if (!found) throw new Error(`no corner: ${axle} ${side}`);
  return found.look;
}
