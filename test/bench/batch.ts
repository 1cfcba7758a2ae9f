/** A batch of stints as a terminal runs it, summaries alone: answers a second, what a second thread brings, and memory. */
import { existsSync, readFileSync } from 'node:fs';
import { createInterface } from 'node:readline';
import { Readable } from 'node:stream';
import { stintRunning } from '../support/terminal.ts';
import { ratios, rowOf, type Row } from './rows.ts';

const ROUNDS = 3;
const JOBS = 300;
/** Answers before which threads still start and compilers still learn. */
const WARM = 100;
const MANY = 2000;

interface Pace {
  perSecond: number;
  /** Resident once warm, and at the end; empty where the system does not tell [MB] */
  resident_MB: number[];
}

async function pace(jobs: number, threads: number): Promise<Pace> {
  const running = stintRunning(['--batch', '-', '--threads', String(threads)]);
  Readable.from(lines(jobs)).pipe(running.stdin);
  const resident_MB: number[] = [];
  let [answers, start_ms, end_ms] = [0, 0, 0];
  for await (const line of createInterface(running.stdout)) {
    if (line.startsWith('{"problems"')) throw new Error(`bench: ${line}`);
    answers += 1;
    end_ms = performance.now();
    if (answers === WARM) start_ms = end_ms;
    if (answers === WARM || answers === jobs) resident_MB.push(...residentOf(running.pid));
  }
  if (answers !== jobs) throw new Error(`bench: ${answers} answers to ${jobs} jobs`);
  return { perSecond: (1000 * (jobs - WARM)) / (end_ms - start_ms), resident_MB };
}

function* lines(jobs: number) {
  for (let i = 0; i < jobs; i++)
    yield `${JSON.stringify({ set: { 'blanking_pct.front': (i % 997) / 10 }, span: false })}\n`;
}

function residentOf(pid: number | undefined): number[] {
  const file = `/proc/${pid}/status`;
  if (!existsSync(file)) return [];
  return [Number(/^VmRSS:\s+(\d+) kB$/m.exec(readFileSync(file, 'utf8'))?.[1]) / 1000];
}

export async function batch(): Promise<Row[]> {
  const [one, two]: [number[], number[]] = [[], []];
  // turn about, so that what slows the machine slows both
  for (let round = 0; round < ROUNDS; round++) {
    one.push((await pace(JOBS, 1)).perSecond);
    two.push((await pace(JOBS, 2)).perSecond);
  }
  const [warm, end] = (await pace(MANY, 2)).resident_MB;
  return [
    rowOf('batch: jobs a second, one thread', one, { unit: '1/s' }),
    rowOf('batch: jobs a second, two threads', two, { unit: '1/s' }),
    rowOf('batch: two threads against one', ratios(two, one), { unit: 'x' }),
    ...(warm !== undefined && end !== undefined
      ? [rowOf(`batch: memory after ${MANY} jobs against ${WARM}`, [end / warm], { unit: 'x' })]
      : []),
  ];
}
