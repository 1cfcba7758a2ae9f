import { kelvins, level, levelNumber } from '../display/format.ts';
import type { Point } from './columns.ts';
import { isNarrow } from './lap-scale.ts';
import { firstFree, spreadLabels, type Box } from './place-labels.ts';
import type { StintView } from './stint-view.ts';
import { textWidth } from './text-width.ts';

export interface Word {
  text: string;
  /** Middle of the baseline, or its start. */
  x: number;
  y: number;
  anchor: 'start' | 'middle' | 'end';
  tone: 'ink' | 'bold' | 'hot' | 'pinned';
}

const LINE_PX = 17;

/** Names at the lines' right ends, moved apart; a narrow chart has no room there. */
export function endLabels(view: StintView, width: number, pinnedLabel: string | null): Word[] {
  if (isNarrow(width)) return [];
  const { now, pinned, frame, x } = view;
  const room = width - x.right - 6;
  const long = pinnedLabel ?? '';
  const dashed = textWidth(long) <= room ? long : 'pinned';
  const ends: [string, Point | undefined, Word['tone']][] = [
    ['face peak', now.peak.at(-1), 'bold'],
    [dashed, pinned?.peak.at(-1), 'pinned'],
    ['mean', now.mean.at(-1), 'ink'],
    ['coldest stop', now.coldest.at(-1)?.at(-1), 'bold'],
    ['pinned', pinned?.coldest.at(-1)?.at(-1), 'pinned'],
  ];
  const present = ends.filter(([, point]) => point !== undefined);
  const wanted = present.map(([, point]) => point?.y ?? 0);
  const places = spreadLabels(wanted, LINE_PX, frame.top + 8, frame.top + frame.height - 8);
  return present.map(([text, , tone], i) => ({
    text,
    x: x.right + 6,
    y: (places[i] ?? 0) + 5,
    anchor: 'start',
    tone,
  }));
}

/** Words inside the areas and figures at the worst points, each only where nothing is drawn. */
export function stintWords(view: StintView, width: number): Word[] {
  const { frame, y, corner, now, pinned } = view;
  const lines = [now.peak, now.mean, ...now.coldest, ...(pinned ? [pinned.peak, ...pinned.coldest] : [])];
  const [hot, cold] = [y.of(corner.window.facePeak_K), y.of(corner.window.bite_K)];
  const bottom = frame.top + frame.height;
  const words: Word[] = [];
  const boxes: Box[] = [];
  const add = (text: string, tone: Word['tone'], places: Point[]): void => {
    const size = { width: textWidth(text, 14, true) + 4, height: LINE_PX };
    const inside = places.filter(
      (at) =>
        at.x - size.width / 2 >= frame.left + 2 && at.x + size.width / 2 <= frame.left + frame.width - 2,
    );
    const candidates = inside.map((at) => ({
      left: at.x - size.width / 2,
      top: at.y - size.height / 2,
      ...size,
    }));
    const box = firstFree(candidates, lines, boxes);
    if (!box) return;
    boxes.push(box);
    words.push({ text, tone, x: box.left + box.width / 2, y: box.top + 13, anchor: 'middle' });
  };
  for (const figure of worstPoints(view)) add(figure.text, figure.tone, figure.places);
  const names: [string, number, number][] = [
    ['too hot', frame.top, hot],
    ['window', hot, cold],
    [isNarrow(width) ? 'too cold' : 'too cold to bite', cold, bottom],
  ];
  for (const [text, top, foot] of names) add(text, 'bold', placesIn(frame, top, foot));
  if (isNarrow(width)) {
    add('face peak', 'ink', along(now.peak));
    add('coldest stop', 'ink', along(now.coldest.flat()));
  }
  return words;
}

/** From the left, the middle of an area first, then nearer its edges. */
function placesIn({ left, width }: Box, top: number, foot: number): Point[] {
  const places: Point[] = [];
  for (const share of [0.5, 0.3, 0.7]) {
    for (let x = left + 34; x < left + width; x += 8) places.push({ x, y: top + (foot - top) * share });
  }
  return places;
}

function along(line: Point[]): Point[] {
  return [14, -14].flatMap((dy) => line.map(({ x, y }) => ({ x, y: y + dy })));
}

interface Figure {
  text: string;
  tone: Word['tone'];
  places: Point[];
}

function worstPoints({ corner, x, y, now, frame }: StintView): Figure[] {
  const { verdict } = corner;
  const figures: Figure[] = [];
  const around = (lap: number, value_K: number, dy: number): Point[] => {
    const middle = x.laps.find((cell) => cell.lap.lap === lap)?.middle ?? frame.left;
    const steps = [0, -1, 1, -2, 2, -3, 3, -4, 4, -5, 5, -6, 6].map((step) => step * x.lapWidth);
    const at = Math.min(frame.top + frame.height - 10, Math.max(frame.top + 10, y.of(value_K) + dy));
    return [at, at + dy / 3, at + dy].flatMap((line) => steps.map((step) => ({ x: middle + step, y: line })));
  };
  if (verdict.hotMargin_K < 0 && verdict.hotLimit === 'face peak') {
    figures.push({
      text: `${level(verdict.facePeak_K)}, +${kelvins(verdict.hotMargin_K)}`,
      tone: 'hot',
      places: around(verdict.hotLap, verdict.facePeak_K, -15),
    });
  }
  if (verdict.coldMargin_K < 0 && verdict.coldestStop_K !== null && verdict.coldLimit === 'bite') {
    figures.push({
      text: `${level(verdict.coldestStop_K)}, \u2212${kelvins(verdict.coldMargin_K)}`,
      tone: 'bold',
      places: around(verdict.coldLap, verdict.coldestStop_K, 15),
    });
  }
  const restart = now.coldest.length > 1 ? now.coldest[1]?.[0] : undefined;
  const lap =
    restart &&
    corner.laps.find((each) => x.laps.find((cell) => cell.middle === restart.x)?.lap.lap === each.lap);
  if (restart && typeof lap?.coldestStop_K === 'number' && lap.coldestStop_K < corner.window.bite_K) {
    const text = `restart: first stop at ${levelNumber(lap.coldestStop_K)}`;
    const half = textWidth(text, 14, true) / 2 + 14;
    const places = [14, 0, 28].flatMap((dy) =>
      [half, -half].map((dx) => ({ x: restart.x + dx, y: restart.y + dy })),
    );
    figures.push({ text, tone: 'ink', places });
  }
  return figures;
}
