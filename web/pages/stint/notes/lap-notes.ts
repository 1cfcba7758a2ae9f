/** Notes on the columns of the lap table, with the values of one lap. */
import type { CornerResult, Lap, LapSummary, StintResult } from '../../../../engine/index.ts';
import { decimal, kelvins, level, levelStep, NBSP, withUnit } from '../../../display/format.ts';
import { lapVerdict } from '../../../display/lap-words.ts';
import { degrees, unitName } from '../../../display/units.ts';
import { coldLine, hotLine, JUDGED } from './verdict-notes.ts';
import { countLine, extremeLine, RUN, worked, type Maker, type Note, type Told } from './note.ts';

interface Seen {
  corner: CornerResult;
  /** Its numbers. */
  row: LapSummary;
  /** Its place on the clock. */
  lap: Lap;
  result: StintResult;
  told: Told;
}

/** A note on the lap that the key names. */
const ofLap =
  (make: (seen: Seen) => Pick<Note, 'name' | 'value' | 'what' | 'lines'> & Partial<Note>): Maker =>
  ({ corner, more }, told) => {
    const { result } = told.run;
    const number = Number(more[0]);
    const lap = result.laps.find((each) => each.lap === number);
    const row = corner.laps.find((each) => each.lap === number);
    if (!lap || !row) return null;
    const note = make({ corner, row, lap, result, told });
    return { source: RUN, model: 'The window', ...note, name: `${note.name} on lap${NBSP}${number}` };
  };

const PARTS = 10;

/** The extremes of tenths of the lap: its samples are too many to print. */
function tenths(column: Float64Array, { firstSample, lastSample }: Lap, which: 'max' | 'min'): number[] {
  const samples = column.subarray(firstSample + 1, lastSample + 1);
  const all = Array.from({ length: PARTS }, (_, i) =>
    samples.subarray(
      Math.round((i * samples.length) / PARTS),
      Math.round(((i + 1) * samples.length) / PARTS),
    ),
  );
  return all.filter(({ length }) => length > 0).map((part) => part.reduce((a, b) => Math[which](a, b)));
}

/** Degrees times seconds over the lap, and the seconds. */
function areaUnder(column: Float64Array, time_s: Float64Array, { firstSample, lastSample }: Lap) {
  let [area, seconds] = [0, 0];
  for (let i = firstSample + 1; i <= lastSample; i++) {
    const step_s = (time_s[i] ?? 0) - (time_s[i - 1] ?? 0);
    area += (step_s * (degrees(column[i] ?? 0) + degrees(column[i - 1] ?? 0))) / 2;
    seconds += step_s;
  }
  return { area, seconds };
}

const faceMin = ofLap(({ corner: { columns }, row, lap }) => ({
  name: 'face min',
  value: level(row.faceMin_K),
  what: 'The coldest that the rubbed face is on this lap; below, the coldest of each tenth of it.',
  lines: columns
    ? [extremeLine('T = min over the lap', 'min', tenths(columns.face_K, lap, 'min'), levelStep())]
    : [],
}));

const faceMean = ofLap(({ corner: { columns }, row, lap, result }) => {
  const under = columns && areaUnder(columns.face_K, result.clock.time_s, lap);
  return {
    name: 'face mean',
    value: level(row.faceMean_K),
    what: 'The mean of the rubbed face over the time of this lap.',
    lines: under
      ? [
          worked({
            equation: 'T = ∫ T dt / t',
            values: [under.area, under.seconds],
            write: ([area, seconds]) => `${area} / ${seconds}`,
            of: ([area = 0, seconds = 1]) => area / seconds,
            unit: unitName('°C'),
            step: levelStep(),
          }),
        ]
      : [],
  };
});

const faceMax = ofLap(({ corner: { columns, stops }, row, lap }) => {
  const peaks_K = stops.filter((stop) => stop.lap === lap.lap).map(({ peakFace_K }) => peakFace_K);
  // a lap may be hottest as it begins
  const between_K = columns
    ? [columns.face_K[lap.firstSample] ?? 0, ...tenths(columns.face_K, lap, 'max')]
    : [];
  return {
    name: 'face max',
    value: level(row.faceMax_K),
    what: `The hottest that the rubbed face gets on this lap${row.facePeakPlace && `, at ${row.facePeakPlace}`}; below, the peak of each stop and the hottest elsewhere.`,
    lines: [
      extremeLine(
        'T = max over the lap',
        'max',
        [...peaks_K, ...(between_K.length > 0 ? [Math.max(...between_K)] : [])],
        levelStep(),
      ),
    ],
  };
});

const bulkMax = ofLap(({ corner: { columns }, row, lap }) => ({
  name: 'bulk max',
  value: level(row.bulkMax_K),
  what: 'The highest mean of the cheek on this lap; below, that of each tenth of it.',
  lines: columns
    ? [extremeLine('T = max over the lap', 'max', tenths(columns.cheek_K, lap, 'max'), levelStep())]
    : [],
  model: 'Disc',
}));

const coldest = ofLap(({ corner: { stops }, row, lap }) => {
  const starts_K = stops.flatMap((stop) => (stop.hard && stop.lap === lap.lap ? [stop.startFace_K] : []));
  return {
    name: 'coldest stop',
    value: row.coldestStop_K === null ? 'none' : level(row.coldestStop_K),
    what: `The coldest that the face is as a hard stop of this lap starts${row.coldestStopPlace ? `, at ${row.coldestStopPlace}` : ''}; below, each start.`,
    lines: starts_K.length > 0 ? [extremeLine('T = min of the starts', 'min', starts_K, levelStep())] : [],
  };
});

const hardStops = ofLap(({ corner, row, lap, told }) => {
  const all = corner.stops.filter((stop) => stop.lap === lap.lap).length;
  const { hard_stop_from_kmh, hard_stop_energy } = told.run.scenario.brakes[corner.axle].window;
  return {
    name: 'hard stops',
    value: String(row.hardStops),
    what: `Stops from above ${withUnit(hard_stop_from_kmh, 'km/h')} that take at least ${decimal(100 * hard_stop_energy)}${NBSP}% of what the car holds at its top speed.`,
    lines: [countLine('all stops − lighter ones', [all, all - row.hardStops])],
    source: 'speed and share are entered with the window',
  };
});

const verdict = ofLap(({ corner, row }) => {
  const cold = coldLine(corner, row, corner.window.run_K === null ? 'bite' : corner.verdict.coldLimit);
  return {
    name: 'verdict',
    value: lapVerdict(row, corner.window),
    what: `Past a limit a lap is out; a short moment of it is forgiven: ${kelvins(50)} over face peak for half a second, one start ${kelvins(40)} under bite.`,
    lines: [hotLine(corner, row, 'face peak'), hotLine(corner, row, 'bulk'), ...(cold ? [cold] : [])],
    source: JUDGED,
  };
});

export const lapNotes = {
  'lap.verdict': verdict,
  'lap.faceMin': faceMin,
  'lap.faceMean': faceMean,
  'lap.faceMax': faceMax,
  'lap.bulkMax': bulkMax,
  'lap.coldest': coldest,
  'lap.hardStops': hardStops,
};
