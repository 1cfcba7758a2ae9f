/** From a changed value to finished columns: in the worker of the built page, and in Node, where the parts are told too. */
import { compile } from '../../engine/stint/compile.ts';
import { run } from '../../engine/stint/run.ts';
import { apart } from './apart.ts';
import { untilQuiet, withBuiltPage } from './built-page.ts';
import { errorOf } from './errors.ts';
import { changes, referenceStint } from './reference-stint.ts';
import { rowOf, type Row } from './rows.ts';
import type { NodeTimes } from './stint-in-node.ts';

const TIMES = 200;
const WARMING = 20;
const WANTED = {
  'one blanking': 'aim 5, at most 10',
  'both blankings': 'aim 5, at most 10',
  car: 'at most 20',
  circuit: 'at most 20',
} as const;

export async function stint(): Promise<Row[]> {
  const model = compile(referenceStint());
  const { clock, corners } = run(model);
  const error = errorOf(
    model,
    clock.time_s,
    corners.map(({ columns }) => columns!),
  );
  const what = Object.keys(changes) as (keyof typeof changes)[];
  const rows: Row[] = [];
  for (const changed of what) {
    const times = await workerTimes(changed);
    rows.push(
      rowOf(`${changed} changed to columns, worker`, times, { unit: 'ms', wanted: WANTED[changed], error }),
    );
  }
  const node = await apart<NodeTimes>('stint-in-node.ts');
  for (const changed of what)
    rows.push(rowOf(`${changed} changed to columns, Node`, node.whole[changed], { unit: 'ms', error }));
  for (const [part, times] of Object.entries(node.parts))
    rows.push(rowOf(`of these, both blankings changed: ${part}`, times, { unit: 'ms' }));
  return rows;
}

/** Asks a worker of its own, as the page does. */
function workerTimes(changed: keyof typeof changes): Promise<number[]> {
  const scenarios = Array.from({ length: TIMES + WARMING }, (_, time) => changes[changed](time));
  return withBuiltPage(async (page, { scriptOf }) => {
    await untilQuiet(page);
    return page.evaluate(
      async ({ script, asked, warming }) => {
        const worker = new Worker(`./assets/${script}`, { type: 'module' });
        const times: number[] = [];
        for (const scenario of asked) {
          const value = { id: times.length, scenario, driven: null };
          const argumentList = [{ type: 'RAW', value }];
          const reply = new Promise<{ value: { kind: string; elapsed_ms: number } }>((resolve) => {
            worker.onmessage = (event: MessageEvent<{ value: { kind: string; elapsed_ms: number } }>) =>
              resolve(event.data);
          });
          worker.postMessage({ id: String(times.length), type: 'APPLY', path: ['run'], argumentList });
          const { kind, elapsed_ms } = (await reply).value;
          if (kind !== 'result') throw new Error(`bench: no result but ${kind}`);
          times.push(elapsed_ms);
        }
        worker.terminate();
        return times.slice(warming);
      },
      { script: scriptOf('worker'), asked: scenarios, warming: WARMING },
    );
  });
}
