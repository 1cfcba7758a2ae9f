/** The page as a visitor gets it: built once into a folder of its own, served and opened for each measure. */
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium, type Browser, type Page } from '@playwright/test';
import { build, preview, type InlineConfig } from 'vite';
import { chromiumArgs, findBrowser } from '../browser/find-browser.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
let made: Promise<InlineConfig> | undefined;

async function makePage(): Promise<InlineConfig> {
  const outDir = mkdtempSync(join(tmpdir(), 'bench-page-'));
  process.on('exit', () => rmSync(outDir, { recursive: true, force: true }));
  const config: InlineConfig = {
    configFile: `${root}vite.config.ts`,
    logLevel: 'error',
    build: { outDir },
    preview: { port: 0 },
  };
  await build(config);
  return config;
}

/** The built page's files and where they are served. */
export interface Built {
  address: string;
  /** Name of the worker's file as the build called it. */
  scriptOf: (name: 'worker' | 'trace-worker') => string;
}

export async function withBuiltPage<T>(work: (page: Page, built: Built) => Promise<T>): Promise<T> {
  const config = await (made ??= makePage());
  const assets = readdirSync(join(config.build!.outDir!, 'assets'));
  const server = await preview(config);
  try {
    return await withBrowser(async (browser) => {
      const page = await browser.newPage({ viewport: { width: 1360, height: 800 } });
      const address = server.resolvedUrls?.local[0] ?? '';
      await page.goto(address);
      await page.getByRole('slider', { name: 'Front blanking' }).waitFor();
      return work(page, {
        address,
        scriptOf: (name) => assets.find((file) => file.startsWith(`${name}-`) && file.endsWith('.js')) ?? '',
      });
    });
  } finally {
    await server.close();
  }
}

/** Until the page's own searches, which take all cores, are done. */
export const untilQuiet = (page: Page): Promise<void> =>
  page.getByText(/Measure first/).waitFor({ timeout: 60_000 });

export async function withBrowser<T>(work: (browser: Browser) => Promise<T>): Promise<T> {
  const browser = await chromium.launch({ executablePath: await findBrowser(), args: chromiumArgs });
  try {
    return await work(browser);
  } finally {
    await browser.close();
  }
}
