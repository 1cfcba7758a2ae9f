/** What a person must be told where a sheet leaves the page. One line each; all of it common practice, no source. */

export type CautionFor = 'cut' | 'tape';

export interface Caution {
  text: string;
  /** Of one kind of sheet alone; else of every one. */
  on?: CautionFor;
}

export const NOT_FOR_A_CAR = 'Not for use on a car: the window is an example without a source.';

export const CAUTIONS: readonly Caution[] = [
  { text: "The supplier's limits rule over this sheet." },
  { text: 'Unequal left and right pulls the car: never more than one panel or 60 K apart.' },
  { text: 'Never change the blanking by more than 15 points between two runs.' },
  { text: 'The data are bad or missing: run open.' },
  { text: 'The first stop after a restart, a wet start or a pit stop is cold: tell the driver.' },
  { text: 'A long or soft pedal: stop, do not tune the air.' },
  { text: 'Do not hold the brake on a hot disc; after parking watch the caliper.' },
  { text: 'Round all edges. Tether every panel. Count out, count in.', on: 'cut' },
  { text: 'No panel may be able to enter the hose or the wheel.', on: 'cut' },
  {
    text: 'Tape comes off at a stop and hardly ever goes on: leave the folded end free to pull.',
    on: 'tape',
  },
  { text: 'Hot parts; dust: extract it, do not blow; knife: cut away from the hand.' },
];

/** The lines for one kind of sheet, first that it is not for a car where its window has no source. */
export const cautionsFor = (what: CautionFor, isExample: boolean): string[] => [
  ...(isExample ? [NOT_FOR_A_CAR] : []),
  ...CAUTIONS.filter(({ on }) => on === undefined || on === what).map(({ text }) => text),
];
