/** All blankings in words: the take-away, one lap at one blanking, and the table. */
import type { BlankedLap, BlankingMap, BlankingRow, SafeSpan } from '../../engine/index.ts';
import { ALLOWED, excessWords } from './allowed-words.ts';
import { cornerName } from './corner.ts';
import { capital, kelvins, level, NBSP, percent } from './format.ts';
import { spanRange } from './span-words.ts';
import type { NumberColumn } from './table-columns.ts';

/** "Front: every counted lap stays in from 57 to 66 %", as the safe span has it. */
export function blankingsTitle(map: BlankingMap, span: SafeSpan | undefined): string {
  return `${capital(cornerName(map))}: ${takeAway(map, span)}`;
}

function takeAway({ rows }: BlankingMap, span: SafeSpan | undefined): string {
  if (!span) return 'all blankings, open to closed';
  const { isIdle, changesOn, before, span_pct, none, reason } = span;
  if (isIdle)
    return `what is fitted first decides no counted lap: the blanking changes on lap${NBSP}${changesOn}`;
  if (before?.span_pct) return `every counted lap before lap${NBSP}${before.lap} ${stays(before.span_pct)}`;
  if (span_pct) return `every counted lap ${stays(span_pct)}`;
  if (!none) return `not judged, ${reason}`;
  const out = (way: 'tooHot' | 'tooCold', row: BlankingRow | undefined): string => {
    const laps = row ? counted(row) : [];
    const count = laps.filter((lap) => lap[way]).length;
    return count === laps.length ? 'every counted lap' : `${count} of ${laps.length} counted laps`;
  };
  switch (none.why) {
    case 'hot when open':
      return `${out('tooHot', rows[0])} too hot even fully open`;
    case 'cold when closed':
      return `${out('tooCold', rows.at(-1))} too cold even fully closed`;
    case 'swing':
      return 'no blanking keeps every counted lap in';
  }
}

function stays([low, high]: readonly [number, number]): string {
  if (low <= 0 && high >= 100) return 'stays in at any blanking';
  if (low <= 0) return `stays in up to ${percent(Math.floor(high))}`;
  if (high >= 100) return `stays in from ${percent(Math.ceil(low))} on`;
  const range = spanRange([low, high]);
  return range.includes('alone') ? `stays in at ${range}` : `stays in from ${range}`;
}

/** "Lap 9 at 60 %: peak 640 °C, 10 K to spare" */
export function pointWords(lap: BlankedLap, blanking_pct: number): string {
  const counts = lap.in === null ? ', does not count' : '';
  return `Lap${NBSP}${lap.lap} at ${percent(blanking_pct)}: peak ${level(lap.faceMax_K)}, ${standing(lap)}${counts}`;
}

function standing(lap: BlankedLap): string {
  const ways = [
    lap.tooHot ? `${kelvins(lap.hotMargin_K)} too hot` : '',
    lap.tooCold ? `${kelvins(lap.coldMargin_K)} too cold` : '',
  ].filter(Boolean);
  if (ways.length > 0) return ways.join(' and ');
  const least_K = Math.min(lap.hotMargin_K, lap.coldMargin_K);
  if (least_K < 0) return `${excessWords(lap)}, ${ALLOWED}`;
  return `${kelvins(least_K)} to spare${lap.coldestStop_K === null ? ', no hard stop' : ''}`;
}

/** "Counted laps in: 0 of 15 fully open, 1 at 70 %, 0 fully closed." */
export function blankingsSummary({ rows }: BlankingMap, now_pct: number): string {
  const [open, closed] = [rows[0], rows.at(-1)];
  const now = nearestRow(rows, now_pct);
  if (!open || !now || !closed) return '';
  const between = now === open || now === closed ? '' : `, ${lapsIn(now)} at ${percent(now.blanking_pct)}`;
  return `Counted laps in: ${lapsIn(open)} of ${counted(open).length} fully open${between}, ${lapsIn(closed)} fully closed.`;
}

export const BLANKING_KEYS =
  'Left and right arrows move the point by a lap, up and down by 5 percent, with Shift by 1. Enter fits its blanking and goes to its lap. Escape goes back to what is fitted.';

/** "Pinned 50 %, dashed: 12 of 15 counted laps in.": by the nearest row; words for the eye go without. */
export function pinnedSummary(
  { rows }: BlankingMap,
  pinned: readonly { name: string; blanking_pct: number }[],
): string {
  return pinned
    .map(({ name, blanking_pct }) => {
      const row = nearestRow(rows, blanking_pct);
      return row ? `${capital(name)}, dashed: ${lapsIn(row)} of ${counted(row).length} counted laps in.` : '';
    })
    .join(' ');
}

/** The names of those that had the blanking of a row; "near" those that had one between it and the next. */
export const pinnedAt = (
  rows: readonly BlankingRow[],
  row: BlankingRow,
  pinned: readonly { name: string; blanking_pct: number }[],
): string[] =>
  pinned
    .filter(({ blanking_pct }) => nearestRow(rows, blanking_pct) === row)
    .map(({ name, blanking_pct }) => (blanking_pct === row.blanking_pct ? name : `near ${name}`));

const nearestRow = (rows: readonly BlankingRow[], at_pct: number): BlankingRow | undefined =>
  rows.toSorted((a, b) => Math.abs(a.blanking_pct - at_pct) - Math.abs(b.blanking_pct - at_pct))[0];

/** The rows of the table: every 5 %, and each blanking at which the verdict turns. */
export const blankingRows = ({ rows }: BlankingMap): BlankingRow[] =>
  rows.filter((row, i) => row.blanking_pct % 5 === 0 || turnsAt(rows, i));

const turnsAt = (rows: readonly BlankingRow[], i: number): boolean =>
  [rows[i - 1], rows[i + 1]].some((near) => near && near.verdict.status !== rows[i]?.verdict.status);

const counted = ({ laps }: BlankingRow): BlankedLap[] => laps.filter((lap) => lap.in !== null);

const lapsIn = (row: BlankingRow): number => counted(row).filter((lap) => lap.in).length;

/** What a margin of the table is; and of rows that stay in although one is past its limit, why they do. */
export function marginNote(rows: readonly BlankingRow[]): string {
  const isAllowed = rows.some(
    ({ verdict }) => verdict.status === 'in' && Math.min(verdict.hotMargin_K, verdict.coldMargin_K) < 0,
  );
  return `A margin is what is to spare; below zero it is past its limit${isAllowed ? `, in bold rows ${ALLOWED}` : ''}.`;
}

const finite = (margin_K: number): number | null => (Number.isFinite(margin_K) ? margin_K : null);

/** Over the counted laps; a margin is negative past its limit, and there is none where nothing meets it. */
export const blankingColumns: readonly (NumberColumn<BlankingRow> & { key: string })[] = [
  { key: 'blanking', name: 'Blanking', own: '%', digits: 0, of: (row) => row.blanking_pct },
  { key: 'in', name: 'Counted laps in', own: '', digits: 0, of: lapsIn },
  { key: 'firstOut', name: 'First lap out', own: '', digits: 0, of: (row) => row.verdict.firstLapOut },
  { key: 'hot', name: 'Hot margin', own: 'K', digits: 0, of: (row) => finite(row.verdict.hotMargin_K) },
  { key: 'cold', name: 'Cold margin', own: 'K', digits: 0, of: (row) => finite(row.verdict.coldMargin_K) },
];
