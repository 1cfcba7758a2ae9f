/**
 * The conditions map: safe span and best blanking of every corner over two things that may come, such as ambient by gap. Each
 * cell begins where its neighbour ended, so that few runs are needed for it.
 */
import type { Changes, Value } from '../scenario/changes.ts';
import type { Scenario } from '../scenario/schema.ts';
import type { CompileOptions } from '../stint/compile.ts';
import type { Axle, CornerResult, Verdict } from '../stint/result.ts';
import type { Sample } from './doubt.ts';
import { looksAt, MOST_PROPOSED_PCT, type Look } from './look.ts';
import { marginDoubts, weighed_K, type MarginDoubt } from './margin-doubt.ts';
import { together, type Search, type Steps } from './search.ts';
import type { NoSpan, Spare } from './span.ts';
import { lastThat, type Guess } from './whole-percents.ts';

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
}

/** At the best blanking: where the weighed margin is largest, inside the span if there is one. */
export interface MapBest extends Pick<Spare, 'blanking_pct' | 'hotMargin_K' | 'coldMargin_K'> {
  weighed_K: number;
}

/** One corner under one pair of conditions. */
export interface MapCell {
  /** In whole percent of the mouth, both ends in; null where no blanking stays in. */
  span_pct: [low: number, high: number] | null;
  /** null where nothing is judged. */
  best: MapBest | null;
  /** Why there is no span. */
  why: NoSpan['why'] | 'not judged' | null;
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

function* mapping(scenario: Scenario, { across, down, sample }: MapAsked): Steps<ConditionsMap> {
  const doubts = (yield* marginDoubts(scenario, sample)).filter((corner) => hasDuct(scenario, corner));
  const chart: Chart = { scenario, across, down };
  const firsts = yield* together(doubts.map((doubt) => firstColumn(chart, doubt)));
  const corners = doubts.map((doubt): MapCorner => ({ ...placeOf(doubt), doubt, rows: [] }));
  for (let row = 0; row < down.values.length; row += ABREAST) {
    const block = down.values.slice(row, row + ABREAST).map((_, i) => row + i);
    const chains = corners.flatMap(({ doubt }, c) =>
      block.map((at) => restOfRow(chart, doubt, at, firsts[c]![at]!)),
    );
    const filled = yield* together(chains);
    corners.forEach(({ rows }, c) => rows.push(...filled.slice(c * block.length, (c + 1) * block.length)));
  }
  return { across, down, corners };
}

type Chart = Pick<MapAsked, 'across' | 'down'> & { scenario: Scenario };

const placeOf = ({ axle, side }: MarginDoubt): Pick<MapCorner, 'axle' | 'side'> => ({ axle, side });

const hasDuct = (scenario: Scenario, { axle, side }: MarginDoubt): boolean =>
  looksAt(scenario).some(
    ({ corner }) => corner.axle === axle && corner.side === side && corner.brake.duct !== null,
  );

/** What a cell found on the way to its answer, for its neighbour to begin at. */
interface Trail {
  cell: MapCell;
  /** The most that is not too hot, the most open share that is not too cold, the last that is colder than hot. */
  ends: readonly [cool: number, warm: number, even: number] | null;
}

function* firstColumn(chart: Chart, doubt: MarginDoubt): Steps<Trail[]> {
  const trails: Trail[] = [];
  for (const value of chart.down.values) {
    const changes = { [chart.across.key]: chart.across.values[0]!, [chart.down.key]: value };
    trails.push(yield* cellAt(lookUnder(chart, changes, doubt), doubt, guessesFrom(trails)));
  }
  return trails;
}

function* restOfRow(chart: Chart, doubt: MarginDoubt, row: number, first: Trail): Steps<MapCell[]> {
  const trails = [first];
  for (const value of chart.across.values.slice(1)) {
    const changes = { [chart.across.key]: value, [chart.down.key]: chart.down.values[row]! };
    trails.push(yield* cellAt(lookUnder(chart, changes, doubt), doubt, guessesFrom(trails)));
  }
  return trails.map(({ cell }) => cell);
}

function lookUnder({ scenario }: Chart, changes: Changes, { axle, side }: MarginDoubt): Look {
  const found = looksAt(scenario, changes).find(({ corner }) => corner.axle === axle && corner.side === side);
  if (!found) throw new Error(`no corner: ${axle} ${side}`);
  return found.look;
}

const FAR: readonly Guess[] = [50, 50, 50].map((at) => ({ at, step: 16 }));

/** Goes on as the last two cells went; as the last one where there is no other. */
function guessesFrom(trails: readonly Trail[]): readonly Guess[] {
  const last = trails.at(-1)?.ends;
  if (!last) return FAR;
  const before = trails.at(-2)?.ends ?? last;
  return last.map((end, i) => ({ at: 2 * end - before[i]!, step: 1 }));
}

function* cellAt(look: Look, doubt: MarginDoubt, guesses: readonly Guess[]): Steps<Trail> {
  const is = (holds: (verdict: Verdict) => boolean, pctOf: (at: number) => number) =>
    function* (at: number): Steps<boolean> {
      return holds((yield* look(pctOf(at))).verdict);
    };
  const covered = (at: number): number => at;
  const open = (at: number): number => 100 - at;
  const ends = yield* together([
    lastThat(is(isCoolEnough, covered), 100, guesses[0]!),
    lastThat(is(isWarmEnough, open), 100, guesses[1]!),
    lastThat(is(isColder(doubt), covered), MOST_PROPOSED_PCT, guesses[2]!),
  ]);
  const [coolTo, warmTo, even] = ends as [number, number, number];
  const anywhere = (yield* look(Math.max(0, even))).verdict;
  if (anywhere.status === 'not judged')
    return { cell: { span_pct: null, best: null, why: 'not judged' }, ends: null };
  const warmFrom = 100 - warmTo;
  const span: MapCell['span_pct'] = warmTo >= 0 && warmFrom <= coolTo ? [warmFrom, coolTo] : null;
  const best = yield* bestOf(look, doubt, { even, span });
  const why = span ? null : whyNot(coolTo, warmTo);
  return { cell: { span_pct: span, best, why }, ends: [coolTo, warmTo, even] };
}

const isCoolEnough = ({ status }: Verdict): boolean => status !== 'hot' && status !== 'both';
const isWarmEnough = ({ status }: Verdict): boolean => status !== 'cold' && status !== 'both';

/** Whether the cold side is, weighed, the nearer one or as near. */
const isColder =
  (doubt: MarginDoubt) =>
  ({ hotMargin_K, coldMargin_K }: Verdict): boolean =>
    weighed_K({ hotMargin_K, coldMargin_K: Infinity }, doubt) >=
    weighed_K({ hotMargin_K: Infinity, coldMargin_K }, doubt);

function whyNot(coolTo: number, warmTo: number): NoSpan['why'] {
  if (coolTo < 0 && warmTo === 100) return 'hot when open';
  return warmTo < 0 && coolTo === 100 ? 'cold when closed' : 'swing';
}

/** Of the two percents between which the margins cross the better one; the nearest end of the span where it lies outside. */
function* bestOf(
  look: Look,
  doubt: MarginDoubt,
  { even, span }: { even: number; span: MapCell['span_pct'] },
): Steps<MapBest> {
  const [low, high] = span ?? [0, 100];
  const most = Math.max(low, MOST_PROPOSED_PCT);
  const inside = (pct: number): number => Math.min(high, most, Math.max(low, pct));
  const tried = yield* together([inside(even), inside(even + 1)].map((pct) => bestAt(look, doubt, pct)));
  const [one, other] = tried as [MapBest, MapBest];
  return one.weighed_K >= other.weighed_K ? one : other;
}

function* bestAt(look: Look, doubt: MarginDoubt, blanking_pct: number): Steps<MapBest> {
  const { hotMargin_K, coldMargin_K } = (yield* look(blanking_pct)).verdict;
  return {
    blanking_pct,
    hotMargin_K,
    coldMargin_K,
    weighed_K: weighed_K({ hotMargin_K, coldMargin_K }, doubt),
  };
}
