import { writeFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { expect, test } from './fixtures.ts';
import { openSheet } from './sheet.ts';
import { long, wrongUnit } from './traces.ts';

const opener = (page: Page) => page.getByLabel('Open a speed trace');
const log = { name: 'logger.csv', mimeType: 'text/csv', buffer: Buffer.from(wrongUnit()) };

/** Remembers the workers of the page, which of them read traces, and breaks those that are asked while it should. */
test.beforeEach(async ({ page }) => {
  await page.addInitScript(() => {
    const state = { readers: [] as Worker[], isBreaking: false };
    Object.assign(window, { state });
    const send = Worker.prototype.postMessage as (this: Worker, ...args: unknown[]) => void;
    Worker.prototype.postMessage = function (this: Worker, ...args: unknown[]): void {
      if (!JSON.stringify(args[0]).includes('readTrace')) return send.apply(this, args);
      if (!state.readers.includes(this)) state.readers.push(this);
      if (!state.isBreaking) return send.apply(this, args);
      const error = new ErrorEvent('error', { message: 'broken', cancelable: true });
      queueMicrotask(() => this.dispatchEvent(error));
    };
  });
});

interface State {
  readers: Worker[];
  isBreaking: boolean;
}
const readers = (page: Page): Promise<number> =>
  page.evaluate(() => (window as unknown as { state: State }).state.readers.length);
const breaking = (page: Page, isBreaking: boolean): Promise<void> =>
  page.evaluate((is) => void ((window as unknown as { state: State }).state.isBreaking = is), isBreaking);

test('a worker that is killed while it reads is replaced, and nothing is lost', async ({ page }, info) => {
  await openSheet(page);
  const before = await page.locator('.hash').textContent();
  const path = info.outputPath('long.csv');
  writeFileSync(path, long(600_000));
  await opener(page).setInputFiles(path);
  await expect(page.getByRole('progressbar', { name: 'Reading long.csv' })).toBeVisible();
  await page.evaluate(() => (window as unknown as { state: State }).state.readers[0]!.terminate());
  await expect(page.getByText(/Understood as 600\s000 rows/)).toBeVisible({ timeout: 50_000 });
  expect(await readers(page)).toBe(2);
  await expect(page.locator('.hash')).toHaveText(before ?? '');
});

test('a worker that breaks twice is told of, loses no correction and can be asked again', async ({
  page,
}) => {
  await openSheet(page);
  const before = await page.locator('.hash').textContent();
  await opener(page).setInputFiles(log);
  const unit = page.getByLabel('Speed: Unit');
  await expect(unit).toBeVisible();
  await breaking(page, true);
  await unit.selectOption('mph');
  const alert = page.getByRole('alert').filter({ hasText: 'Reading stopped twice' });
  await expect(alert).toHaveText('Reading stopped twice: broken. Nothing you entered is lost.');
  await expect(unit).toHaveValue('mph');
  await expect(page.locator('.hash')).toHaveText(before ?? '');
  await breaking(page, false);
  await page.getByRole('button', { name: 'Try again' }).click();
  await expect(alert).toHaveCount(0);
  await expect(page.getByRole('columnheader', { name: /Speed, mph/ })).toBeVisible();
});

test('a correction is remembered for the next file of its kind, and can be forgotten', async ({ page }) => {
  await openSheet(page);
  await opener(page).setInputFiles(log);
  const unit = page.getByLabel('Speed: Unit');
  const guessed = await unit.inputValue();
  await unit.selectOption('mph');
  await expect(page.getByRole('columnheader', { name: /Speed, mph/ })).toBeVisible();

  await page.reload();
  await openSheet(page);
  await opener(page).setInputFiles({ ...log, name: 'next.csv' });
  await expect(page.getByText(/Read as you corrected it on \d+ [A-Z][a-z]+/)).toBeVisible();
  await expect(unit).toHaveValue('mph');
  await page.getByRole('button', { name: 'Forget this' }).click();
  await expect(unit).toHaveValue(guessed);
  await expect(page.getByText(/Read as you corrected it/)).toHaveCount(0);

  await page.reload();
  await openSheet(page);
  await opener(page).setInputFiles(log);
  await expect(unit).toHaveValue(guessed);
  await expect(page.getByText(/Read as you corrected it/)).toHaveCount(0);
});

test('where storage is denied a file is read all the same, and the page says so', async ({ page }) => {
  await page.addInitScript(() => {
    IDBFactory.prototype.open = () => {
      throw new DOMException('denied', 'SecurityError');
    };
  });
  await openSheet(page);
  await opener(page).setInputFiles(log);
  await expect(page.getByText('Corrections are not remembered')).toBeVisible();
  await page.getByLabel('Speed: Unit').selectOption('mph');
  await expect(page.getByRole('columnheader', { name: /Speed, mph/ })).toBeVisible();
});
