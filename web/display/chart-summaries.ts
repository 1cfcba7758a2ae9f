/** What each drawing shows in one paragraph, and what the cursor is on: for ears, and over the tables. */
import type { CornerResult, Lap, StintResult } from '../../engine/index.ts';
import { cornerName } from './corner.ts';
import { capital, clockTime, kelvins, level, limit, NBSP } from './format.ts';
import { kindWord, marginWords } from './headings.ts';

/** "Arrow keys move the cursor ...": how a drawing that has the focus is read. */
export const CURSOR_KEYS =
  'Arrow keys move the cursor by a sample, with Shift by a lap. M goes to the next hard stop, Shift and M to the one before. Home and End go to the ends.';

const windowWords = ({ window }: CornerResult): string =>
  `The window is ${limit(window.bite_K)} to ${limit(window.facePeak_K)}.`;

export function stintSummary(corner: CornerResult): string {
  const { laps, verdict } = corner;
  const counted = laps.filter((lap) => lap.in !== null).length;
  const coldest =
    verdict.coldestStop_K === null
      ? 'no hard stop counts'
      : `the coldest hard stop starts at ${level(verdict.coldestStop_K)}`;
  const most = `On the ${counted} that count the face reaches ${level(verdict.facePeak_K)} and ${coldest}.`;
  return `${capital(cornerName(corner))} face over ${laps.length} laps. ${counted > 0 ? `${most} ` : ''}${windowWords(corner)}`;
}

export function lapSummary(corner: CornerResult, lap: Lap): string {
  const stops = corner.stops.filter((stop) => stop.lap === lap.lap);
  const hard = stops.filter((stop) => stop.hard);
  const hottest = stops.toSorted((a, b) => b.peakFace_K - a.peakFace_K)[0];
  const coldest = hard.toSorted((a, b) => a.startFace_K - b.startFace_K)[0];
  const parts = [
    `Lap${NBSP}${lap.lap}, ${kindWord(lap.kind)}, ${clockTime(lap.end_s - lap.start_s, 1)}, ${cornerName(corner)}: ${stops.length} stops, ${hard.length} of them hard.`,
    hottest ? `The hottest, at ${hottest.place}, goes to ${level(hottest.peakFace_K)}.` : '',
    coldest
      ? `The coldest hard one, at ${coldest.place}, starts at ${level(coldest.startFace_K)}, ${biteWords(coldest.startFace_K, corner)}.`
      : '',
    windowWords(corner),
  ];
  return parts.filter(Boolean).join(' ');
}

/** How the trace of a lap is read. */
export const traceNote = (pinned: string | null): string =>
  `Numbered rings: hard stops as they start, and how far from bite. Small rings: light ones.${pinned === null ? '' : ` Dashed: ${pinned}.`}`;

/** "66 K above bite" */
export function biteWords(start_K: number, { window }: CornerResult): string {
  const margin_K = start_K - window.bite_K;
  return `${kelvins(margin_K)} ${margin_K < 0 ? 'below' : 'above'} bite`;
}

export const cellsSummary = (corners: readonly CornerResult[]): string =>
  corners.map((corner) => `${capital(cornerName(corner))}: ${marginWords(corner)}.`).join(' ');

/** "lap 10, 48.5 seconds, 212 km/h, turn 7; front face 640 °C, 10 K over its limit" */
export function cursorWords(moment: string, corner: CornerResult, sample: number, time_s: number): string {
  const face_K = corner.columns?.face_K[sample];
  if (face_K === undefined) return moment;
  const stop = corner.stops.find((each) => each.start_s <= time_s && time_s <= each.end_s);
  const { bite_K, facePeak_K } = corner.window;
  const verdict =
    face_K > facePeak_K
      ? `, ${kelvins(face_K - facePeak_K)} over its limit`
      : face_K < bite_K
        ? `, ${kelvins(bite_K - face_K)} below bite`
        : '';
  return `${moment}${stop ? `, ${stop.hard ? 'hard stop' : 'stop'} at ${stop.place}` : ''}; ${cornerName(corner)} face ${level(face_K)}${verdict}`;
}

export function mapSummary(result: StintResult, corner: CornerResult, lap: Lap): string {
  if (result.track.outline === null) return 'No map: the trace carries no positions.';
  const hottest = corner.stops
    .filter((stop) => stop.lap === lap.lap)
    .toSorted((a, b) => b.peakFace_K - a.peakFace_K)
    .slice(0, 3)
    .map((stop) => `${stop.place} ${level(stop.peakFace_K)}`);
  return `The ${cornerName(corner)} face around lap${NBSP}${lap.lap}. Hottest: ${hottest.join(', ')}. Tap a place on the circuit to go there.`;
}
