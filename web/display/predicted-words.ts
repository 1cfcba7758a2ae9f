/** What a session is likely to bring, with its doubt, in words. Pure. */
import type { Axle, CornerReading, CornerSpread, Count, Plan, SessionForecast } from '../../engine/index.ts';
import type { Sensor } from '../../engine/scenario/sensor-schema.ts';
import { cornerName } from './corner.ts';
import { capital, level, levelNumber, NBSP } from './format.ts';
import { coverAt, days, fitName, fitsWords, startWords } from './plan-words.ts';

/** What one session is likely to bring with what the rule fits then, in draws. */
export interface Predicted {
  /** Place in the set, by axle. */
  panels: Partial<Record<Axle, number>>;
  forecast: SessionForecast;
}

export interface PredictedLine {
  corner: string;
  /** "C (65 %)" */
  fit: string;
  /** "31 of 40 in, 9 too hot" */
  runs: string;
  /** "610 to 690 °C", the middle 80 % of the runs: of the face itself, and as the sensor reads it; empty without one. */
  hottest: string;
  coldest: string;
  readsHottest: string;
  readsColdest: string;
}

/** A share of the runs below this and above its counterpart is left out. */
const TAIL = 0.1;

function middle(values: readonly (number | null)[]): string {
  const known = values.filter((value) => value !== null).sort((a, b) => a - b);
  if (known.length === 0) return 'no hard stop';
  const at = (share: number): number => known[Math.round(share * (known.length - 1))] ?? 0;
  return range([at(TAIL), at(1 - TAIL)]);
}

const range = ([low_K, high_K]: readonly [number, number]): string =>
  `${levelNumber(low_K)} to ${level(high_K)}`;

export function predictedLines(
  { plan, predicted }: { plan: Plan; predicted: readonly (Predicted | null)[] },
  session: number,
): PredictedLine[] {
  const found = predicted[session];
  if (!found) return [];
  const { corners, readings } = found.forecast;
  return corners.flatMap((corner, i) => {
    const axle = plan.axles.find((each) => each.axle === corner.axle);
    const place = found.panels[corner.axle];
    if (!axle || place === undefined) return [];
    const cover = coverAt(axle.panels, place);
    return [
      { ...lineOf(corner, readings?.[i]), fit: `${fitName(axle.panels, place)}${cover && ` (${cover})`}` },
    ];
  });
}

const lineOf = (corner: CornerSpread, reading: CornerReading | undefined): Omit<PredictedLine, 'fit'> => ({
  corner: capital(cornerName(corner)),
  runs: runsWords(corner.count),
  hottest: middle(corner.hottest_K),
  coldest: middle(corner.coldest_K),
  readsHottest: reading ? range(reading.hottest_K) : '',
  readsColdest: reading ? (reading.coldest_K ? range(reading.coldest_K) : 'no hard stop') : '',
});

const BECAME = [
  ['hot', 'too hot'],
  ['cold', 'too cold'],
  ['both', 'both'],
  ['notJudged', 'not judged'],
] as const;

function runsWords(count: Count): string {
  const all = Object.values(count).reduce((sum, each) => sum + each, 0);
  const out = BECAME.filter(([key]) => count[key] > 0).map(([key, words]) => `${count[key]} ${words}`);
  return [`${count.in} of${NBSP}${all} in`, ...out].join(', ');
}

/** Of a table of these lines; what a sensor reads only where one is described. */
export function predictedColumns(
  sensor: Sensor | null,
): readonly { key: keyof PredictedLine; head: string }[] {
  const all: { key: keyof PredictedLine; head: string }[] = [
    { key: 'corner', head: 'Corner' },
    { key: 'fit', head: 'Fit' },
    { key: 'runs', head: 'Runs' },
    { key: 'hottest', head: 'Face, hottest' },
    { key: 'coldest', head: 'Face, coldest hard stop' },
  ];
  if (!sensor) return all;
  return [
    ...all,
    { key: 'readsHottest', head: 'Sensor reads, hottest' },
    { key: 'readsColdest', head: 'Sensor reads, coldest hard stop' },
  ];
}

/** What is told apart of all that is unsure. */
export const unsureWords = (forecast: SessionForecast | undefined, isNotCalibrated: boolean): string =>
  [
    'Two things are unsure. The weather and traffic are told in days, of 100 like the forecast, with the car as it is modelled.',
    forecast
      ? `The car is told in runs: ${forecast.draws} on the likeliest day, each with its ${forecast.unknowns} unsure values taken another way; a range is the middle 80${NBSP}% of them.`
      : '',
    isNotCalibrated ? 'Not calibrated.' : '',
  ]
    .filter(Boolean)
    .join(' ');

/** Of one axle in a session: what the rule fits, and what each of these starts with where a stop is planned. */
export interface SessionWords {
  fits: string;
  starts: readonly string[];
}

export const sessionWords = ({ axles }: Plan, session: number): SessionWords[] =>
  axles.flatMap(({ axle, sessions, panels }) => {
    const at = sessions[session];
    if (!at) return [];
    const fits = `${capital(axle)}: the rule fits ${fitsWords(at, panels)}, and so stays in the window on ${days(at.covered)}.`;
    const starts =
      at.beforeStop === null
        ? []
        : at.fits.map((fit) => `Where ${fitName(panels, fit.panel)} is right, ${startWords(fit, panels)}.`);
    return [{ fits, starts }];
  });
