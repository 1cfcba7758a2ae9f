/**
 * How fast the page answers a hand, on the built page in Chromium: the time of a whole stint in the worker, and the gaps
 * between frames while the front blanking is dragged for five seconds. Prints a table and gates nothing: machines are noisy.
 */
import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { chromium, type Page } from '@playwright/test';
import { build, preview } from 'vite';
import { defaultScenario } from '../../engine/scenario/library.ts';
import { withChanges } from '../../engine/scenario/override.ts';
import { chromiumArgs, findBrowser } from '../browser/find-browser.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
const DRAG_MS = 5000;
// as text: the runner's compiler would add a helper to the function that the page does not have
const RECORD_FRAMES =
  'window.frames = []; window.isNoting ??= requestAnimationFrame(function note(now) { frames.push(now); requestAnimationFrame(note); })';

await build({ configFile: `${root}vite.config.ts`, logLevel: 'error' });
const server = await preview({
  configFile: `${root}vite.config.ts`,
  preview: { port: 0 },
  logLevel: 'error',
});
const address = server.resolvedUrls?.local[0] ?? '';
const browser = await chromium.launch({ executablePath: await findBrowser(), args: chromiumArgs });
try {
  const page = await browser.newPage({ viewport: { width: 1360, height: 800 } });
  await page.goto(address);
  await page.getByRole('slider', { name: 'Front blanking' }).waitFor();
  const stints = await workerTimes(page);
  const gaps = await dragGaps(page, 'Front blanking');
  const hotter = await dragGaps(page, 'Ambient');
  const table = [
    row('20-lap stint, both axles, in the worker [ms]', stints),
    row('gap between frames, blanking dragged [ms]', gaps),
    row('the same, ambient, which leaves each span [ms]', hotter),
    row('safe span of both axles, second worker [ms]', await spanTimes(page)),
    row('a log of 1,000,000 rows read in a worker [ms]', await readTimes(page)),
  ];
  process.stdout.write(`${['measure'.padEnd(46) + '  median   99th    max      n', ...table].join('\n')}\n`);
} finally {
  await browser.close();
  await server.close();
}

function workerScript(name = 'worker'): string {
  return (
    readdirSync(`${root}dist/assets`).find((file) => file.startsWith(`${name}-`) && file.endsWith('.js')) ??
    ''
  );
}

/** Asks a worker of its own, as the page does, for the default stint at a hundred blankings. */
async function workerTimes(page: Page): Promise<number[]> {
  const script = workerScript();
  const scenarios = Array.from({ length: 100 }, (_, i) =>
    withChanges(defaultScenario(), { 'blanking_pct.front': i }),
  );
  return page.evaluate(
    async ({ script, scenarios }) => {
      const worker = new Worker(`./assets/${script}`, { type: 'module' });
      const times: number[] = [];
      for (const scenario of scenarios) {
        const value = { id: times.length, scenario, driven: null };
        const argumentList = [{ type: 'RAW', value }];
        const reply = new Promise<{ value: { elapsed_ms: number } }>((resolve) => {
          worker.onmessage = (event: MessageEvent<{ value: { elapsed_ms: number } }>) => resolve(event.data);
        });
        worker.postMessage({ id: String(times.length), type: 'APPLY', path: ['run'], argumentList });
        times.push((await reply).value.elapsed_ms);
      }
      worker.terminate();
      return times.slice(10);
    },
    { script, scenarios },
  );
}

/** From the command to search until the spans are there, with the page at rest. */
async function spanTimes(page: Page): Promise<number[]> {
  const script = workerScript();
  const scenarios = Array.from({ length: 12 }, (_, i) =>
    withChanges(defaultScenario(), { 'conditions.ambient_C': 10 + i }),
  );
  return page.evaluate(
    async ({ script, scenarios }) => {
      const worker = new Worker(`./assets/${script}`, { type: 'module' });
      const times: number[] = [];
      for (const [i, scenario] of scenarios.entries()) {
        const start_ms = performance.now();
        const argumentList = [{ type: 'RAW', value: { scenario, driven: null } }];
        const reply = new Promise((resolve) => (worker.onmessage = resolve));
        worker.postMessage({ id: String(i), type: 'APPLY', path: ['findSpans'], argumentList });
        await reply;
        times.push(performance.now() - start_ms);
      }
      worker.terminate();
      return times.slice(2);
    },
    { script, scenarios },
  );
}

/** From a file of a million rows to one lap of columns, read three times. */
async function readTimes(page: Page): Promise<number[]> {
  return page.evaluate(
    async ({ script, rows }) => {
      const lines = ['Time [s],Speed [km/h],Distance [m],Long acc [g]'];
      for (let i = 0, along_m = 0; i < rows; i++) {
        const speed_mps = 50 + 20 * Math.sin(along_m / 150);
        along_m += speed_mps / 100;
        const cells = [i / 100, speed_mps * 3.6, along_m % 5000, Math.cos(along_m / 150) / 2];
        lines.push(cells.map((value) => value.toFixed(3)).join(','));
      }
      const value = new File([lines.join('\n')], 'long.csv');
      const worker = new Worker(`./assets/${script}`, { type: 'module' });
      const times: number[] = [];
      for (let n = 0; n < 3; n++) {
        const start_ms = performance.now();
        const { port1, port2 } = new MessageChannel();
        const progress = { type: 'HANDLER', name: 'proxy', value: port1 };
        const argumentList = [{ type: 'RAW', value }, { type: 'RAW', value: {} }, progress];
        const reply = new Promise<{ value?: { columns?: unknown } }>((resolve) => {
          worker.onmessage = (event: MessageEvent<{ value?: { columns?: unknown } }>) => resolve(event.data);
        });
        worker.postMessage({ id: `read ${n}`, type: 'APPLY', path: ['readTrace'], argumentList }, [port1]);
        if (!(await reply).value?.columns) throw new Error('bench: the log was not read');
        times.push(performance.now() - start_ms);
        port2.close();
      }
      worker.terminate();
      return times;
    },
    { script: workerScript('trace-worker'), rows: 1_000_000 },
  );
}

/** Moves the mouse to and fro on a slider and records every frame. */
async function dragGaps(page: Page, name: string): Promise<number[]> {
  const box = await page.getByRole('slider', { name, exact: true }).boundingBox();
  if (!box) throw new Error('bench: no slider');
  const y = box.y + box.height / 2;
  const xAt = (share: number): number => box.x + box.width * share;
  await page.evaluate(RECORD_FRAMES);
  await page.waitForTimeout(700); // a search may begin: the drag must take it away
  await page.mouse.move(xAt(0.7), y);
  await page.mouse.down();
  const start_ms = Date.now();
  for (let i = 0; Date.now() - start_ms < DRAG_MS; i++)
    await page.mouse.move(xAt(0.5 + 0.4 * Math.sin(i / 12)), y);
  await page.mouse.up();
  const frames = await page.evaluate(() => (window as unknown as { frames: number[] }).frames);
  return frames.slice(1).map((now, i) => now - (frames[i] ?? now));
}

function row(name: string, values: number[]): string {
  const sorted = values.toSorted((a, b) => a - b);
  const at = (share: number): string =>
    (sorted[Math.floor(share * (sorted.length - 1))] ?? NaN).toFixed(1).padStart(8);
  return `${name.padEnd(46)}${at(0.5)}${at(0.99)}${at(1)}${String(values.length).padStart(7)}`;
}
