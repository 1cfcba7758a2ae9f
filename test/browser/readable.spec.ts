import type { Page } from '@playwright/test';
import { axe } from './axe.ts';
import { expect, test } from './fixtures.ts';
import { focusTrouble } from './focus-seen.ts';
import { arrive } from './job.ts';
import { lostWords, SPACED } from './loss.ts';

/** Notes down what gets the focus from now on. */
const watchFocus = (page: Page): Promise<void> =>
  page.evaluate(() => {
    const had = new Set<EventTarget | null>();
    addEventListener('focusin', ({ target }) => had.add(target));
    Object.assign(window, { had });
  });

/** What can be pressed, typed into or moved and has not had the focus; one of a group of radio buttons is enough. */
const neverFocused = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const { had } = window as unknown as { had: Set<EventTarget> };
    const groups = new Set([...had].map((each) => (each instanceof HTMLInputElement ? each.name : '')));
    const controls = 'a[href], button:enabled, input:enabled, select, summary, [tabindex="0"]';
    return [...document.querySelectorAll<HTMLElement>(controls)]
      .filter((each) => each.checkVisibility() && !had.has(each))
      .filter((each) => !(each instanceof HTMLInputElement && each.type === 'radio' && groups.has(each.name)))
      .map((each) => `${each.tagName} ${each.ariaLabel ?? each.textContent.trim()}`);
  });

/** Goes on to the end of the page by Tab, and then through the whole of it; says where the focus was not seen. */
async function walk(page: Page): Promise<string[]> {
  const troubles = new Set<string>();
  const most = 250;
  let ends = 0;
  for (let i = 0; i < most; i++) {
    await page.keyboard.press('Tab');
    if (await page.evaluate(() => document.activeElement === document.body)) ends += 1;
    if (ends === 2) break;
    troubles.add(await focusTrouble(page));
  }
  return [...troubles].filter(Boolean);
}

const tallOf = async (page: Page): Promise<number> =>
  (await page.getByRole('complementary', { name: 'Blanking at hand' }).boundingBox())!.height;

test.describe('at 200 %', () => {
  test.use({ viewport: { width: 640, height: 400 }, deviceScaleFactor: 2 });

  test('at 200 % every control is reached by keys and seen, no word is lost and axe finds nothing', async ({
    page,
  }) => {
    await arrive(page);
    await page.getByText('Window, front').click();
    await page.keyboard.press('p');
    await expect(page.getByRole('button', { name: /^Unpin/ })).toBeVisible();
    expect(await lostWords(page)).toEqual([]);
    expect((await axe(page).analyze()).violations).toEqual([]);
    await watchFocus(page);
    expect(await walk(page)).toEqual([]);
    expect(await neverFocused(page)).toEqual([]);
  });
});

for (const [width, height] of [
  [1360, 800],
  [390, 844],
] as const) {
  test(`at ${width} pixels no word is lost when text is spaced out to be read`, async ({ page }) => {
    await page.setViewportSize({ width, height });
    await arrive(page);
    await page.getByText('Window, front').click();
    await page.keyboard.press('p');
    await expect(page.getByRole('button', { name: /^Unpin/ })).toBeVisible();
    await page.evaluate((rules) => {
      const sheet = new CSSStyleSheet();
      sheet.replaceSync(rules);
      document.adoptedStyleSheets = [sheet];
    }, SPACED);
    await expect.poll(() => lostWords(page)).toEqual([]);
  });
}

test('on a phone laid down the sentence and the lever are seen at once, and turned up again the tray grows back', async ({
  page,
}) => {
  await page.setViewportSize({ width: 844, height: 390 });
  await arrive(page);
  const sentence = page.locator('.sentence');
  await sentence.scrollIntoViewIfNeeded();
  const tall = await tallOf(page);
  expect(tall).toBeLessThan(390 / 4);
  const [lead, rest] = await Promise.all(
    ['.lead', '.rest'].map(async (line) => (await sentence.locator(line).boundingBox())!),
  );
  expect(lead!.y).toBeGreaterThanOrEqual(0);
  expect(rest!.y + rest!.height).toBeLessThanOrEqual(390 - tall);
  expect(await lostWords(page)).toEqual([]);
  expect((await axe(page).analyze()).violations).toEqual([]);
  await page.setViewportSize({ width: 390, height: 844 });
  await expect.poll(() => tallOf(page)).toBeGreaterThan(tall);
  expect(await lostWords(page)).toEqual([]);
});
