import { axe } from './axe.ts';
import type { Locator, Page } from '@playwright/test';
import { blankings, type BlankingMap } from '../../engine/advise/blankings.ts';
import { finished } from '../../engine/advise/finished.ts';
import { defaultScenario } from '../../engine/scenario/library.ts';
import { lapFrame } from '../../web/charts/lap-scale.ts';
import { blankedLap } from '../../web/display/blanked-lap.ts';
import { pointWords } from '../../web/display/blanking-words.ts';
import { expect, test } from './fixtures.ts';
import { openSheet, type Sheet } from './sheet.ts';

const front = (): BlankingMap => finished(blankings(defaultScenario())).find(({ axle }) => axle === 'front')!;
const wordsAt = (lap: number, pct: number): string => pointWords(blankedLap(front(), lap - 1, pct)!, pct);

interface Opened extends Sheet {
  map: Locator;
  /** Where a lap at a blanking is drawn, from the corner of the map. */
  placeOf(lap: number, pct: number): Promise<{ x: number; y: number }>;
}

async function openMap(page: Page): Promise<Opened> {
  const sheet = await openSheet(page);
  await page.getByRole('radio', { name: 'all blankings', exact: true }).check();
  const map = page.getByRole('application', { name: /every counted lap/ });
  await expect(map).toBeVisible();
  await map.scrollIntoViewIfNeeded();
  return {
    ...sheet,
    map,
    async placeOf(lap, pct) {
      const box = (await map.boundingBox())!;
      const [left, right] = lapFrame(box.width);
      // of the shipped stint: twenty laps, and the stop after them
      const lapWidth = (right - left - 18) / 20;
      const [above, below] = [24, 24];
      const plot = box.height - above - below;
      return { x: left + (lap - 0.5) * lapWidth, y: above + plot * (1 - pct / 100) };
    },
  };
}

test('pointing reads a lap at a blanking, and a click fits it, as one step, and goes to that lap', async ({
  page,
}) => {
  const { map, placeOf, slider, sentence } = await openMap(page);
  await expect(page.getByText(wordsAt(10, 70))).toBeVisible();
  const position = await placeOf(9, 60);
  await map.hover({ position });
  await expect(page.getByText(wordsAt(9, 60))).toBeVisible();
  await expect(slider('Front blanking')).toHaveValue('70');
  await map.click({ position });
  await expect(slider('Front blanking')).toHaveValue('60');
  await expect(slider('Position in the stint')).toHaveAttribute('aria-valuetext', /^lap 9,/);
  await expect(sentence).toHaveText(/Front 60\s% blanked stays in/);
  await expect(map).toBeVisible();
  await page.getByRole('button', { name: /^Undo/ }).click();
  await expect(slider('Front blanking')).toHaveValue('70');
  await expect(page.getByRole('button', { name: /^Undo/ })).toBeDisabled();
});

test('by keys alone a lap and a blanking are found, fitted and undone', async ({ page }) => {
  const { map, slider } = await openMap(page);
  await map.focus();
  await page.keyboard.press('ArrowRight');
  for (let i = 0; i < 3; i++) await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Shift+ArrowUp');
  await page.keyboard.press('Shift+ArrowUp');
  await expect(page.getByText(wordsAt(11, 57)).first()).toBeVisible();
  await page.keyboard.press('Enter');
  await expect(slider('Front blanking')).toHaveValue('57');
  await expect(slider('Position in the stint')).toHaveAttribute('aria-valuetext', /^lap 11,/);
  await page.keyboard.press('Control+z');
  await expect(slider('Front blanking')).toHaveValue('70');
  await page.keyboard.press('ArrowUp');
  await expect(page.getByText(wordsAt(11, 75)).first()).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(page.getByText(wordsAt(11, 70)).first()).toBeVisible();
});

