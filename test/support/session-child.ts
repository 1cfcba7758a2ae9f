/** A session of many short stints in a process of its own: tells what memory is held after each of three equal parts. */
import { defaultScenario } from '../../engine/scenario/library.ts';
import { withChanges } from '../../engine/scenario/changes.ts';
import { compile } from '../../engine/stint/compile.ts';
import { run } from '../../engine/stint/run.ts';

const PART = 260;

export interface Held {
  runs: number;
  /** After each part, garbage taken out; the first fills what `compile` remembers [B] */
  bytes: number[];
}

const short = withChanges(defaultScenario(), { 'stint.laps': 3 });
const held = (): number => {
  globalThis.gc!();
  // buffers of arrays are given back beside the program; a second time waits for that
  globalThis.gc!();
  const { heapUsed, arrayBuffers } = process.memoryUsage();
  return heapUsed + arrayBuffers;
};

const bytes: number[] = [];
for (let time = 1; time <= 3 * PART; time++) {
  run(compile(withChanges(short, { 'blanking_pct.front': (time * 0.3713) % 100 })));
  if (time % PART === 0) bytes.push(held());
}
process.send!({ runs: PART, bytes } satisfies Held);
