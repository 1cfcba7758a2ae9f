/** A library's integrator at the tolerance at which it errs no more than the engine: a speed at another error says nothing. */
import type { StintModel } from '../../engine/stint/compile.ts';
import { errorOf, type Answer } from './errors.ts';
import type { ErrorOfRun } from './rows.ts';

const TOLERANCES = [1e-2, 5e-3, 2e-3, 1e-3, 5e-4, 2e-4, 1e-4, 5e-5, 2e-5, 1e-5, 5e-6, 2e-6, 1e-6];

/** Two answers to one problem, each within a kelvin of the reference, cannot be further from each other [K] */
const FURTHEST_K = 2;

export interface Ours {
  model: StintModel;
  time_s: Float64Array;
  columns: readonly Answer[];
}

export interface Found {
  tolerance: number;
  error: ErrorOfRun;
  /** Largest difference of any column from the engine's [K] */
  apart_K: number;
}

/**
 * The loosest tolerance whose trace errs no more than the engine's. Peaks decide nothing: they are read between the engine's
 * samples by one parabola for all, which has an error of its own.
 */
export async function equalError(
  { model, time_s, columns }: Ours,
  solve: (tolerance: number) => Promise<readonly Answer[]> | readonly Answer[],
): Promise<Found> {
  const ours = errorOf(model, time_s, columns);
  for (const tolerance of TOLERANCES) {
    const answers = await solve(tolerance);
    const error = errorOf(model, time_s, answers);
    if (error.trace_K > ours.trace_K) continue;
    const apart_K = apartBy(columns, answers);
    if (apart_K > FURTHEST_K) throw new Error(`bench: another problem, ${apart_K} K from the engine`);
    return { tolerance, error, apart_K };
  }
  throw new Error('bench: no tolerance is as good as the engine');
}

function apartBy(some: readonly Answer[], others: readonly Answer[]): number {
  let most = 0;
  some.forEach((columns, corner) => {
    for (const key of Object.keys(others[corner]!) as (keyof Answer)[])
      for (let i = 0; i < columns[key].length; i++)
        most = Math.max(most, Math.abs(columns[key][i]! - others[corner]![key][i]!));
  });
  return most;
}
