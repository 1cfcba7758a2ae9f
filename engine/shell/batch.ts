/** Many stints: a line of JSON in, a line of JSON out, in the order of the lines, on as many threads as asked for. */
import { createReadStream } from 'node:fs';
import { Readable, type Writable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { Tinypool } from 'tinypool';
import { isTree } from '../scenario/tree.ts';
import { linesOf, type JobLine } from './job-lines.ts';
import { fileProblem, messageOf, Refused } from './refused.ts';
import { notRun, refusedLine, type ResultLine } from './result-line.ts';

/** Lines given out for each thread: the one it works on and the next. */
const GIVEN_OUT = 2;
/** Results for each thread that wait for that of a line before them, beyond which no more lines are read. */
const AHEAD = 64;
/** A line above this may be what a thread died of [characters] */
const SHORT = 1e5;

/** The longest that a timer waits: 24 days. */
const LONG_MS = 2 ** 31 - 1;

/** Resolves to the status to end with: 0 when every line ran, 1 when some had problems. */
export async function batch(file: string, threads: number): Promise<number> {
  const input = file === '-' ? process.stdin : createReadStream(file);
  try {
    return (await answerAll(input, process.stdout, threads)) ? 0 : 1;
  } catch (error) {
    if (codeOf(error) === 'EPIPE') return 0; // who reads the results has enough of them
    const expected = 'jobs that can be read, and room for their results';
    throw new Refused([fileProblem(['--batch', file, expected], messageOf(error))]);
  }
}

/** Whether every line ran. */
async function answerAll(input: Readable, output: Writable, threads: number): Promise<boolean> {
  const filename = new URL('./batch-thread.mjs', import.meta.url).href;
  // a thread starts when a line waits for one, and stays
  const pool = new Tinypool({ filename, minThreads: 1, maxThreads: threads, idleTimeout: LONG_MS });
  pool.on('error', (error: Error) => {
    if (!isOutOfMemory(error)) input.destroy(error); // no thread can start
  });
  let allRan = true;
  const answer = async (line: JobLine): Promise<string> => {
    const { text, isRefused } = await resultOf(line, pool);
    allRan &&= !isRefused;
    return `${text}\n`;
  };
  const ended = new AbortController();
  const { signal } = ended;
  const limits = { concurrency: GIVEN_OUT * threads, highWaterMark: AHEAD * threads, signal };
  try {
    await pipeline(Readable.from(linesOf(input)).map(answer, limits), output, { end: false });
    return allRan;
  } finally {
    ended.abort();
    input.destroy();
    await pool.destroy();
  }
}

/** A thread that ends under a line is that line's result; the pool starts another for the next. */
async function resultOf(line: JobLine, pool: Tinypool): Promise<ResultLine> {
  if (typeof line !== 'string') return refusedLine(undefined, [line]);
  try {
    return (await pool.run(line)) as ResultLine;
  } catch (error) {
    return refusedLine(idIn(line), [notRun(messageOf(error))]);
  }
}

/** The id of a line, if it can be told and written again. */
function idIn(line: string): unknown {
  if (line.length > SHORT) return undefined;
  try {
    const asked: unknown = JSON.parse(line);
    const id = isTree(asked) ? asked['id'] : undefined;
    return JSON.stringify(id) && id;
  } catch {
    return undefined;
  }
}

const codeOf = (error: unknown): unknown => (error as NodeJS.ErrnoException).code;
const isOutOfMemory = (error: unknown): boolean => codeOf(error) === 'ERR_WORKER_OUT_OF_MEMORY';
