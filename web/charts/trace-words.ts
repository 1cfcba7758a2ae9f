import type { StintResult } from '../../engine/index.ts';
import { kelvins, level, levelNumber } from '../display/format.ts';
import { isNarrow } from './lap-scale.ts';
import { firstFree, keepApart, spreadLabels, type Box } from './place-labels.ts';
import type { Word } from './stint-words.ts';
import { textWidth } from './text-width.ts';
import type { TraceStop, TraceView } from './trace-view.ts';

const LINE_PX = 17;

/** Names of the corners on top; where they crowd, those after a hard stop stay. */
export function cornerNames({ x, stops }: TraceView, result: StintResult): Word[] {
  const hard = new Set(stops.filter(({ stop }) => stop.hard).map(({ stop }) => stop.place));
  const labels = result.track.corners.map(({ name, at_m }) => {
    const stop = stops.find((each) => each.stop.place === name);
    const isHard = hard.has(name);
    const width = textWidth(name, 14, isHard);
    const middle = stop ? (stop.left + stop.right) / 2 : x.xAt(at_m);
    return { name, isHard, width, x: Math.min(x.right - width / 2, Math.max(x.left + width / 2, middle)) };
  });
  const order = [...labels.filter((label) => label.isHard), ...labels.filter((label) => !label.isHard)];
  return keepApart(order, 6).map((label) => ({
    text: label.name,
    x: label.x,
    y: 15,
    anchor: 'middle',
    tone: label.isHard ? 'bold' : 'ink',
  }));
}

/** Peaks and starts of the stops, most telling first, each only where it has room. */
export function traceWords(view: TraceView): Word[] {
  const { frame, corner, stops, face } = view;
  const words: Word[] = [];
  const boxes: Box[] = stops
    .filter(({ stop }) => stop.hard)
    .map(({ start }) => ({ left: start.x - 6, top: start.y - 6, width: 12, height: 12 }));
  const add = (text: string, tone: Word['tone'], places: { x: number; y: number }[]): void => {
    const width = textWidth(text, 14, true) + 2;
    const inside = places
      .map(({ x, y }) => ({ left: x - width / 2, top: y - LINE_PX / 2, width, height: LINE_PX }))
      .filter(
        (box) =>
          box.left >= frame.left && box.left + width <= frame.left + frame.width && box.top >= frame.top,
      );
    const box = firstFree(inside, [face], boxes);
    if (!box) return;
    boxes.push(box);
    words.push({ text, tone, x: box.left + width / 2, y: box.top + 13, anchor: 'middle' });
  };
  const { facePeak_K, bite_K } = corner.window;
  const byPeak = [...stops].sort((a, b) => b.stop.peakFace_K - a.stop.peakFace_K);
  const hard = [...stops].filter(({ stop }) => stop.hard);
  for (const each of hard.sort((a, b) => a.stop.startFace_K - b.stop.startFace_K)) {
    add(levelNumber(each.stop.startFace_K), 'bold', aroundStart(each));
  }
  for (const { stop, peak } of byPeak.filter((each) => each.stop.hard || each.stop.peakFace_K > facePeak_K)) {
    const over_K = stop.peakFace_K - facePeak_K;
    const text =
      over_K > 0 ? `${levelNumber(stop.peakFace_K)}, +${kelvins(over_K)}` : levelNumber(stop.peakFace_K);
    const y = Math.max(frame.top + 11, peak.y - 14);
    const places = [y, y - 12, y + 10].flatMap((at) =>
      [0, 12, -12, 26, -26].map((dx) => ({ x: peak.x + dx, y: at })),
    );
    add(text, over_K > 0 ? 'hot' : 'bold', places);
  }
  const coldest = hard[0];
  if (coldest) {
    const margin_K = coldest.stop.startFace_K - bite_K;
    const y = (coldest.start.y + view.y.of(bite_K)) / 2 + 4;
    const text = margin_K < 0 ? `\u2212${kelvins(margin_K)}` : kelvins(margin_K);
    add(text, 'ink', [{ x: coldest.start.x + textWidth(text) / 2 + 10, y }]);
  }
  return words;
}

function aroundStart({ start }: TraceStop): { x: number; y: number }[] {
  return [
    { x: start.x - 20, y: start.y + 14 },
    { x: start.x - 24, y: start.y + 20 },
    { x: start.x + 20, y: start.y + 16 },
    { x: start.x - 22, y: start.y - 14 },
  ];
}

/** Names at the right: the areas in bold, the lines where they end. */
export function traceEnds(view: TraceView, width: number, pinnedLabel: string | null): Word[] {
  if (isNarrow(width)) return [];
  const { frame, y, corner, face, cheek, pinned, speedFrame, x } = view;
  const bottom = frame.top + frame.height;
  const ends: [string, number | undefined, Word['tone']][] = [
    ['too hot', (frame.top + y.of(corner.window.facePeak_K)) / 2, 'bold'],
    ['face, now', face.at(-1)?.y, 'bold'],
    ['cheek mean', cheek.at(-1)?.y, 'ink'],
    [pinnedLabel ?? 'pinned', pinned.at(-1)?.y, 'pinned'],
    ['too cold', (bottom + y.of(corner.window.bite_K)) / 2, 'bold'],
  ];
  const present = ends.filter(([, at]) => at !== undefined);
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
  words.push({ text: 'speed', x: x.right + 6, y: speedFrame.top + 28, anchor: 'start', tone: 'bold' });
  words.push({ text: 'km/h', x: x.right + 6, y: speedFrame.top + 45, anchor: 'start', tone: 'ink' });
  return words;
}

export const levelAt = (values: ArrayLike<number> | undefined, index: number): string =>
  level(values?.[index] ?? 0);
