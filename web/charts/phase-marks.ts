import { isStand, type PhasePlan, type PlannedPhase } from '../display/phase-plan.ts';
import { changeMarks, standTime } from '../display/phase-words.ts';
import type { LapScale } from './lap-scale.ts';
import { startOf } from './phase-chain.ts';
import { keepApart } from './place-labels.ts';
import { textWidth } from './text-width.ts';

/** What changes at a boundary between phases, in a few words beside it. */
export interface PhaseMark {
  /** Where the phase begins [px] */
  at: number;
  x: number;
  anchor: 'start' | 'end';
  isEdited: boolean;
  text: string;
}

/** Height of the row that marks stand in [px] */
export const MARKS_PX = 17;
const ASIDE_PX = 4;
const APART_PX = 6;

/** A stop under way and everything set anew; a plain stop at the end is named at the chart's foot. */
export function isMarked(planned: PlannedPhase, plan: PhasePlan): boolean {
  const isLast = plan.slice(planned.index).every(({ laps }) => laps === 0);
  return planned.changes.length > 0 || (isStand(planned.phase) && !isLast);
}

/** The marks that have room, the edited phase's first, then stops: as many as fit in short, then each as long as fits. */
export function phaseMarks(
  x: LapScale,
  plan: PhasePlan,
  edited: number | null,
  [low, high]: readonly [number, number],
): PhaseMark[] {
  const wanted = plan
    .filter((planned) => isMarked(planned, plan))
    .map((planned) => ({ planned, isEdited: planned.index === edited, at: startOf(x, planned) }))
    .sort((a, b) => rankOf(b) - rankOf(a));
  let kept: Placed[] = [];
  /** The first of some places that is on the chart and free of all marks but the one it replaces. */
  const place = (boxes: Placed[], instead?: Placed): void => {
    const others = kept.filter((each) => each !== instead);
    const isFree = (box: Placed): boolean =>
      box.x - box.width / 2 >= low &&
      box.x + box.width / 2 <= high &&
      keepApart([...others, box], APART_PX).length > others.length;
    const free = boxes.find(isFree);
    if (free) kept = [...others, free];
  };
  for (const each of wanted) {
    const short = placesOf(each, textsOf(each.planned).slice(-1));
    const nextAfter = Math.min(...wanted.map(({ at }) => at).filter((at) => at > each.at));
    const hasRoom = (short[0]?.width ?? 0) + ASIDE_PX + APART_PX <= nextAfter - each.at;
    // a stop may be named before its boundary as well as after
    place(hasRoom || !isStand(each.planned.phase) ? short : short.reverse());
  }
  for (const each of wanted) {
    const short = kept.find(({ mark }) => mark.at === each.at);
    if (short) place(placesOf(each, textsOf(each.planned)), short);
  }
  return kept.map(({ mark }) => mark);
}

/** Whether a line at this place would strike through the text of a mark. */
export const isUnder = (marks: PhaseMark[], at: number): boolean =>
  marks.some(({ x, anchor, isEdited, text }) => {
    const width = textWidth(text, 14, isEdited);
    const left = anchor === 'start' ? x : x - width;
    return at > left - 2 && at < left + width + 2;
  });

interface Wanted {
  planned: PlannedPhase;
  isEdited: boolean;
  at: number;
}

interface Placed {
  mark: PhaseMark;
  /** Middle and width of its text [px] */
  x: number;
  width: number;
}

const rankOf = ({ isEdited, planned }: Wanted): number =>
  2 * Number(isEdited) + Number(isStand(planned.phase));

/**
 * Every text on either side of its boundary, the best place first. What a lap phase changes holds after its boundary:
 * there a short text says it better than a long one before.
 */
function placesOf({ planned, isEdited, at }: Wanted, texts: string[]): Placed[] {
  const placed = (anchor: 'start' | 'end', text: string): Placed => {
    const width = textWidth(text, 14, isEdited);
    const side = anchor === 'start' ? 1 : -1;
    const mark = { at, x: at + side * ASIDE_PX, anchor, isEdited, text };
    return { mark, x: mark.x + (side * width) / 2, width };
  };
  return isStand(planned.phase)
    ? texts.flatMap((text) => [placed('start', text), placed('end', text)])
    : [...texts.map((text) => placed('start', text)), ...texts.map((text) => placed('end', text))];
}

/** "stop 45 s, tape 40 %, driver", then ever shorter. */
function textsOf({ phase, changes }: PlannedPhase): string[] {
  const marks = changeMarks(changes);
  const stops = isStand(phase) ? [[`stop ${standTime(phase.duration_s)}`], ['stop']] : [[]];
  const shorter = [...marks.keys()].map((n) => marks.slice(0, marks.length - n));
  return stops
    .flatMap((stop) => [...shorter, []].map((some) => [...stop, ...some].join(', ')))
    .filter(Boolean);
}
