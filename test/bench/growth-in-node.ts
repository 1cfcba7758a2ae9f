/** A long session in a process of its own; the garbage is taken out before memory is read. */
import { withChanges } from '../../engine/scenario/changes.ts';
import { compile } from '../../engine/stint/compile.ts';
import { run } from '../../engine/stint/run.ts';
import { changes, referenceStint } from './reference-stint.ts';

const RUNS = 10_000;
const READ_AFTER = 100;
const PAIRS = 30;

export interface Growth {
  laps20_ms: number[];
  laps80_ms: number[];
  early_ms: number[];
  late_ms: number[];
  heap_MB: { early: number[]; late: number[] };
  resident_MB: { early: number[]; late: number[] };
}

function took_ms(work: () => unknown): number {
  const start_ms = performance.now();
  work();
  return performance.now() - start_ms;
}

const session = (time: number): unknown => run(compile(changes['both blankings'](time)), 'summary');

function memory(): { heap_MB: number; resident_MB: number } {
  globalThis.gc!();
  const { heapUsed, arrayBuffers, rss } = process.memoryUsage();
  return { heap_MB: (heapUsed + arrayBuffers) / 1e6, resident_MB: rss / 1e6 };
}

const all_ms: number[] = [];
const read: ReturnType<typeof memory>[] = [];
for (let time = 0; time < RUNS; time++) {
  all_ms.push(took_ms(() => session(time)));
  if (time + 1 === READ_AFTER || time + 1 === RUNS) read.push(memory());
}

// turn about, so that what slows the machine slows both
const models = [20, 80].map((laps) => compile(withChanges(referenceStint(), { 'stint.laps': laps })));
const lap_ms = models.map((): number[] => []);
for (let pair = 0; pair < PAIRS; pair++)
  models.forEach((model, i) => lap_ms[i]!.push(took_ms(() => run(model))));

const [early, late] = read;
process.send!({
  laps20_ms: lap_ms[0]!,
  laps80_ms: lap_ms[1]!,
  early_ms: all_ms.slice(10, 20),
  late_ms: all_ms.slice(990, 1000),
  heap_MB: { early: [early!.heap_MB], late: [late!.heap_MB] },
  resident_MB: { early: [early!.resident_MB], late: [late!.resident_MB] },
} satisfies Growth);
