/**
 * A thousand summary runs through the page's own pool, how fast a search is left, and what a drag feels of one that is still
 * wanted: on the page as it is, built with a handle to its pool.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Page } from '@playwright/test';
import { svelte } from '@sveltejs/vite-plugin-svelte';
import { build, preview, type InlineConfig } from 'vite';
import type { Question } from '../../engine/index.ts';
import { withChanges } from '../../engine/scenario/changes.ts';
import { defaultScenario, withCircuit } from '../../engine/scenario/library.ts';
import { untilQuiet, withBrowser } from './built-page.ts';
import { dragGaps } from './drag.ts';
import type { PoolBench } from './pool-page/main.ts';
import { ratios, rowOf, type Row } from './rows.ts';

const DRAWS = 1000;
const TIMES = 3;
const CANCELS = 20;
const scenario = withCircuit(defaultScenario(), 'long');

/** One run is the likely one. No two times the same draws. */
const drawing = (draws: number, seed = 1): Question<'spread'> => ({
  sought: 'spread',
  sample: { draws: draws - 1, seed },
  scenario,
  driven: null,
});

export const pool = (): Promise<Row[]> =>
  withPoolPage(async (page) => {
    const timeOf = (question: Question, workers?: number): Promise<number> =>
      page.evaluate(([asked, most]) => bench().timeOf(asked, most), [question, workers] as const);
    await timeOf(drawing(50, 99));
    const blanked: number[] = [];
    for (let i = 0; i < TIMES; i++)
      blanked.push(
        await page.evaluate(([asked, times]) => bench().blankings(asked, times), [
          drawing(DRAWS),
          DRAWS,
        ] as const),
      );
    const [by2, by1]: [number[], number[]] = [[], []];
    for (let i = 0; i < TIMES; i++) {
      by2.push(await timeOf(drawing(DRAWS, i)));
      by1.push(await timeOf(drawing(DRAWS / 5, i), 1));
    }
    const alone = by1.map((ms) => 5 * ms);
    const spans: number[] = [];
    for (let i = 0; i < 10; i++)
      spans.push(await timeOf(spansOf(withChanges(defaultScenario(), { 'conditions.ambient_C': 10 + i }))));
    const left: { free: number; next: number }[] = [];
    for (let i = 0; i < CANCELS; i++)
      left.push(
        await page.evaluate(([asked, after]) => bench().cancel(asked, after), [drawing(200, i), 8] as const),
      );
    const alone_ms = await dragGaps(page, 'Front blanking');
    await page.evaluate((asked) => bench().begin(asked), drawing(5000));
    const gaps = await dragGaps(page, 'Front blanking');
    const { runs } = await page.evaluate(() => bench().end());
    const told = (name: string, values: number[], wanted?: string): Row =>
      rowOf(name, values, { unit: 'ms', ...(wanted && { wanted }) });
    return [
      told('1,000 summary runs, two mouths blanked', blanked, 'at most 5000'),
      told('1,000 summary runs, all doubts drawn', by2, 'at most 5000'),
      rowOf('the same by one worker over that', ratios(alone, by2), { unit: 'x' }),
      told('safe span of both axles, by the pool', spans),
      told(
        'a search left: until no worker is at it',
        left.map(({ free }) => free),
        'at most 50',
      ),
      told(
        'a search left: until the next begins its first run',
        left.map(({ next }) => next),
        'at most 50',
      ),
      told('gap between frames, blanking dragged during a search still wanted', gaps, '99 % 34'),
      told('the same without such a search', alone_ms),
      rowOf('runs of that search meanwhile', [runs], { unit: '' }),
    ];
  });

const spansOf = (of: typeof scenario): Question<'spans'> => ({
  sought: 'spans',
  sample: null,
  scenario: of,
  driven: null,
});

declare function bench(): PoolBench;

/** The page, built with a handle to its pool. */
export async function withPoolPage<T>(work: (page: Page) => Promise<T>): Promise<T> {
  const root = fileURLToPath(new URL('./pool-page/', import.meta.url));
  const outDir = mkdtempSync(join(tmpdir(), 'bench-pool-'));
  const config: InlineConfig = {
    configFile: false,
    root,
    logLevel: 'error',
    plugins: [svelte({ configFile: fileURLToPath(new URL('../../svelte.config.js', import.meta.url)) })],
    worker: { format: 'es' },
    build: { outDir, target: 'es2022' },
    preview: { port: 0 },
  };
  try {
    await build(config);
    const server = await preview(config);
    try {
      return await withBrowser(async (browser) => {
        const page = await browser.newPage({ viewport: { width: 1360, height: 800 } });
        await page.goto(server.resolvedUrls?.local[0] ?? '');
        await untilQuiet(page);
        return work(page);
      });
    } finally {
      await server.close();
    }
  } finally {
    rmSync(outDir, { recursive: true, force: true });
  }
}
