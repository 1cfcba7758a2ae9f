import type { StintResult } from '../../engine/index.ts';
import { kelvins, levelNumber } from '../display/format.ts';
import { unitName } from '../display/units.ts';
import type { Point } from './columns.ts';
import { isNarrow } from './lap-scale.ts';
import { lettering, LINE_PX, placesIn } from './lettering.ts';
import { keepApart, spreadLabels } from './place-labels.ts';
import { textWidth } from './text-width.ts';
import type { TraceStop, TraceView } from './trace-view.ts';
import type { Word } from './word.ts';

/** Names of the corners on top; where they crowd, those after a hard stop stay. */
export function cornerNames({ x, stops }: TraceView, result: StintResult): Word[] {
  const hard = new Set(stops.filter(({ stop }) => stop.hard).map(({ stop }) => stop.place));
  const labels = result.track.corners.map(({ name, at_m }) => {
    const stop = stops.find((each) => each.stop.place === name);
    const isHard = hard.has(name);
    const text = isHard ? name : (name.match(/\d+$/)?.[0] ?? name);
    const width = textWidth(text, 14, isHard);
    const middle = stop ? (stop.left + stop.right) / 2 : x.xAt(at_m);
    return { text, isHard, width, x: Math.min(x.right - width / 2, Math.max(x.left + width / 2, middle)) };
  });
  const order = [...labels.filter((label) => label.isHard), ...labels.filter((label) => !label.isHard)];
  return keepApart(order, 5).map((label) => ({
    text: label.text,
    x: label.x,
    y: 15,
    anchor: 'middle',
    tone: label.isHard ? 'bold' : 'ink',
  }));
}

/** The numbers of the hard stops, each in its ring. */
export const stopNumbers = ({ stops, frame }: TraceView): Word[] =>
  stops
    .filter(({ stop }) => stop.hard)
    .map(({ start }, i) => ({ start, text: String(i + 1) }))
    .filter(({ start }) => start.y <= frame.top + frame.height)
    .map(({ start, text }) => ({ text, x: start.x, y: start.y + 5, anchor: 'middle', tone: 'bold' }));

/** Room that a numbered ring takes, from its middle [px] */
const RING_PX = 11;

/** Peaks and starts of the stops, most telling first, each only where it has room. */
export function traceWords(view: TraceView, width: number): Word[] {
  const { frame, corner, stops, face, y } = view;
  const { facePeak_K, bite_K } = corner.window;
  const hard = stops.filter(({ stop }) => stop.hard).sort((a, b) => a.stop.startFace_K - b.stop.startFace_K);
  const rings = hard.map(({ start }) => ({
    left: start.x - RING_PX,
    top: start.y - RING_PX,
    width: 2 * RING_PX,
    height: 2 * RING_PX,
  }));
  const { words, add } = lettering(frame, [face], rings);
  for (const each of hard) add(levelNumber(each.stop.startFace_K), 'bold', aroundStart(each));
  const byPeak = [...stops].sort((a, b) => b.stop.peakFace_K - a.stop.peakFace_K);
  for (const each of byPeak.filter(({ stop }, i) => stop.hard || (i === 0 && stop.peakFace_K > facePeak_K))) {
    const over_K = each.stop.peakFace_K - facePeak_K;
    const figure = levelNumber(each.stop.peakFace_K);
    if (over_K > 0) add(`${figure}, +${kelvins(over_K)}`, 'hot', aroundPeak(each));
    else add(figure, 'bold', aroundPeak(each));
  }
  for (const { stop, start } of hard) {
    const margin_K = stop.startFace_K - bite_K;
    const text = margin_K < 0 ? `\u2212${kelvins(margin_K)}` : kelvins(margin_K);
    const aside = textWidth(text) / 2 + 6;
    const middle = (start.y + y.of(bite_K)) / 2 + 4;
    add(text, 'ink', [
      { x: start.x + aside, y: middle },
      { x: start.x + aside, y: middle + 8 },
      { x: start.x - aside, y: middle + 4 },
    ]);
  }
  if (isNarrow(width)) {
    add('too hot', 'bold', placesIn(frame, frame.top, y.of(facePeak_K)));
    add('too cold', 'bold', placesIn(frame, y.of(bite_K), frame.top + frame.height));
  }
  return words;
}

function aroundPeak({ peak }: TraceStop): Point[] {
  return [-14, -24, -4, 6].flatMap((dy) =>
    [0, 12, -12, 26, -26, 44, -44].map((dx) => ({ x: peak.x + dx, y: peak.y + dy })),
  );
}

function aroundStart({ start }: TraceStop): Point[] {
  return [
    { x: start.x - 26, y: start.y + 4 },
    { x: start.x - 24, y: start.y + 18 },
    { x: start.x + 26, y: start.y + 12 },
    { x: start.x - 24, y: start.y - 14 },
  ];
}

/** Names at the right: the areas in bold, the lines where they end. */
export function traceEnds(view: TraceView, width: number, pinnedLabel: string | null): Word[] {
  if (isNarrow(width)) return [];
  const { frame, y, corner, face, cheek, pinned, speedFrame, powerFrame, x } = view;
  const bottom = frame.top + frame.height;
  const ends: [string, number | undefined, Word['tone']][] = [
    ['too hot', (frame.top + y.of(corner.window.facePeak_K)) / 2, 'bold'],
    ['face, now', face.at(-1)?.y, 'bold'],
    ['cheek mean', cheek.at(-1)?.y, 'ink'],
    [pinnedLabel ?? 'pinned', pinned.at(-1)?.y, 'pinned'],
    ['too cold', (bottom + y.of(corner.window.bite_K)) / 2, 'bold'],
  ];
  const drawn = ends.filter(([, at]) => at !== undefined);
  // in a low plot the lines keep their names; the areas are told by their hatch
  const present =
    drawn.length * LINE_PX > frame.height ? drawn.filter(([text]) => !text.startsWith('too ')) : drawn;
  const places = spreadLabels(
    present.map(([, at]) => at ?? 0),
    LINE_PX,
    frame.top + 8,
    bottom - 8,
  );
  const words = present.map(([text, , tone], i): Word => {
    const short = textWidth(text) > width - x.right - 6 ? 'pinned' : text;
    return { text: short, x: x.right + 6, y: (places[i] ?? 0) + 5, anchor: 'start', tone };
  });
  const beside = (text: string, y: number, tone: Word['tone']): Word => ({
    text,
    x: x.right + 6,
    y,
    anchor: 'start',
    tone,
  });
  return [
    ...words,
    beside('speed', speedFrame.top + 22, 'bold'),
    beside(unitName('km/h'), speedFrame.top + 39, 'ink'),
    beside('braking', powerFrame.top + 13, 'bold'),
    beside('all four, kW', powerFrame.top + 30, 'ink'),
  ];
}
