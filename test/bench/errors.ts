/** How far columns are from the committed second solution of the reference stint. */
import type { StintModel } from '../../engine/stint/compile.ts';
import { peakIn } from '../../engine/stint/measures.ts';
import { textOf } from '../support/tree.ts';
import { parseData, type Row as Line } from '../validation/gate.ts';
import { timeText } from '../validation/whole-stint/engine-trace.ts';
import { COLUMNS } from '../validation/whole-stint/equations.ts';
import { REFERENCE } from './reference-stint.ts';
import type { ErrorOfRun } from './rows.ts';

/** Columns of one corner at the engine's samples [K] */
export type Answer = Record<`${(typeof COLUMNS)[number]}_K`, ArrayLike<number>>;

const known = parseData(textOf('test/validation/whole-stint/data.csv')).filter(
  ({ stint }) => stint === REFERENCE,
);

/** Each corner's answer, at the engine's samples `time_s` from the begin of the stint. */
export function errorOf(model: StintModel, time_s: Float64Array, answers: readonly Answer[]): ErrorOfRun {
  const sampleAt = new Map([...time_s].map((t, sample) => [timeText(t), sample] as const));
  const lapAt = lapBounds(model);
  const faces = answers.map(({ face_K }) => Float64Array.from(face_K));
  const error = { peak_K: 0, trace_K: 0 };
  let found = 0;
  for (const line of known) {
    const { corner = NaN, lap = NaN, t = NaN, peak = NaN } = line;
    const answer = answers[corner]!;
    if (!Number.isNaN(lap)) {
      const [from, to] = lapAt(lap);
      const top = peakIn({ column: faces[corner]!, time_s, from, to });
      error.peak_K = Math.max(error.peak_K, Math.abs(top - peak));
      continue;
    }
    const sample = sampleAt.get(timeText(t));
    if (sample === undefined) continue;
    found++;
    error.trace_K = Math.max(error.trace_K, ...off(line, answer, sample));
  }
  if (found < known.length / 2) throw new Error('bench: the reference was solved for other samples');
  return error;
}

const off = (line: Line, answer: Answer, sample: number): number[] =>
  COLUMNS.map((name) => Math.abs(answer[`${name}_K`][sample]! - line[name]!));

/** First and last sample of a lap. */
function lapBounds({ passages }: StintModel): (lap: number) => readonly [number, number] {
  const bounds = new Map<number, readonly [number, number]>();
  let at = 0;
  for (const passage of passages) {
    const end = at + passage.plan.steps;
    if (passage.kind !== 'stand') bounds.set(passage.lap, [at, end]);
    at = end;
  }
  return (lap) => bounds.get(lap)!;
}
