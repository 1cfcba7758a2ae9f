/** The engine's own run of the reference stints, made once. */
import { compile, type StintModel } from '../../../engine/stint/compile.ts';
import type { StintResult } from '../../../engine/stint/result.ts';
import { run } from '../../../engine/stint/run.ts';
import { referenceStints } from './stints.ts';

interface Ran {
  model: StintModel;
  result: StintResult;
  /** Sample at each time, written as data.csv writes it. */
  sampleAt: Map<string, number>;
}

/** A time as data.csv has it: enough to know the sample by; the reference was solved at the sample's own time. */
export const timeText = (time_s: number): string => time_s.toFixed(5);

const ran = new Map<number, Ran>();

export function engineRun(stint: number): Ran {
  const known = ran.get(stint);
  if (known) return known;
  const model = compile(referenceStints()[stint]!.scenario);
  const result = run(model);
  const sampleAt = new Map([...result.clock.time_s].map((t, sample) => [timeText(t), sample] as const));
  const made = { model, result, sampleAt };
  ran.set(stint, made);
  return made;
}
