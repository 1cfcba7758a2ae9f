/** Columns of figures: a heading that names its unit, and numbers for the eye and for a file. */
import type { CornerColumns, CornerResult, Lap, LapSummary, StintResult } from '../../engine/index.ts';
import { levelNumber, numberIn, NBSP } from './format.ts';
import { celsius, inUnit, kelvin, kmh, unitFor, unitName } from './units.ts';

export interface NumberColumn<Row> {
  name: string;
  /** One of the scenario's own units; empty: a bare number. */
  own: string;
  /** In that unit; null where there is none. */
  of(row: Row): number | null;
  digits: number;
  /** A brake's temperature, rounded to the doubt for the eye; a file has a tenth of a degree. */
  isLevel?: boolean;
}

/** "Face, °C" */
export const heading = ({ name, own }: Pick<NumberColumn<never>, 'name' | 'own'>): string =>
  own === '' ? name : `${name},${NBSP}${unitName(own)}`;

export function cellText<Row>({ of, own, digits, isLevel }: NumberColumn<Row>, row: Row): string {
  const value = of(row);
  if (value === null) return 'none';
  return isLevel ? levelNumber(kelvin(value)) : numberIn(value, own, digits);
}

/** As a machine reads it: a point, a plain minus, no unit, nothing where there is nothing. */
function fileText<Row>({ of, own, digits, isLevel }: NumberColumn<Row>, row: Row): string {
  const value = of(row);
  if (value === null) return '';
  const unit = unitFor(own);
  const shown = inUnit(value, unit);
  return String(Number(shown.toFixed(isLevel ? 1 : digits + unit.more)));
}

/** A file's lines, headings first. */
export const fileRows = <Row>(columns: readonly NumberColumn<Row>[], rows: readonly Row[]): string[][] => [
  columns.map((column) => heading(column).replaceAll(NBSP, ' ')),
  ...rows.map((row) => columns.map((column) => fileText(column, row))),
];

const parts: [name: string, key: keyof CornerColumns][] = [
  ['Face', 'face_K'],
  ['Core (mean of cheek)', 'cheek_K'],
  ['Vane wall', 'wall_K'],
  ['Rim', 'rim_K'],
  ['Bell', 'bell_K'],
  ['Pad', 'pad_K'],
  ['Caliper', 'caliper_K'],
  ['Fluid', 'fluid_K'],
  ['Wheelhouse air', 'wheelhouse_K'],
];

/** The samples of a lap, each by its place in the stint's columns. */
export function sampleColumns(
  { clock, track }: StintResult,
  { columns }: CornerResult,
  lap: Lap,
): NumberColumn<number>[] {
  /** The line itself is both the end of one lap and the start of the next. */
  const distanceAt = (i: number): number => {
    const distance_m = clock.distance_m[i] ?? 0;
    if (i === lap.firstSample && distance_m > track.length_m / 2) return 0;
    return i === lap.lastSample && distance_m < track.length_m / 2 ? track.length_m : distance_m;
  };
  return [
    { name: 'Time after the line', own: 's', digits: 2, of: (i) => (clock.time_s[i] ?? 0) - lap.start_s },
    { name: 'Distance', own: 'm', digits: 0, of: distanceAt },
    { name: 'Speed', own: 'km/h', digits: 0, of: (i) => kmh(clock.speed_mps[i] ?? 0) },
    {
      name: 'Braking power of all four',
      own: 'kW',
      digits: 0,
      of: (i) => (clock.brakePower_W[i] ?? 0) / 1000,
    },
    ...(columns
      ? parts.map(([name, key]) => ({
          name,
          own: '°C',
          digits: 0,
          isLevel: true,
          of: (i: number) => celsius(columns[key][i] ?? 0),
        }))
      : []),
  ];
}

const temperature = (name: string, of: (lap: LapSummary) => number | null): NumberColumn<LapSummary> => ({
  name,
  own: '°C',
  digits: 0,
  isLevel: true,
  of: (lap) => {
    const value_K = of(lap);
    return value_K === null ? null : celsius(value_K);
  },
});

/** The laps of a stint. */
export const lapColumns: readonly NumberColumn<LapSummary>[] = [
  { name: 'Lap', own: '', digits: 0, of: (lap) => lap.lap },
  temperature('Face min', (lap) => lap.faceMin_K),
  temperature('Face mean', (lap) => lap.faceMean_K),
  temperature('Face max', (lap) => lap.faceMax_K),
  temperature('Bulk max', (lap) => lap.bulkMax_K),
  temperature('Coldest stop', (lap) => lap.coldestStop_K),
  { name: 'Hard stops', own: '', digits: 0, of: (lap) => lap.hardStops },
];
