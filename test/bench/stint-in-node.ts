/** The same in Node, in a process of its own, and where the time goes. */
import { checkScenario } from '../../engine/scenario/parse.ts';
import type { Scenario } from '../../engine/scenario/schema.ts';
import { compile } from '../../engine/stint/compile.ts';
import { run } from '../../engine/stint/run.ts';
import { kernelOf } from './kernel-loop.ts';
import { changes } from './reference-stint.ts';

const TIMES = 200;
const WARMING = 20;

export interface NodeTimes {
  whole: Record<keyof typeof changes, number[]>;
  parts: Record<string, number[]>;
}

function timed<T>(into: number[], work: () => T): T {
  const start_ms = performance.now();
  const made = work();
  into.push(performance.now() - start_ms);
  return made;
}

function checked(scenario: Scenario): Scenario {
  const answer = checkScenario(scenario);
  if (!answer.ok) throw new Error('bench: a scenario that does not pass');
  return answer.scenario;
}

function wholeTimes(changed: keyof typeof changes): number[] {
  const scenarios = Array.from({ length: TIMES + WARMING }, (_, time) => changes[changed](time));
  const times: number[] = [];
  for (const scenario of scenarios) timed(times, () => run(compile(checked(scenario))));
  return times.slice(WARMING);
}

/** Summaries are what a run takes beyond its kernel. */
function partTimes(): Record<string, number[]> {
  const [check, maps, kernel, whole]: number[][] = [[], [], [], []];
  for (let time = 0; time < TIMES + WARMING; time++) {
    const scenario = changes['both blankings'](1000 + time);
    const passed = timed(check!, () => checked(scenario));
    const model = timed(maps!, () => compile(passed));
    timed(whole!, () => run(model));
    const drive = kernelOf(model);
    timed(kernel!, drive);
  }
  const summaries = whole!.map((all, i) => all - kernel![i]!);
  const parts = { check: check!, compile: maps!, kernel: kernel!, 'clock, summaries, notices': summaries };
  return Object.fromEntries(Object.entries(parts).map(([name, times]) => [name, times.slice(WARMING)]));
}

const whole = {
  'one blanking': wholeTimes('one blanking'),
  'both blankings': wholeTimes('both blankings'),
  car: wholeTimes('car'),
  circuit: wholeTimes('circuit'),
};
process.send!({ whole, parts: partTimes() } satisfies NodeTimes);
