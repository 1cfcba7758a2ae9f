import type { Page } from '@playwright/test';
import { expect, test } from './fixtures.ts';
import { openSheet } from './sheet.ts';

/** Number of pages of a PDF, and the size of the first [mm] */
function pagesOf(pdf: Buffer): { count: number; size_mm: number[] } {
  const text = pdf.toString('latin1');
  const [, width, height] = /\/MediaBox\s*\[0 0 ([\d.]+) ([\d.]+)\]/.exec(text)!;
  const mmOf = (points: string | undefined): number => Math.round((Number(points) * 254) / 72) / 10;
  return { count: text.match(/\/Type\s*\/Page\b(?!s)/g)!.length, size_mm: [mmOf(width), mmOf(height)] };
}

const printed = async (page: Page) => pagesOf(await page.pdf({ preferCSSPageSize: true }));

/** The sheet as it stands on paper: the browser tells that it is about to print, and shows what it would. */
async function asOnPaper(page: Page) {
  await expect.poll(() => page.evaluate(() => document.adoptedStyleSheets.length)).toBeGreaterThan(0);
  await page.setViewportSize({ width: 718, height: 1047 });
  await page.emulateMedia({ media: 'print' });
  await page.evaluate(() => window.dispatchEvent(new Event('beforeprint')));
  const sheet = page.locator('.run-sheet');
  await expect(sheet).toBeVisible();
  return sheet;
}

for (const [paper, locale, size_mm] of [
  ['A4', 'de-DE', [209.9, 297]],
  ['Letter', 'en-US', [215.9, 279.4]],
] as const) {
  test.describe(`where ${paper} is usual`, () => {
    test.use({ locale });
    test(`the run sheet is one page of ${paper}`, async ({ page }) => {
      await openSheet(page);
      await expect.poll(() => page.evaluate(() => document.adoptedStyleSheets.length)).toBeGreaterThan(0);
      expect(await printed(page)).toEqual({ count: 1, size_mm });
      // the screen is as it was
      await expect(page.locator('.run-sheet')).toHaveCount(0);
    });
  });
}

test('a stint with many phases fits the smaller page, too', async ({ page }) => {
  await openSheet(page);
  await page.getByLabel('Stint', { exact: true }).selectOption('hour');
  await expect(page.locator('.sentence')).toContainText(/by then 40/);
  await page.getByRole('button', { name: 'Sheet', exact: true }).click();
  await page.getByRole('radiogroup', { name: 'Paper' }).getByRole('radio', { name: 'Letter' }).check();
  await page.keyboard.press('Escape');
  expect(await printed(page)).toEqual({ count: 1, size_mm: [215.9, 279.4] });
});

test('the run sheet tells what is known and has boxes of 8 mm for the rest, none of it cut off', async ({
  page,
}) => {
  await openSheet(page);
  const sheet = await asOnPaper(page);
  await expect(sheet).toContainText('Window: example, replace. Not for use on a car');
  await expect(sheet).toContainText(/Front 70\s% blanked runs too hot/);
  for (const word of [
    'Event',
    'Session',
    'Sorrelby, clockwise',
    'Heavy closed car',
    'Air pressure',
    'Measured',
    'Initials',
  ])
    await expect(sheet).toContainText(word);
  await expect(sheet.getByRole('img')).toHaveCount(2);
  await expect(page.getByRole('main')).toBeHidden();
  const { boxes_mm, beyond } = await sheet.evaluate((article) => {
    const page = article.getBoundingClientRect();
    const pxPerMm = page.width / 190;
    const all = [...article.querySelectorAll('.box')].map((box) => box.getBoundingClientRect());
    return {
      boxes_mm: Math.min(...all.map(({ height }) => height / pxPerMm)),
      beyond: all.filter(({ right, bottom }) => right > page.right + 1 || bottom > page.bottom + 1).length,
    };
  });
  expect(boxes_mm).toBeGreaterThanOrEqual(8);
  expect(beyond).toBe(0);
});

test('every theme prints the same, black on white', async ({ page }) => {
  test.setTimeout(120_000);
  const colours = async (): Promise<string> =>
    page.locator('.run-sheet').evaluate((sheet) =>
      [sheet, ...sheet.querySelectorAll('*')]
        .map((each) => getComputedStyle(each))
        .map(({ color, backgroundColor, fill, stroke, borderTopColor }) =>
          [color, backgroundColor, fill, stroke, borderTopColor].join(),
        )
        .join('\n'),
    );
  const seen: string[] = [];
  for (const theme of ['paper', 'night', 'sun']) {
    await page.addInitScript(
      (name) => localStorage.setItem('emberlap preferences', JSON.stringify({ theme: name })),
      theme,
    );
    await page.emulateMedia({ media: 'screen' });
    await page.setViewportSize({ width: 1280, height: 800 });
    await openSheet(page);
    await expect(page.locator('html')).toHaveAttribute('data-theme', theme);
    // what is found later is printed as well; this comes last
    await expect(page.getByText(/Measure first/).first()).toBeVisible({ timeout: 40_000 });
    await asOnPaper(page);
    seen.push(await colours());
  }
  expect(seen[0]).toContain('rgb(0, 0, 0),rgb(255, 255, 255)');
  expect(seen[1]).toBe(seen[0]);
  expect(seen[2]).toBe(seen[0]);
});

test('the menu prints, and closes itself for it', async ({ page }) => {
  await page.addInitScript(() => {
    Object.assign(window, { prints: 0 });
    window.print = () => void Object.assign(window, { prints: Number(Reflect.get(window, 'prints')) + 1 });
  });
  await openSheet(page);
  await page.getByRole('button', { name: 'Sheet', exact: true }).click();
  await page.getByRole('button', { name: 'Print', exact: true }).click();
  await expect.poll(() => page.evaluate('window.prints')).toBe(1);
  await expect(page.getByRole('heading', { name: 'Run sheet' })).toBeHidden();
});
