/** Lettering of the map of all blankings: names of its areas, and what stands beside its frame. */
import { panelLetter } from '../../engine/scenario/tape.ts';
import { decimal, NBSP, percent } from '../display/format.ts';
import type { BlankingView } from './blanking-view.ts';
import type { Point } from './columns.ts';
import { isNarrow } from './lap-scale.ts';
import { lettering, LINE_PX } from './lettering.ts';
import { spreadLabels, type Box } from './place-labels.ts';
import { textWidth } from './text-width.ts';
import type { Word } from './word.ts';

/** In a narrow map the panels stand inside the frame, at its right [px] */
const LABELS_PX = 70;

/** What a pinned run had at this corner. */
export interface PinnedBlanking {
  name: string;
  /** The name as far as there is room for it beside the map. */
  label: string;
  /** Which of the dashes its line has. */
  dash: number;
  blanking_pct: number;
}

/** "too hot", "inside" and "too cold", each where the whole word lies in its area and nothing is drawn under it. */
export function areaWords(view: BlankingView, width: number, pinned: readonly PinnedBlanking[] = []): Word[] {
  const { inside, tooHot, tooCold, contour, y } = view;
  const frame = isNarrow(width) ? { ...view.frame, width: view.frame.width - LABELS_PX } : view.frame;
  const dashed = pinned.map(({ blanking_pct }) =>
    [frame.left, frame.left + frame.width].map((x) => ({ x, y: y.of(blanking_pct) })),
  );
  const { words, add } = lettering(frame, [...contour, ...dashed]);
  const places = gridOf(frame);
  const name = (text: string, area: Point[][], not: Point[][]): void => {
    const half = { x: textWidth(text, 14, true) / 2 + 6, y: LINE_PX / 2 + 3 };
    const fits = (at: Point): boolean => corners(at, half).every((p) => isIn(area, p) && !isIn(not, p));
    const found = places.filter(fits);
    add(text, 'bold', nearest(found, asideOf(found)));
  };
  name('too hot', tooHot, tooCold);
  name(isNarrow(width) ? 'in' : 'inside the window', inside, []);
  name('too cold', tooCold, tooHot);
  return words;
}

function gridOf({ left, top, width, height }: Box): Point[] {
  const points: Point[] = [];
  for (let y = top + 12; y < top + height; y += 8)
    for (let x = left + 12; x < left + width; x += 16) points.push({ x, y });
  return points;
}

const corners = ({ x, y }: Point, half: Point): Point[] =>
  [-1, 0, 1].flatMap((dx) => [-1, 1].map((dy) => ({ x: x + dx * half.x, y: y + dy * half.y })));

/** At their middle height and left of their middle: there the cursor seldom stands. */
const asideOf = (points: Point[]): Point => ({
  x: Math.min(...points.map(({ x }) => x)) * 0.7 + Math.max(...points.map(({ x }) => x)) * 0.3,
  y: points.reduce((sum, { y }) => sum + y, 0) / points.length,
});

const nearest = (points: Point[], to: Point): Point[] =>
  points.sort((a, b) => Math.hypot(a.x - to.x, a.y - to.y) - Math.hypot(b.x - to.x, b.y - to.y));

/** Whether an odd number of the outlines' edges lies to the right of a point. */
function isIn(area: Point[][], { x, y }: Point): boolean {
  let isInside = false;
  for (const ring of area) {
    ring.forEach((a, i) => {
      const b = ring.at(i - 1) ?? a;
      if (a.y > y !== b.y > y && x < ((b.x - a.x) * (y - a.y)) / (b.y - a.y) + a.x) isInside = !isInside;
    });
  }
  return isInside;
}

export interface SideLabel {
  text: string;
  /** Where its blanking is, and where there is room for it [px] */
  at: number;
  y: number;
  of: 'panel' | 'now' | 'pinned';
}

/** Panels at their percent, what pinned runs had and what is fitted now, moved apart. */
export function sideLabels(
  { frame, y }: Pick<BlankingView, 'frame' | 'y'>,
  panels_pct: readonly number[],
  blanking_pct: number,
  pinned: readonly PinnedBlanking[] = [],
): SideLabel[] {
  const letterOf = (pct: number): string => {
    const place = panels_pct.indexOf(pct);
    return place < 0 ? '' : panelLetter(place);
  };
  const lettered = (pct: number, text: string): string =>
    [letterOf(pct), text].filter(Boolean).join(NBSP + NBSP);
  const panels = panels_pct
    .filter((pct) => pct !== blanking_pct)
    .map((pct) => ({ text: lettered(pct, percent(pct)), pct, of: 'panel' as const }));
  const held = pinned.map(({ label: text, blanking_pct: pct }) => ({ text, pct, of: 'pinned' as const }));
  const now = {
    text: lettered(blanking_pct, `now ${percent(blanking_pct)}`),
    pct: blanking_pct,
    of: 'now' as const,
  };
  const all = [...panels, ...held, now];
  const places = spreadLabels(
    all.map(({ pct }) => y.of(pct)),
    LINE_PX,
    frame.top + 2,
    frame.top + frame.height - 2,
  );
  return all.map(({ pct, ...label }, i) => ({ ...label, at: y.of(pct), y: places[i] ?? 0 }));
}

export interface PercentTick {
  text: string;
  y: number;
  isEnd: boolean;
}

/** Round marks up the side and, bold, the whole percents at which the safe span ends; a round mark too near gives way. */
export function percentTicks(
  { y }: Pick<BlankingView, 'y'>,
  span_pct: readonly [number, number] | null,
): PercentTick[] {
  const ends = (span_pct ? [Math.ceil(span_pct[0] - 1e-9), Math.floor(span_pct[1] + 1e-9)] : [])
    .filter((pct, i, all) => pct > 0 && pct < 100 && (i === 0 || pct > (all[0] ?? 0)))
    .map((pct) => ({ text: decimal(pct), y: y.of(pct), isEnd: true }));
  const apart = ends.filter((end, i) => i === 0 || Math.abs(end.y - (ends[0]?.y ?? 0)) >= LINE_PX - 3);
  const rounds = [0, 20, 40, 60, 80, 100]
    .map((pct) => ({ text: decimal(pct), y: y.of(pct), isEnd: false }))
    .filter((round) => apart.every((end) => Math.abs(end.y - round.y) >= LINE_PX - 2));
  return [...rounds, ...apart];
}
