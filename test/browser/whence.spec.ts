import { axe } from './axe.ts';
import type { Locator, Page } from '@playwright/test';
import { expect, test } from './fixtures.ts';
import { tabTo } from './keys.ts';
import { openSheet } from './sheet.ts';

/** The one note that is open; its name is not asked for where any would do. */
const note = (page: Page, name = /^Where .* comes? from$/): Locator => page.getByRole('group', { name });
const inSentence = (page: Page, quantity: string): Locator =>
  page.locator(`.sentence [data-whence^="${quantity}|"]`).first();

async function expectInside(page: Page): Promise<void> {
  const box = (await note(page).boundingBox())!;
  const { width, height } = page.viewportSize()!;
  expect(box.x).toBeGreaterThanOrEqual(0);
  expect(box.x + box.width).toBeLessThanOrEqual(width);
  expect(box.y).toBeGreaterThanOrEqual(0);
  expect(box.y + box.height).toBeLessThanOrEqual(height);
  expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
}

test('the numbers of the sentence say where they come from: pointed at each, by keys all in one stop', async ({
  page,
}) => {
  const { sentence } = await openSheet(page);
  await expect(inSentence(page, 'runs')).toHaveText(/^\d+ of\s100$/, { timeout: 30_000 });
  // what is proposed is weighed last
  await expect(sentence).toContainText(/ to spare, \d+ of\s100 runs in\./, { timeout: 30_000 });
  const words = (texts: string[]): string => texts.join(' ').replace(/\s+/g, ' ').trim();
  const seen = words(await page.locator('.sentence p[aria-hidden]').allTextContents());
  await expect.poll(async () => words(await sentence.allTextContents())).toBe(seen);
  const said = (await sentence.textContent())!;

  await inSentence(page, 'hot').hover();
  await expect(note(page, /^Where too hot by comes from$/)).toContainText(/650 − 66\d\.\d = −1\d\.\d\sK/);
  await expectInside(page);
  await note(page).hover();
  await page.waitForTimeout(500); // longer than it takes to go
  await expect(note(page)).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(note(page)).toHaveCount(0);

  const all = page.getByRole('button', { name: 'Where these numbers come from' });
  await page.getByRole('button', { name: 'Sheet', exact: true }).focus();
  await tabTo(page, all);
  await expect(note(page)).toHaveCount(0);
  await page.keyboard.press('Enter');
  await expect(all).toHaveAttribute('aria-expanded', 'true');
  for (const each of [
    'too hot by: 17',
    'Safe span: ',
    'What to fit: panel',
    'Its margin: ',
    'Runs that stay in: ',
  ])
    await expect(note(page)).toContainText(new RegExp(each, 'i'));
  await expectInside(page);
  expect((await axe(page).analyze()).violations).toEqual([]);
  await page.keyboard.press('Tab');
  await page.keyboard.press('Escape');
  await expect(all).toBeFocused();
  await expect(note(page)).toHaveCount(0);
  expect(await sentence.textContent()).toBe(said);
});

test('so do the words beside the lap cells, the heads of the tables and the parts of the ledger', async ({
  page,
}) => {
  await openSheet(page);
  await page.getByRole('button', { name: 'Pin this run' }).click();
  await page.getByRole('group', { name: 'Panels, front' }).getByRole('button', { name: /C/ }).click();
  await page.locator('.words [data-whence^="changed|"]').first().hover();
  await expect(note(page, /^Where change of the face peak comes from$/)).toContainText(
    /63\d\.\d+ − 66\d\.\d+ = −3\d\.\d+\sK/,
  );
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  await page.locator('.mouth [data-whence^="blanked|front|"]').first().hover();
  await expect(note(page, /^Where blanking comes from$/)).toContainText(/100 · 77 \/ 110 = 70/);
  await page.mouse.move(5, 5);
  await page.getByRole('button', { name: /^Front, 17\sK too hot, swing/ }).click();
  await expect(note(page)).toContainText(/Swing: \d+\sK/);
  await page.mouse.click(5, 5);
  await expect(note(page)).toHaveCount(0);

  await page.getByRole('radio', { name: 'table', exact: true }).check();
  const head = page.getByRole('columnheader', { name: /^Face max/ }).getByRole('button');
  await tabTo(page, head);
  await expect(note(page, /^Where face max on lap\s10 comes from$/)).toContainText(
    /max\(.*\) = 66\d\.\d\s°C/,
  );
  expect((await axe(page).include('table').analyze()).violations).toEqual([]);
  await page.getByRole('button', { name: 'Next lap' }).first().press('Enter');
  await expect(note(page)).toHaveCount(0);
  await head.hover();
  await expect(note(page, /^Where face max on lap\s11 comes from$/)).toBeVisible();

  await page.getByRole('radio', { name: 'all blankings', exact: true }).check();
  await expect(note(page)).toHaveCount(0);
  await page
    .getByRole('columnheader', { name: /^Hot margin/ })
    .getByRole('button')
    .click();
  await expect(note(page, /^Where hot margin at 70\s% comes from$/)).toContainText(
    /650 − 66\d\.\d = −1\d\.\d\sK/,
  );
  await page.getByRole('radio', { name: 'chart', exact: true }).check();
  await page.locator('.read').getByRole('button', { name: /^Lap/ }).click();
  await expect(note(page)).toContainText(/Peak: \d+\s°C/);
  expect((await axe(page).include('.read').analyze()).violations).toEqual([]);
});

test('a tap does on a phone what the pointer does, in the sentence and in the numbers', async ({
  browser,
}) => {
  const context = await browser.newContext({ hasTouch: true, viewport: { width: 390, height: 844 } });
  const page = await context.newPage();
  await openSheet(page);
  await inSentence(page, 'span').tap();
  await expect(note(page, /^Where safe span comes from$/)).toContainText(/up\(5\d\.\d+\) = 57\s%/);
  await expectInside(page);
  await page.getByRole('button', { name: /, swing: where it comes from$/ }).tap();
  await expect(note(page)).toHaveCount(1);
  await expect(note(page, /^Where swing comes from$/)).toContainText(/ − .* = \d+(\.\d)?\sK/);
  await expectInside(page);
  expect((await axe(page).include('.numbers').analyze()).violations).toEqual([]);
  await page.touchscreen.tap(200, 20);
  await expect(note(page)).toHaveCount(0);

  await inSentence(page, 'fit').tap();
  await note(page)
    .getByRole('button', { name: /^Fit panel\sC/ })
    .tap();
  await expect(note(page)).toHaveCount(0);
  await expect(page.locator('.sentence .lead')).toContainText(/^Front 60\s% blanked stays in/);
  await context.close();
});
