import type { Locator, Page } from '@playwright/test';
import { finished } from '../../engine/advise/finished.ts';
import { spread } from '../../engine/advise/spread.ts';
import { defaultScenario } from '../../engine/scenario/library.ts';
import { expect, test } from './fixtures.ts';
import { dragTo, openSheet } from './sheet.ts';

/** A hundred runs of both axles, after the spans, on a slow machine. */
const PATIENCE = { timeout: 40_000 };
const COUNTED =
  /Not calibrated: with \d+ unsure values varied, \d+ of\s100 runs keeps? the (front|rear) discs in[^.]*\./;
const PENDING = /Its doubt is being computed; not calibrated\./;

const countIn = async (sentence: Locator): Promise<string> =>
  COUNTED.exec((await sentence.textContent()) ?? '')?.[0] ?? '';

test.beforeEach(() => test.setTimeout(120_000));

/** How often the page was drawn anew after a move of the slider, and what the sentence said of its doubt meanwhile. */
async function watchDrag(page: Page): Promise<void> {
  await page.evaluate(`{
    window.drawn = 0;
    window.doubts = new Set();
    const shown = document.querySelector('.sentence .rest');
    let isAsked = false;
    let isMoved = false;
    document.addEventListener('input', () => (isAsked = isMoved = true), true);
    new MutationObserver(() => {
      if (isAsked) window.drawn += 1;
      isAsked = false;
      if (isMoved) window.doubts.add(/unsure values/.test(shown.textContent) ? 'counted' : 'pending');
    }).observe(document.querySelector('.sentence'), { subtree: true, childList: true, characterData: true });
  }`);
}

test('the sentence says that its doubt is computed, then how many runs stay in, as the engine counts them', async ({
  page,
}) => {
  const { sentence } = await openSheet(page);
  await expect(sentence).toContainText(PENDING);
  await expect(sentence).toContainText(COUNTED, PATIENCE);
  const { corners } = finished(spread(defaultScenario(), { draws: 100, seed: 1 }));
  const [front, rear] = corners.map(({ count }) => count.in);
  expect(await countIn(sentence)).toMatch(
    new RegExp(` ${front} of\\s100 runs keeps? the front discs in.*, ${rear} the rear`),
  );
  await expect(page.getByText(/Measure first: [a-z ,]+ \(±\d+\sK\)\./)).toBeVisible(PATIENCE);
});

test('nothing below moves when span, count and what to measure arrive', async ({ page }) => {
  const { sentence } = await openSheet(page);
  const places = (): Promise<number[]> =>
    page.evaluate(
      `['.driver', '.columns', '.plot'].map((one) => document.querySelector(one).getBoundingClientRect().top)`,
    );
  const before = await places();
  await expect(sentence).toContainText(COUNTED, PATIENCE);
  await expect(page.getByText(/Measure first/)).toBeVisible(PATIENCE);
  expect(await places()).toEqual(before);
});

test('a drag in the middle of the draws is drawn on the way, and never under an old count', async ({
  page,
}) => {
  const { sentence, slider } = await openSheet(page);
  await expect(sentence).toContainText(/Safe on counted laps|No blanking/, PATIENCE);
  await watchDrag(page);
  await dragTo(page, slider('Front blanking'), 0.3);
  // how soon is told by the benchmark
  expect(await page.evaluate('window.drawn')).toBeGreaterThan(2);
  expect(await page.evaluate('[...window.doubts]')).toEqual(['pending']);
});

test('another blanking is drawn anew: the old count goes at once and another comes', async ({ page }) => {
  const { sentence, slider } = await openSheet(page);
  await expect(sentence).toContainText(COUNTED, PATIENCE);
  const before = await countIn(sentence);
  await slider('Front blanking').fill('20');
  await expect(sentence).toContainText(PENDING);
  await expect(sentence).toContainText(COUNTED, PATIENCE);
  expect(await countIn(sentence)).not.toBe(before);
  await page.getByRole('button', { name: /^Undo/ }).click();
  await expect(sentence).toContainText(PENDING);
  await expect.poll(() => countIn(sentence), PATIENCE).toBe(before);
});

test('what arrives later is read out alone', async ({ page }) => {
  const { sentence } = await openSheet(page);
  await expect(sentence).toHaveAttribute('aria-atomic', 'false');
  await expect(sentence).toContainText(PENDING);
  await page.evaluate(`{
    window.touched = new Set();
    const status = document.querySelector('.sentence [role=status]');
    const parts = [...status.children];
    new MutationObserver((changes) => {
      for (const { target } of changes) window.touched.add(parts.findIndex((part) => part.contains(target)));
    }).observe(status, { subtree: true, childList: true, characterData: true });
  }`);
  await expect(sentence).toContainText(COUNTED, PATIENCE);
  // the rest may gain its span meanwhile; what leads and what the driver is told stay untouched
  const touched = await page.evaluate<number[]>('[...window.touched]');
  expect(touched).toContain(2);
  expect(touched).not.toContain(0);
  expect(touched).not.toContain(3);
});
