/**
 * The same as Lighthouse judges it, on a desktop. It is no part of the project: an installed one is taken from where
 * EMBERLAP_LIGHTHOUSE says, a folder with its node_modules, or from where this file would find it.
 */
import { createRequire } from 'node:module';
import { createServer, type AddressInfo } from 'node:net';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { chromium } from '@playwright/test';
import { chromiumArgs, findBrowser } from '../browser/find-browser.ts';
import { withBuiltPage } from './built-page.ts';
import { Missing, rowOf, type Row } from './rows.ts';
import { FIRST_STINT, WANTED } from './start.ts';

const TIMES = 5;
const CATEGORIES = ['performance', 'accessibility', 'best-practices'] as const;

/** What is read of its report. */
interface Report {
  categories: Record<(typeof CATEGORIES)[number], { score: number }>;
  audits: {
    'largest-contentful-paint': { numericValue: number };
    'user-timings': { details: { items: { name: string; startTime: number }[] } };
  };
}
interface Lighthouse {
  default: (address: string, flags: object, config: unknown) => Promise<{ lhr: Report }>;
  desktopConfig: unknown;
}

export async function lighthouse(): Promise<Row[]> {
  const tool = await installed();
  const reports = await withBuiltPage(async (page, { address }) => {
    await page.goto('about:blank'); // its searches would take the cores
    const found: Report[] = [];
    for (let i = 0; i < TIMES; i++) found.push(await reportOn(address, tool));
    return found;
  });
  const times = (of: (report: Report) => number): number[] => reports.map(of);
  const stint = ({ audits }: Report): number =>
    audits['user-timings'].details.items.find(({ name }) => name === FIRST_STINT)?.startTime ?? NaN;
  const paint = ({ audits }: Report): number => audits['largest-contentful-paint'].numericValue;
  return [
    rowOf('Lighthouse: largest paint', times(paint), { unit: 'ms', wanted: WANTED.paint }),
    rowOf('Lighthouse: first stint shown', times(stint), { unit: 'ms', wanted: WANTED.stint }),
    ...CATEGORIES.map((name) =>
      rowOf(
        `Lighthouse: ${name.replace('-', ' ')}`,
        times(({ categories }) => 100 * categories[name].score),
        { unit: 'of 100', wanted: name === 'performance' ? 'at least 95' : '100' },
      ),
    ),
  ];
}

async function installed(): Promise<Lighthouse> {
  const folder = process.env['EMBERLAP_LIGHTHOUSE'];
  const from = createRequire(folder ? join(folder, 'package.json') : import.meta.url);
  try {
    return (await import(pathToFileURL(from.resolve('lighthouse')).href)) as Lighthouse;
  } catch {
    throw new Missing('lighthouse is not there; EMBERLAP_LIGHTHOUSE names a folder it is installed in');
  }
}

/** In a browser of its own, which has never seen the page. */
async function reportOn(address: string, { default: judge, desktopConfig }: Lighthouse): Promise<Report> {
  const port = await freePort();
  const args = [...chromiumArgs, `--remote-debugging-port=${port}`];
  const browser = await chromium.launch({ executablePath: await findBrowser(), args });
  try {
    const flags = { port, logLevel: 'error', onlyCategories: CATEGORIES };
    return (await judge(address, flags, desktopConfig)).lhr;
  } finally {
    await browser.close();
  }
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const server = createServer().once('error', reject);
    server.listen(0, 'localhost', () => {
      const { port } = server.address() as AddressInfo;
      server.close(() => resolve(port));
    });
  });
}
