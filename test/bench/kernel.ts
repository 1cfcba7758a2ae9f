/**
 * The same algorithm in C, in Node and in Chromium's worker, turn about, so that what slows the machine slows all: the ratios
 * are taken within a round. The C side (kernel.c, gcc -O3) must give the engine's columns.
 */
import { execFileSync, spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Page } from '@playwright/test';
import { build, type Rollup } from 'vite';
import { compile } from '../../engine/stint/compile.ts';
import { run } from '../../engine/stint/run.ts';
import { asked, lineAsker, started } from './apart.ts';
import { withBrowser } from './built-page.ts';
import { versionOf } from './machine.ts';
import { packed } from './packed.ts';
import { referenceStint } from './reference-stint.ts';
import { Missing, ratios, rowOf, type Row } from './rows.ts';

const ROUNDS = 60;
const TURNS = 5;
/** What the order of additions may change [-] */
const SAME = 1e-9;
const beside = (name: string): string => fileURLToPath(new URL(name, import.meta.url));

export async function kernel(): Promise<Row[]> {
  if (!versionOf('gcc', ['-dumpfullversion'])) throw new Missing('needs gcc');
  const folder = mkdtempSync(join(tmpdir(), 'bench-kernel-'));
  const [program, numbers, columns] = ['kernel', 'packed.bin', 'columns.bin'].map((name) =>
    join(folder, name),
  ) as [string, string, string];
  execFileSync('gcc', ['-O3', '-o', program, beside('kernel.c'), '-lm']);
  writeFileSync(numbers, packed(compile(referenceStint())));
  const c = spawn(program, [numbers, columns], { stdio: ['pipe', 'pipe', 'inherit'] });
  const node = started('kernel-in-node.ts');
  try {
    const askC = lineAsker(c);
    await askC.next();
    const difference = furthest(readFileSync(columns));
    if (!(difference < SAME))
      throw new Error(`bench: kernel.c is off by ${difference}: is it the same algorithm?`);
    const times = await withBrowser(async (browser) => {
      const page = await browser.newPage();
      await startWorker(page);
      const ask: Record<keyof Times, () => Promise<number>> = {
        c: async () => Number(await askC.ask(String(TURNS))),
        node: () => asked<number>(node, TURNS),
        worker: () => page.evaluate<number>(`ask(${TURNS})`),
      };
      return inTurns(ask);
    });
    return [
      rowOf('kernel of the stint, C (gcc -O3)', times.c, { unit: 'ms' }),
      rowOf('kernel of the stint, worker', times.worker, { unit: 'ms' }),
      rowOf('kernel of the stint, Node', times.node, { unit: 'ms' }),
      rowOf('kernel, worker over C', ratios(times.worker, times.c), { unit: 'x', wanted: 'at most 2' }),
      rowOf('kernel, Node over C', ratios(times.node, times.c), { unit: 'x', wanted: 'at most 3.5' }),
      rowOf('columns, C from the engine, relative', [difference], { unit: '', wanted: 'at most 1e-9' }),
    ];
  } finally {
    c.kill();
    node.kill();
    rmSync(folder, { recursive: true });
  }
}

type Times = Record<'c' | 'node' | 'worker', number[]>;

async function inTurns(ask: Record<keyof Times, () => Promise<number>>): Promise<Times> {
  const times: Times = { c: [], node: [], worker: [] };
  const who = Object.keys(times) as (keyof Times)[];
  for (let round = 0; round < ROUNDS; round++) {
    for (const one of who) times[one].push(await ask[one]());
    who.push(who.shift()!);
  }
  return times;
}

/** Largest relative difference of any column from the engine's. */
function furthest(bytes: Buffer): number {
  const told = new Float64Array(bytes.buffer, bytes.byteOffset, bytes.byteLength / 8);
  const { corners } = run(compile(referenceStint()));
  const ours = corners.flatMap(({ columns }) => {
    const { face_K, cheek_K, wall_K, rim_K, bell_K, pad_K, caliper_K, fluid_K, wheelhouse_K } = columns!;
    return [face_K, cheek_K, wall_K, rim_K, bell_K, pad_K, caliper_K, fluid_K, wheelhouse_K];
  });
  let [most, at] = [0, 0];
  for (const column of ours)
    for (const value of column) most = Math.max(most, Math.abs(told[at++]! - value) / Math.abs(value));
  return at === told.length ? most : NaN;
}

/** Leaves a function `ask` in the page that has the worker take so many turns. */
async function startWorker(page: Page): Promise<void> {
  const made = await build({
    configFile: false,
    logLevel: 'error',
    build: {
      write: false,
      target: 'es2022',
      lib: { entry: beside('kernel-in-worker.ts'), formats: ['iife'], name: 'kernel' },
    },
  });
  const [{ output }] = made as [Rollup.RollupOutput];
  // as text: the runner's compiler would add a helper to functions that the page does not have
  await page.evaluate(`
    const worker = new Worker(URL.createObjectURL(new Blob([${JSON.stringify(output[0].code)}])));
    window.ask = (turns) => new Promise((resolve, reject) => {
      worker.onmessage = ({ data }) => resolve(data);
      worker.onerror = ({ message }) => reject(new Error(message));
      worker.postMessage(turns);
    });
  `);
}
