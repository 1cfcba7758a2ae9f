import type { Point } from './columns.ts';
import { isNarrow } from './lap-scale.ts';
import { lettering, LINE_PX, placesIn } from './lettering.ts';
import { spreadLabels } from './place-labels.ts';
import { stintFigures } from './stint-figures.ts';
import type { StintView } from './stint-view.ts';
import type { Word } from './word.ts';

/** Names at the lines' right ends, moved apart; a narrow chart has no room there. */
export function endLabels(
  view: StintView,
  width: number,
  layer: { text: string; y: number } | null = null,
): Word[] {
  if (isNarrow(width)) return [];
  const { now, pinned, frame, x } = view;
  const ends: End[] = [
    ['face peak', now.peak.at(-1)?.y, 'bold'],
    ...pinned.map(({ label, peak }): End => [label, peak.at(-1)?.y, 'pinned']),
    [layer?.text ?? '', layer?.y, 'pinned'],
    ['mean', now.mean.at(-1)?.y, 'ink'],
    ['coldest stop', now.coldest.at(-1)?.at(-1)?.y, 'bold'],
  ];
  const twice = pinned.map(({ label, coldest }): End => [label, coldest.at(-1)?.at(-1)?.y, 'pinned']);
  const all = [...ends, ...twice].filter(isThere);
  // their names stand at both lines where there is room for them
  const present = all.length * LINE_PX <= frame.height ? all : ends.filter(isThere);
  const places = spreadLabels(
    present.map(([, y]) => y ?? 0),
    LINE_PX,
    frame.top + 8,
    frame.top + frame.height - 8,
  );
  return present.map(([text, , tone], i) => ({
    text,
    x: x.right + 6,
    y: (places[i] ?? 0) + 5,
    anchor: 'start',
    tone,
  }));
}

type End = [text: string, y: number | undefined, tone: Word['tone']];

const isThere = ([, y]: End): boolean => y !== undefined;

/** Words inside the areas and figures at the worst points, each only where nothing is drawn. */
export function stintWords(view: StintView, width: number): Word[] {
  const { frame, y, corner, now, pinned } = view;
  const held = pinned.flatMap(({ peak, coldest }) => [peak, ...coldest]);
  const lines = [now.peak, now.mean, ...now.coldest, ...held];
  const { words, add } = lettering(frame, lines);
  for (const figure of stintFigures(view)) add(figure.text, figure.tone, figure.places);
  const [hot, cold] = [y.of(corner.window.facePeak_K), y.of(corner.window.bite_K)];
  if (isNarrow(width)) {
    add('face peak', 'ink', along(now.peak, [-14, -22, 14, 20]));
    add('coldest', 'ink', along(now.coldest.flat(), [14, 20, -14, -22]));
  }
  add('too hot', 'bold', placesIn(frame, frame.top, hot));
  add('window', 'bold', placesIn(frame, hot, cold));
  const tooCold = isNarrow(width) ? 'too cold' : 'too cold to bite';
  add(tooCold, 'bold', placesIn(frame, cold, frame.top + frame.height));
  return words;
}

/** A narrow chart names its lines beside them, where they run flat enough. */
function along(line: Point[], offsets: number[]): Point[] {
  return offsets.flatMap((dy) => line.map(({ x, y }) => ({ x, y: y + dy })));
}
