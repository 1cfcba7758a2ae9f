/** A result as text: the table a terminal shows, and the columns of a CSV file. */
import { celsius, kmhFromMps } from '../units.ts';
import type { CornerResult, StintResult } from '../stint/result.ts';
import { costLine } from './cost-line.ts';
import { driverLines } from './driver-lines.ts';
import { feelLines, fluidWords } from './feel-lines.ts';
import { spanLine } from './span-line.ts';
import type { CornerRecord, StintRecord } from './summary.ts';

/** A readable table, one line a lap. */
export function stintTable(record: StintRecord): string {
  const corners = cornersOf(record);
  const head = ['lap', 'kind', ...corners.flatMap(({ name }) => [`${name} stop`, 'peak', 'bulk', 'window'])];
  const rows = record.axles.front.laps.map((lap, i) => [
    String(lap.lap),
    lap.kind,
    ...corners.flatMap(({ corner }) => lapCells(corner, i)),
  ]);
  const widths = head.map((title, i) => Math.max(title.length, ...rows.map((row) => row[i]!.length)));
  const line = (cells: string[]): string => cells.map((cell, i) => cell.padStart(widths[i]!)).join('  ');
  const energy = (record.brakeEnergyPerLap_J / 1e6).toFixed(2);
  return [
    record.name,
    `lap ${record.lapTime_s.toFixed(1)} s, top speed ${record.topSpeed_kmh.toFixed(0)} km/h, brake heat ${energy} MJ a lap`,
    'temperatures in °C: coldest start of a hard stop, face peak, highest bulk',
    '',
    line(head),
    ...rows.map(line),
    '',
    ...corners.map(({ name, corner }) => peaks(name, corner)),
    ...corners.flatMap(({ name, corner }) => feelLines(name, corner)),
    ...corners.map(({ name, corner }) => spanLine(name, corner)),
    ...corners.flatMap(({ name, corner }) => driverLines(name, corner)),
    ...corners.flatMap(({ name, corner }) => costLine(name, corner)),
    ...record.notices.map((notice) => `note: ${notice.text}`),
  ].join('\n');
}

interface Named {
  name: string;
  corner: CornerRecord;
}

/** Each axle as one corner, or as its two sides where they differ. */
function cornersOf({ axles, corners = {} }: StintRecord): Named[] {
  return (['front', 'rear'] as const).flatMap((axle) => {
    const sides = (['left', 'right'] as const).flatMap((side) => {
      const corner = corners[`${axle}_${side}`];
      return corner ? [{ name: `${axle} ${side}`, corner }] : [];
    });
    return sides.length > 0 ? sides : [{ name: axle, corner: axles[axle] }];
  });
}

function lapCells(corner: CornerRecord, i: number): string[] {
  const lap = corner.laps[i]!;
  const stop = lap.coldestStop_C === null ? '-' : lap.coldestStop_C.toFixed(0);
  const verdict = lap.in === null ? 'not counted' : lap.in ? 'in' : 'out';
  return [stop, lap.faceMax_C.toFixed(0), lap.bulkMax_C.toFixed(0), verdict];
}

function peaks(name: string, corner: CornerRecord): string {
  const at = (corner.fluidPeakAt_s / 60).toFixed(1);
  return `${name}: pad ${corner.padPeak_C.toFixed(0)} °C, caliper ${corner.caliperPeak_C.toFixed(0)} °C, fluid ${corner.fluidPeak_C.toFixed(0)} °C at ${at} min, ${fluidWords(corner)}`;
}

/** All columns of all corners, one row a sample, units in the header. */
export function* stintCsv({ clock, corners, laps }: StintResult): Generator<string> {
  const watched = corners.filter(
    (corner): corner is CornerResult & { columns: object } => corner.columns !== null,
  );
  const titles = watched.flatMap((corner) =>
    Object.keys(corner.columns).map((name) => `${cornerName(corner)}_${name.replace('_K', '_C')}`),
  );
  yield ['lap', 'time_s', 'distance_m', 'speed_kmh', 'brake_power_W', ...titles].join(',');
  const columns = watched.flatMap((corner) => Object.values(corner.columns) as Float64Array[]);
  let lap = 0;
  for (let i = 0; i < clock.time_s.length; i++) {
    while (lap < laps.length - 1 && i > laps[lap]!.lastSample) lap++;
    const here = laps[lap]!;
    const shared = [
      i >= here.firstSample && i <= here.lastSample ? String(here.lap) : '',
      clock.time_s[i]!.toFixed(3),
      clock.distance_m[i]!.toFixed(1),
      kmhFromMps(clock.speed_mps[i]!).toFixed(2),
      clock.brakePower_W[i]!.toFixed(0),
    ];
    yield [...shared, ...columns.map((column) => celsius(column[i]!).toFixed(2))].join(',');
  }
}

const cornerName = ({ axle, side }: CornerResult): string => (side === 'both' ? axle : `${axle}_${side}`);
