/** Every corner of a scenario, run once for its summary. */
import type { Scenario } from '../scenario/schema.ts';
import { compile, type CompileOptions } from '../stint/compile.ts';
import type { Axle, CornerResult } from '../stint/result.ts';
import { clockOf, runCorner } from '../stint/run.ts';
import type { Search } from './look.ts';
import { supposing, type Unknown } from './unknowns.ts';

/** The corners of one axle, or of both, if the doubted values were so. Rests after each corner. */
export function* summariesIf(
  scenario: Scenario,
  values: readonly (readonly [Unknown, number])[],
  { axle = null, ...options }: CompileOptions & { axle?: Axle | null },
): Search<CornerResult[]> {
  const driven = options.driven && supposing(options.driven, values);
  const model = compile(supposing(scenario, values), { ...options, driven: driven ?? null });
  const clock = clockOf(model);
  const found: CornerResult[] = [];
  for (const corner of model.corners) {
    if (axle !== null && corner.corner.axle !== axle) continue;
    found.push(runCorner(model, corner, clock, 'summary'));
    yield;
  }
  return found;
}

type Place = Pick<CornerResult, 'axle' | 'side'>;

/** The corner at a place; sides that have become equal are one corner for both. */
export function cornerAt(corners: readonly CornerResult[], { axle, side }: Place): CornerResult {
  const found = corners.find((corner) => corner.axle === axle && [side, 'both'].includes(corner.side));
  if (!found) throw new Error(`no corner: ${axle} ${side}`);
  return found;
}
