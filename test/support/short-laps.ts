/** Invented laps of under a minute, as a logger would have them: what thousands of random stints are driven on. */
import type { Scenario } from '../../engine/scenario/schema.ts';

type Trace = NonNullable<Scenario['trace']>;

const STEP_S = 0.2;

/** Speed rises and falls between moments [s, km/h], at a steady rate. */
function lapOf(name: string, moments: readonly (readonly [s: number, kmh: number])[]): Trace {
  const end_s = moments.at(-1)![0];
  const time_s = Array.from({ length: Math.round(end_s / STEP_S) + 1 }, (_, i) => i * STEP_S);
  const speed_kmh = time_s.map((t) => {
    const next = Math.max(
      1,
      moments.findIndex(([s]) => s >= t - 1e-9),
    );
    const [[from_s, from], [to_s, to]] = [moments[next - 1]!, moments[next]!];
    return from + ((to - from) * (t - from_s)) / (to_s - from_s);
  });
  let distance = 0;
  const distance_m = speed_kmh.map((v, i) =>
    i === 0 ? 0 : (distance += (STEP_S * (v + speed_kmh[i - 1]!)) / 7.2),
  );
  return { name, time_s, distance_m, speed_kmh };
}

/** Fast with hard stops, twisty with small ones, and one with a crawl on which the car all but stands. */
export const shortLaps: readonly Trace[] = [
  lapOf('fast', [
    ...([
      [0, 180],
      [7, 265],
      [10, 110],
      [13, 140],
      [20, 240],
      [21.4, 170],
      [30, 285],
      [33.6, 75],
      [40, 180],
    ] as const),
  ]),
  lapOf('twisty', [
    ...([
      [0, 90],
      [5, 140],
      [6.4, 80],
      [8, 105],
      [9, 60],
      [14, 130],
      [15.6, 55],
      [20, 120],
      [21, 85],
      [24, 90],
    ] as const),
  ]),
  lapOf('with a crawl', [
    ...([
      [0, 60],
      [8, 190],
      [12, 30],
      [14, 3],
      [18, 2],
      [27, 160],
      [29, 60],
      [30, 60],
    ] as const),
  ]),
];
