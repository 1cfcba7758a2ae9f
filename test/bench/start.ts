/** How soon the built page is there: its largest paint and its first stint, each time in a browser that has never seen it. */
import type { Browser, Page } from '@playwright/test';
import { withBuiltPage } from './built-page.ts';
import { rowOf, type Row } from './rows.ts';

const TIMES = 5;
/** A window as Lighthouse gives its desktop. */
const WINDOW = { width: 1350, height: 940 };
/** The mark that the page sets after the frame with its first stint. */
export const FIRST_STINT = 'first stint';
/** What is aimed at, from the navigation on. */
export const WANTED = { paint: 'at most 1000', stint: 'at most 1500' };

export const start = (): Promise<Row[]> =>
  withBuiltPage(async (page, { address }) => {
    await page.goto('about:blank'); // its searches would take the cores
    const found: Start[] = [];
    for (let i = 0; i < TIMES; i++) found.push(await startIn(browserOf(page), address));
    const paints = found.map(({ largestPaint_ms }) => largestPaint_ms);
    const stints = found.map(({ firstStint_ms }) => firstStint_ms);
    return [
      rowOf('largest paint', paints, { unit: 'ms', wanted: WANTED.paint }),
      rowOf('first stint shown', stints, { unit: 'ms', wanted: WANTED.stint }),
    ];
  });

/** From the navigation on. */
interface Start {
  largestPaint_ms: number;
  firstStint_ms: number;
}

function browserOf(page: Page): Browser {
  const browser = page.context().browser();
  if (!browser) throw new Error('bench: no browser');
  return browser;
}

async function startIn(browser: Browser, address: string): Promise<Start> {
  const context = await browser.newContext({ viewport: WINDOW });
  try {
    const page = await context.newPage();
    await page.goto(address);
    return await page.evaluate<Start>(MEASURE);
  } finally {
    await context.close();
  }
}

// as text: the runner's compiler would add a helper to the functions that the page does not have
const MEASURE = `new Promise((resolve) => {
  const largest = () => new Promise((found) =>
    new PerformanceObserver((list) => found(list.getEntries().at(-1).startTime))
      .observe({ type: 'largest-contentful-paint', buffered: true }));
  const look = async () => {
    const [mark] = performance.getEntriesByName('${FIRST_STINT}');
    if (!mark) return setTimeout(look, 20);
    // the paint is told of a little after it was made
    await new Promise((later) => setTimeout(later, 500));
    resolve({ largestPaint_ms: await largest(), firstStint_ms: mark.startTime });
  };
  void look();
})`;
