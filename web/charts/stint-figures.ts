import { kelvins, level, levelNumber } from '../display/format.ts';
import type { Point } from './columns.ts';
import type { Run, StintView } from './stint-view.ts';
import { textWidth } from './text-width.ts';
import type { Word } from './word.ts';

/** A value printed at the point it belongs to, with the places it may take, best first. */
export interface Figure {
  text: string;
  tone: Word['tone'];
  places: Point[];
}

const RAISE_PX = 15;

/** The values that decide: how far over, how far under, and the first stop after a restart. */
export function stintFigures(view: StintView): Figure[] {
  return [...tooHot(view), ...tooCold(view), ...restart(view)];
}

function tooHot(view: StintView): Figure[] {
  const { verdict } = view.corner;
  if (verdict.hotMargin_K >= 0 || verdict.hotLimit !== 'face peak') return [];
  const text = `${level(verdict.facePeak_K)}, +${kelvins(verdict.hotMargin_K)}`;
  return [
    { text, tone: 'hot', places: overRun(view, view.tooHot, verdict.hotLap, verdict.facePeak_K, -RAISE_PX) },
  ];
}

function tooCold(view: StintView): Figure[] {
  const { verdict } = view.corner;
  if (verdict.coldMargin_K >= 0 || verdict.coldLimit !== 'bite' || verdict.coldestStop_K === null) return [];
  const text = `${level(verdict.coldestStop_K)}, \u2212${kelvins(verdict.coldMargin_K)}`;
  const places = overRun(view, view.tooCold, verdict.coldLap, verdict.coldestStop_K, RAISE_PX);
  return [{ text, tone: 'bold', places }];
}

/** Over the middle of the run of laps that holds the worst one, then along it. */
function overRun(
  { x, y, frame }: StintView,
  runs: Run[],
  lap: number,
  value_K: number,
  raise: number,
): Point[] {
  const worst = x.laps.find((cell) => cell.lap.lap === lap)?.middle ?? frame.left;
  const run = runs.find(({ left, right }) => worst > left && worst < right);
  const middle = run ? (run.left + run.right) / 2 : worst;
  const at = Math.min(frame.top + frame.height - 10, Math.max(frame.top + 10, y.of(value_K) + raise));
  const steps = [0, -1, 1, -2, 2, -3, 3, -4, 4, -5, 5, -6, 6];
  return [at, at + raise / 3, at + raise].flatMap((line) =>
    steps.map((step) => ({ x: middle + step * x.lapWidth, y: line })),
  );
}

function restart({ x, now, corner }: StintView): Figure[] {
  const point = now.coldest[1]?.[0];
  const cell = x.laps.find(({ middle }) => middle === point?.x);
  const coldest_K = corner.laps.find(({ lap }) => lap === cell?.lap.lap)?.coldestStop_K ?? null;
  if (!point || coldest_K === null || coldest_K >= corner.window.bite_K) return [];
  const text = `restart: first stop at ${levelNumber(coldest_K)}`;
  const aside = textWidth(text) / 2 + 14;
  const places = [14, 0, -14, 28].flatMap((dy) =>
    [aside, -aside].map((dx) => ({ x: point.x + dx, y: point.y + dy })),
  );
  return [{ text, tone: 'ink', places }];
}
