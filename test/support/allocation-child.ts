/**
 * Drives the kernel for millions of steps in a process of its own and tells what the heap grew by. Started with room for
 * 64 MB of young objects, so that nothing is collected on the way unless very much is allocated.
 */
import { PerformanceObserver } from 'node:perf_hooks';
import { setTimeout as rest } from 'node:timers/promises';
import { driveLap } from '../../engine/disc/kernel.ts';
import type { LapSteps } from '../../engine/disc/lap-input.ts';
import { createStepper } from '../../engine/disc/stepper.ts';
import { defaultScenario, shippedStint } from '../../engine/scenario/library.ts';
import type { Scenario } from '../../engine/scenario/schema.ts';
import { compile } from '../../engine/stint/compile.ts';
import { newColumns } from '../../engine/disc/columns.ts';

/** Steps of a reading, and how many are taken: what is compiled anew runs for a while as code that boxes its numbers. */
const STEPS = 5e5;
const READINGS = 6;
/** Laps joined into one: a call of the kernel may cost a few bytes, its steps may not. */
const LAPS = 100;

export interface Allocated {
  steps: number;
  /** Of each reading; infinite where something was collected. */
  bytes: number[];
}

/** A call that drives a hundred laps of a stint's first corner as one. */
function drives(scenario: Scenario): { steps: number; drive: () => void } {
  const { passages, corners } = compile(scenario);
  const [corner] = corners;
  const [, push] = passages;
  if (!corner || !push || push.kind === 'stand') throw new Error('allocation: no push lap');
  const long = joined(push.plan.axles.front);
  const stepper = createStepper(corner.spec, corner.start);
  const out = newColumns(long.steps + 1);
  const [share, map] = [corner.shares[push.leg]!, corner.maps[push.leg]!];
  return { steps: long.steps, drive: () => driveLap(stepper, long, share, map, out, 0) };
}

function joined(lap: LapSteps): LapSteps {
  const { steps, ...columns } = lap;
  const long = Object.entries(columns).map(([key, column]) => {
    const all = new (column.constructor as Float64ArrayConstructor)(LAPS * column.length);
    for (let i = 0; i < LAPS; i++) all.set(column, i * column.length);
    return [key, all] as const;
  });
  return { ...(Object.fromEntries(long) as unknown as LapSteps), steps: LAPS * steps };
}

// a wet stint takes the branches that a dry one does not
const all = [defaultScenario(), shippedStint('night-rain')].map(drives);
const stepsOfAll = all.reduce((sum, { steps }) => sum + steps, 0);
const driveAll = (): void => all.forEach(({ drive }) => drive());

for (let n = 0; n < 10; n++) driveAll();
let collections = 0;
const watch = new PerformanceObserver((list) => (collections += list.getEntries().length));
globalThis.gc!();
await rest(50);
watch.observe({ entryTypes: ['gc'] });
const bytes: number[] = [];
let steps = 0;
for (let n = 0; n < READINGS; n++) {
  collections = 0;
  const before = process.memoryUsage().heapUsed;
  for (steps = 0; steps < STEPS; steps += stepsOfAll) driveAll();
  const grown = process.memoryUsage().heapUsed - before;
  await rest(50);
  bytes.push(collections === 0 ? grown : Infinity);
}
process.send!({ steps, bytes } satisfies Allocated);
