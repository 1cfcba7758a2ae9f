/** How long a logger's file of a million rows takes to read: at the terminal, and through the page's reader. */
import { readTrace } from '../../engine/trace-file/read-trace.ts';
import { withBuiltPage } from './built-page.ts';
import { rowOf, type Row } from './rows.ts';

const ROWS = 1_000_000;
const LAP_M = 5000;
const READINGS = 5;

export async function log(): Promise<Row[]> {
  const text = written();
  return [
    rowOf(
      'a log of 1,000,000 rows, terminal',
      Array.from({ length: READINGS }, () => terminalTime(text)),
      {
        unit: 'ms',
      },
    ),
    rowOf('the same, in a worker of the page', await workerTimes(text), { unit: 'ms' }),
  ];
}

/** Time, speed, distance and acceleration. */
function written(): string {
  const lines = ['Time [s],Speed [km/h],Distance [m],Long acc [g]'];
  let along_m = 0;
  let before = 0;
  for (let i = 0; i < ROWS; i++) {
    const speed_mps = 50 + 20 * Math.sin(along_m / 150);
    along_m += speed_mps / 100;
    const accel_g = i === 0 ? 0 : (speed_mps - before) * 10.2;
    before = speed_mps;
    const cells = [i / 100, speed_mps * 3.6, along_m % LAP_M, accel_g];
    lines.push(cells.map((value, at) => value.toFixed(at === 0 ? 2 : 3)).join(','));
  }
  return lines.join('\n');
}

function terminalTime(text: string): number {
  const start_ms = performance.now();
  const { understood } = readTrace(text, {}, () => undefined);
  const took_ms = performance.now() - start_ms;
  if (!understood) throw new Error('bench: the log was not read');
  return took_ms;
}

/** From a file to one lap of columns. */
function workerTimes(text: string): Promise<number[]> {
  return withBuiltPage((page, { scriptOf }) =>
    page.evaluate(
      async ({ script, text: all, readings }) => {
        const value = new File([all], 'long.csv');
        const worker = new Worker(`./assets/${script}`, { type: 'module' });
        const times: number[] = [];
        for (let n = 0; n < readings; n++) {
          const start_ms = performance.now();
          const { port1, port2 } = new MessageChannel();
          const progress = { type: 'HANDLER', name: 'proxy', value: port1 };
          const argumentList = [{ type: 'RAW', value }, { type: 'RAW', value: {} }, progress];
          const reply = new Promise<{ value?: { columns?: unknown } }>((resolve) => {
            worker.onmessage = (event: MessageEvent<{ value?: { columns?: unknown } }>) =>
              resolve(event.data);
          });
          worker.postMessage({ id: `read ${n}`, type: 'APPLY', path: ['readTrace'], argumentList }, [port1]);
          if (!(await reply).value?.columns) throw new Error('bench: the log was not read');
          times.push(performance.now() - start_ms);
          port2.close();
        }
        worker.terminate();
        return times;
      },
      { script: scriptOf('trace-worker'), text, readings: READINGS },
    ),
  );
}
