import type { Compute, Row } from '../gate.ts';
import { engineRun, timeText } from './engine-trace.ts';
import { COLUMNS } from './equations.ts';

/** A row is a lap (its face peak and its coldest hard stop) or a moment (all columns at one of the engine's samples). */
export const compute: Compute = (rows) =>
  rows.map((row) => {
    const { stint = NaN, corner = NaN, lap = NaN, t = NaN } = row;
    const { result, sampleAt } = engineRun(stint);
    const { columns, laps } = result.corners[corner]!;
    if (!Number.isNaN(lap)) {
      const { faceMax_K, coldestStop_K } = laps.find((one) => one.lap === lap)!;
      return { peak: faceMax_K, coldest: coldestStop_K ?? NaN };
    }
    const sample = sampleAt.get(timeText(t)) ?? NaN;
    const at = (name: (typeof COLUMNS)[number]): number => columns![`${name}_K`][sample] ?? NaN;
    return Object.fromEntries(COLUMNS.map((name) => [name, at(name)])) satisfies Row;
  });
