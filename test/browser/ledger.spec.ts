import { readFile } from 'node:fs/promises';
import { axe } from './axe.ts';
import type { Locator, Page } from '@playwright/test';
import { expect, test } from './fixtures.ts';
import { openSheet } from './sheet.ts';

const minus = (text: string): number => Number(text.replace('\u2212', '-'));

/** The picture of the ledger, which is a table. */
async function openLedger(page: Page, rung: 'lap' | 'stint' = 'stint') {
  const sheet = await openSheet(page);
  await page.getByRole('radio', { name: rung, exact: true }).check();
  await page.getByRole('radio', { name: 'ledger', exact: true }).check();
  const table = page.getByRole('table', { name: /MJ, / });
  await expect(table).toBeVisible();
  const rows = table.getByRole('row').filter({ has: page.getByRole('rowheader') });
  const column = async (at: number): Promise<number[]> => {
    const cells = await rows.evaluateAll((all) =>
      all.map((row) => [...row.querySelectorAll('td:not(.picture)')].map((cell) => cell.textContent)),
    );
    return cells.map((row) => minus(row[at] ?? ''));
  };
  return { ...sheet, table, rows, column, part: (name: string) => table.getByRole('button', { name }) };
}

/** In hundredths, so that sums are exact. */
const sum = (values: number[]): number =>
  values.reduce((total, value) => total + Math.round(1000 * value), 0);

const pin = async (page: Page, field: Locator, blanking: string): Promise<void> => {
  await page.getByRole('button', { name: 'Pin this run' }).click();
  await field.fill(blanking);
  await field.press('Enter');
};

test('what is printed adds up: parts to what was made, shares to a hundred', async ({ page }) => {
  const { table, column } = await openLedger(page);
  await expect(table).toHaveAccessibleName(/^Front over 20\slaps: of [\d.]+\sMJ, the vanes’ air took \d+\s%/);
  await expect(table).toHaveAccessibleDescription(/All heat is accounted for/);
  const [made, ...parts] = await column(0);
  expect(parts.length).toBe(6);
  expect(sum(parts)).toBe(sum([made!]));
  const [all, ...shares] = await column(1);
  expect([all, sum(shares) / 1000]).toEqual([100, 100]);
});

test('each step of the stairs begins where the one above ends, and the last ends at the end line', async ({
  page,
}) => {
  const { rows } = await openLedger(page);
  const bars = await rows.locator('rect.part').evaluateAll((all) =>
    all.map((bar) => {
      const [x, width] = ['x', 'width'].map((name) => Number(bar.getAttribute(name)));
      return { from: x!, to: x! + width! };
    }),
  );
  const [beam, ...steps] = bars;
  expect(steps[0]!.from).toBeCloseTo(beam!.from, 3);
  steps.slice(1).forEach((step, i) => expect(step.from).toBeCloseTo(steps[i]!.to, 3));
  expect(steps.at(-1)!.to).toBeCloseTo(beam!.to, 1);
});

test('on the lap rung it is the lap under the cursor, and of the axle in view', async ({ page }) => {
  const { table, column } = await openLedger(page, 'lap');
  await expect(table).toHaveAccessibleName(/^Front on lap\s10: of/);
  await page.getByRole('button', { name: 'Next lap' }).first().click();
  await expect(table).toHaveAccessibleName(/^Front on lap\s11: of/);
  const front = await column(0);
  await page.getByRole('radio', { name: 'rear', exact: true }).first().check();
  await expect(table).toHaveAccessibleName(/^Rear on lap\s11: of/);
  expect((await column(0))[0]).toBeLessThan(front[0]!);
});

test('against a pinned run every change is the difference of what is printed, and the largest is in words', async ({
  page,
}) => {
  const { table, column, field } = await openLedger(page);
  const before = await column(0);
  await pin(page, field('Front blanking'), '40');
  await expect(table).toContainText(/Against it the vanes’ air took [\d.]+\sMJ more/);
  await expect.poll(() => column(2)).toEqual(before);
  const [now, change] = [await column(0), await column(3)];
  change.forEach((value, i) => expect(sum([value])).toBe(sum([now[i]!, -before[i]!])));
  expect(change[1]).toBeGreaterThan(0);
  expect(sum(change.slice(1))).toBe(sum([change[0]!]));
  await expect(table.locator('rect.pinned')).toHaveCount(7);
});

test('a part says what it is when it has the focus, with the means of today', async ({ page }) => {
  const { part } = await openLedger(page);
  await part('other air and spray').focus();
  await page.keyboard.press('Tab');
  await expect(part('radiation')).toBeFocused();
  const note = (name: string): Locator => page.getByRole('group', { name: `Where ${name} comes from` });
  await expect(note('radiation')).toContainText('it grows with the fourth power of the temperature');
  await expect(note('radiation')).toContainText(
    /ε A σ[^]*10⁶ = [\d.]+\sMJ[^]*100 · [\d.]+ \/ [\d.]+ = [\d.]+\s%/,
  );
  await page.keyboard.press('Tab');
  await page.keyboard.press('Tab');
  await expect(part('into hub and upright')).toBeFocused();
  await expect(note('into hub and upright')).toContainText('The bell warms the hub');
  await expect(note('radiation')).toHaveCount(0);
});

test('with a pinned run beside it the sheet stands in a wide window without scrolling', async ({ page }) => {
  await page.setViewportSize({ width: 1360, height: 800 });
  const { table, field } = await openLedger(page);
  const tall = (): Promise<number> => page.evaluate(() => document.documentElement.scrollHeight);
  await page.getByRole('button', { name: 'Pin this run' }).click();
  await expect(page.getByText(/^Pinned\. Change something/)).toBeVisible();
  expect(await tall()).toBeLessThanOrEqual(800);
  await pin(page, field('Front blanking'), '40');
  await expect(table.locator('rect.pinned')).toHaveCount(7);
  expect(await tall()).toBeLessThanOrEqual(800);
  await page.getByRole('radio', { name: 'lap', exact: true }).check();
  await expect(table).toHaveAccessibleName(/^Front on lap/);
  expect(await tall()).toBeLessThanOrEqual(800);
});

test('on a phone a tap opens what a part is, nothing reaches beyond the side, and axe finds nothing', async ({
  page,
}) => {
  await page.setViewportSize({ width: 320, height: 700 });
  const { table, part, field } = await openLedger(page, 'lap');
  await part('air over the faces').click();
  await expect(part('air over the faces')).toHaveAttribute('aria-expanded', 'true');
  await expect(page.getByText('Both rubbed faces give heat')).toBeVisible();
  expect((await axe(page).include('table').analyze()).violations).toEqual([]);
  await pin(page, field('Front blanking').first(), '40');
  await expect(table).toContainText('change, MJ');
  const beyond = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  expect(beyond).toBeLessThanOrEqual(0);
  expect((await axe(page).include('table').analyze()).violations).toEqual([]);
  await page.setViewportSize({ width: 1360, height: 800 });
  expect((await axe(page).analyze()).violations).toEqual([]);
});

test('the file holds what the picture says', async ({ page }) => {
  const { column } = await openLedger(page);
  const saved = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Download CSV' }).click();
  const file = await saved;
  expect(file.suggestedFilename()).toBe('heat-front-stint.csv');
  const lines = (await readFile(await file.path(), 'utf8')).trim().split('\n');
  expect(lines[0]).toBe('Part,Way,"Heat, MJ","Share, %"');
  expect(lines.slice(1).map((line) => Number(line.split(',')[2]))).toEqual(await column(0));
});
