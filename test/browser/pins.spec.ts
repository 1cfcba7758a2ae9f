import type { Locator, Page } from '@playwright/test';
import { expect, test } from './fixtures.ts';
import { openSheet } from './sheet.ts';

const pins = (page: Page): Locator => page.getByRole('group', { name: 'Pinned runs' });
const named = (page: Page): Locator => pins(page).getByRole('radio');
const pin = (page: Page): Promise<void> => page.getByRole('button', { name: 'Pin this run' }).click();
const undo = (page: Page): Locator => page.getByRole('button', { name: 'Undo', exact: true });

/** Blanks the front and waits until that is what is shown. */
async function blank(page: Page, sentence: Locator, share: number): Promise<void> {
  await page.getByRole('slider', { name: 'Front blanking', exact: true }).fill(String(share));
  await expect(sentence).toContainText(new RegExp(`Front ${share}\\s%`));
}

async function pinAll(page: Page, sentence: Locator, shares: readonly number[]): Promise<void> {
  for (const share of shares) {
    await blank(page, sentence, share);
    await pin(page);
  }
}

const names = async (page: Page): Promise<(string | null)[]> =>
  Promise.all((await named(page).all()).map((radio) => radio.getAttribute('aria-label')));

test('three runs are pinned by name, and a fourth takes the place of the oldest with a word about it', async ({
  page,
}) => {
  const { sentence } = await openSheet(page);
  await pinAll(page, sentence, [60, 50, 40]);
  await blank(page, sentence, 65);
  await expect(named(page)).toHaveCount(3);
  expect(await names(page)).toEqual([60, 50, 40].map((share) => `Compare with pinned ${share}\u00a0%`));
  await expect(page.getByText(/made room/)).toHaveCount(0);
  await pin(page);
  await expect(pins(page).getByText(/^Pinned 60\s% made room: three at most\.$/)).toBeVisible();
  const cut = await pins(page)
    .locator('label > span')
    .evaluateAll((all) => all.filter((name) => name.scrollWidth > name.clientWidth).length);
  expect(cut, 'names that are cut').toBe(0);
  await blank(page, sentence, 55);
  await expect(page.getByText(/made room/)).toHaveCount(0);
  expect(await names(page)).toEqual([50, 40, 65].map((share) => `Compare with pinned ${share}\u00a0%`));
});

test('each line has its own dash and its name at its end, and no two dashes are alike', async ({ page }) => {
  const { sentence } = await openSheet(page);
  await pinAll(page, sentence, [60, 50, 40]);
  await blank(page, sentence, 30);
  const dashes = await pins(page)
    .locator('label line')
    .evaluateAll((lines) => lines.map((line) => line.getAttribute('stroke-dasharray')));
  expect(dashes).toEqual(['6 4', '2 3', '10 3 2 3']);
  const chart = page.getByRole('img', { name: /counted laps/ }).first();
  for (const share of [60, 50, 40]) {
    await expect(
      chart.locator('text.pinned', { hasText: new RegExp(`^pinned ${share}\\s%$`) }),
    ).toBeVisible();
  }
  await expect(page.getByLabel('front mouth').locator('.pinned-edge')).toHaveCount(3);
});

test('the difference is told against the chosen one, and only what differs', async ({ page }) => {
  const { sentence } = await openSheet(page);
  await pinAll(page, sentence, [70, 30]);
  await blank(page, sentence, 50);
  await expect(page.getByText(/^Against pinned 30\s%: face peak \d+\sK hotter/)).toBeVisible();
  // by keyboard alone
  await named(page).last().focus();
  await page.keyboard.press('ArrowLeft');
  await expect(page.getByText(/^Against pinned 70\s%: face peak \d+\sK cooler, coldest stop/)).toBeVisible();
  await page
    .getByRole('radiogroup', { name: 'Axle in the chart' })
    .getByRole('radio', { name: 'rear' })
    .check();
  await expect(
    page.getByText(/^Against pinned at front blanking 70\s%: the rear is the same\.$/),
  ).toBeVisible();
});

test('one is taken away, and pinning and taking away are undone by name', async ({ page }) => {
  const { sentence } = await openSheet(page);
  await pinAll(page, sentence, [60, 50]);
  await blank(page, sentence, 40);
  await pins(page)
    .getByRole('button', { name: /^Unpin pinned 60/ })
    .click();
  await expect(named(page)).toHaveCount(1);
  await expect(undo(page)).toHaveAccessibleDescription('Undo unpinning');
  await undo(page).click();
  await expect(named(page)).toHaveCount(2);
  await expect(undo(page)).toHaveAccessibleDescription(/^Undo front blanking 50 to 40\s%$/);
  await undo(page).click();
  await expect(undo(page)).toHaveAccessibleDescription('Undo pinning');
  await undo(page).click();
  await expect(named(page)).toHaveCount(1);
  await expect(page.getByRole('button', { name: 'Redo', exact: true })).toHaveAccessibleDescription(
    'Redo pinning',
  );
  await page.getByRole('button', { name: /^Unpin pinned 60/ }).click();
  await expect(pins(page)).toHaveCount(0);
});

test('what would be undone stands under the button for who points at it or has it in focus', async ({
  page,
}) => {
  const { sentence } = await openSheet(page);
  await blank(page, sentence, 50);
  const words = page.getByText(/^Undo front blanking 70 to 50\s%$/);
  await page.mouse.move(5, 400);
  await expect(words).toHaveCSS('opacity', '0');
  await undo(page).hover();
  await expect(words).toHaveCSS('opacity', '1');
  const box = (await words.boundingBox())!;
  expect(box.x + box.width).toBeLessThanOrEqual(page.viewportSize()!.width);
});
