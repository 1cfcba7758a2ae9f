/** Logger's files as tests need them; invented. */
const LAP_M = 4200;
const TAU = 2 * Math.PI;

interface LogWanted {
  rows: number;
  step_s: number;
  header: readonly string[];
  delimiter?: string;
  /** Cells of one row. */
  cells: (row: LogRow) => readonly (number | string)[];
}

interface LogRow {
  time_s: number;
  speed_mps: number;
  /** Since the start of the file, and since the line. */
  distance_m: number;
  lapDistance_m: number;
  lap: number;
}

/** A car on a round course with four slow corners, lap after lap. */
function log({ rows, step_s, header, delimiter = ',', cells }: LogWanted): string {
  const lines = [...header];
  let distance_m = 0;
  for (let i = 0; i < rows; i++) {
    const lapDistance_m = distance_m % LAP_M;
    const speed_mps =
      45 + 18 * Math.cos((4 * TAU * lapDistance_m) / LAP_M) + 4 * Math.cos((TAU * lapDistance_m) / LAP_M);
    const lap = 1 + Math.floor(distance_m / LAP_M);
    lines.push(cells({ time_s: i * step_s, speed_mps, distance_m, lapDistance_m, lap }).join(delimiter));
    distance_m += speed_mps * step_s;
  }
  return lines.join('\n');
}

/** Decimal commas between commas, no header: 0.1 s at 212.4 km/h is "0,1,212,4". */
export const openQuestion = (): string =>
  log({
    rows: 3600,
    step_s: 0.1,
    header: [],
    cells: ({ time_s, speed_mps }) =>
      [time_s, speed_mps * 3.6].flatMap((value) => value.toFixed(1).split('.')),
  });

/** Laps in a column, speed in miles an hour although the header says metres a second. */
export const wrongUnit = (): string =>
  log({
    rows: 3600,
    step_s: 0.1,
    header: ['Time (s);Speed (m/s);Lap;Oil (C)'],
    delimiter: ';',
    cells: ({ time_s, speed_mps, lap }) => [time_s.toFixed(1), (speed_mps * 2.237).toFixed(1), lap, 95],
  });

/** Hundred rows a second for an hour and more. */
export const long = (rows: number): string =>
  log({
    rows,
    step_s: 0.01,
    header: ['Time,Speed,Lap', 's,km/h,'],
    cells: ({ time_s, speed_mps, lap }) => [time_s.toFixed(2), (speed_mps * 3.6).toFixed(2), lap],
  });

/** Four laps of 98.4 s; in two of them 50 s have no rows. */
export const holed = (): string => {
  const isMissing = (t: number): boolean => (t > 120 && t < 170) || (t > 220 && t < 270);
  const [header, ...rows] = log({
    rows: 1969,
    step_s: 0.2,
    header: ['Time (s),Speed (km/h)'],
    cells: ({ time_s, speed_mps }) => [time_s.toFixed(1), (speed_mps * 3.6).toFixed(1)],
  }).split('\n');
  return [header, ...rows.filter((row) => !isMissing(parseFloat(row)))].join('\n');
};

/** Many laps, and something missing in each of them. */
export const crowded = (): string => {
  const [header, ...rows] = log({
    rows: 3000,
    step_s: 0.5,
    header: ['Time (s),Speed (km/h),Lap'],
    cells: ({ time_s, speed_mps, lap }) => [time_s.toFixed(1), (speed_mps * 3.6).toFixed(1), lap],
  }).split('\n');
  return [header, ...rows.filter((_, i) => i % 120 < 80)].join('\n');
};

/** A unit of speed that nobody knows. */
export const strangeUnit = (): string =>
  log({
    rows: 1000,
    step_s: 0.1,
    header: ['Time (s),Speed (leagues)'],
    cells: ({ time_s, speed_mps }) => [time_s.toFixed(1), (speed_mps * 3.6).toFixed(1)],
  });

/** The header of the wrong unit, over speeds that are no speeds of a car in miles an hour. */
export const unlikely = (): string =>
  log({
    rows: 3600,
    step_s: 0.1,
    header: ['Time (s);Speed (m/s);Lap;Oil (C)'],
    delimiter: ';',
    cells: ({ time_s, speed_mps, lap }) => [time_s.toFixed(1), (speed_mps * 4.6).toFixed(1), lap, 95],
  });