test('the map stands while the blanking is dragged, marks what is pinned, and goes with another day', async ({
  page,
}) => {
  const { map, slider } = await openMap(page);
  await page.getByRole('button', { name: 'Pin this run' }).click();
  await slider('Front blanking').fill('45');
  await expect(map.locator('text', { hasText: /now 45\s%/ })).toBeVisible();
  await expect(map.locator('text', { hasText: /pinned 70\s%/ })).toBeVisible();
  await expect(page.locator('#blankings-summary')).toHaveText(
    /Pinned 70\s%, dashed: 1 of 15 counted laps in\.$/,
  );
  await page.evaluate(`{
    window.waits = 0;
    new MutationObserver(() => { if (/All blankings follow/.test(document.body.textContent)) window.waits += 1; })
      .observe(document.body, { subtree: true, childList: true, characterData: true });
  }`);
  await slider('Front blanking').fill('30');
  await expect(map.locator('text', { hasText: /now 30\s%/ })).toBeVisible();
  expect(await page.evaluate('window.waits')).toBe(0);
  const title = await map.getAttribute('aria-label');
  await slider('Ambient').fill('12');
  await expect(page.getByText('All blankings follow when the hand rests.')).toBeVisible();
  await expect(map).toBeVisible();
  expect(await map.getAttribute('aria-label')).not.toBe(title);
  await expect(map.locator('text', { hasText: /pinned/ })).toHaveCount(0);
  await expect(page.getByText(/Pinned 70\s% is not drawn: it has another ambient\./)).toBeVisible();
});

test('its table tells every blanking, and from either one goes to the stint', async ({ page }) => {
  const { slider } = await openMap(page);
  const form = page.getByRole('radiogroup', { name: 'Form' });
  await form.getByRole('radio', { name: 'table' }).check();
  const table = page.getByRole('table', { name: /every counted lap stays in from 57 to 66\s%/ });
  const row = (pct: number): Locator =>
    table.getByRole('row').filter({ has: page.getByRole('rowheader', { name: String(pct), exact: true }) });
  await expect(row(56)).toContainText('14');
  await expect(row(57)).toContainText('none');
  await expect(row(60)).toContainText(/C$/);
  await page.getByRole('button', { name: 'Pin this run' }).click();
  await slider('Front blanking').fill('40');
  await expect(row(70)).toContainText(/pinned 70\s%$/);
  expect((await axe(page).analyze()).violations).toEqual([]);
  await form.getByRole('radio', { name: 'chart' }).check();
  expect((await axe(page).analyze()).violations).toEqual([]);
  await page.getByRole('button', { name: 'to the stint' }).click();
  await expect(page.getByRole('radio', { name: 'stint', exact: true })).toBeChecked();
  await expect(page.getByText(/Front starts hard stops below its/).first()).toBeVisible();
});

test('an axle without a duct has no blankings', async ({ page }) => {
  await openSheet(page);
  await page.getByLabel('Stint', { exact: true }).selectOption('club-evening');
  await page.getByRole('radio', { name: 'all blankings', exact: true }).check();
  await expect(page.getByRole('application', { name: /counted laps too hot even fully open/ })).toBeVisible();
  await page.getByRole('radio', { name: 'rear', exact: true }).check();
  await expect(page.locator('main').getByText('No duct at this axle: nothing to blank.')).toHaveCount(2);
});

test.describe('on a phone', () => {
  test.use({ hasTouch: true, viewport: { width: 320, height: 700 } });

  test('a tap fits a blanking and goes to its lap, and nothing reaches beyond the side', async ({ page }) => {
    const { map, placeOf, slider } = await openMap(page);
    await map.tap({ position: await placeOf(9, 62) });
    await expect(slider('Front blanking')).toHaveValue('62');
    await expect(slider('Position in the stint')).toHaveAttribute('aria-valuetext', /^lap 9,/);
    const beyond = () => page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    expect(await beyond()).toBeLessThanOrEqual(0);
    await page.getByRole('radiogroup', { name: 'Form' }).getByRole('radio', { name: 'table' }).check();
    await expect(page.getByRole('table')).toBeVisible();
    expect(await beyond()).toBeLessThanOrEqual(0);
  });
});
