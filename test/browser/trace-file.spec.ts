import { fileURLToPath } from 'node:url';
import { readFileSync } from 'node:fs';
import { expect, test } from './fixtures.ts';
import { openSheet } from './sheet.ts';

const shipped = fileURLToPath(new URL('../../scenarios/traces/sorrelby-heavy.csv', import.meta.url));
const text = readFileSync(shipped, 'utf8');

test('a good trace is shown as understood, then the stint runs on it', async ({ page }) => {
  await openSheet(page);
  await page.getByLabel('Open a speed trace').setInputFiles(shipped);
  await expect(page.getByText(/Understood as \d+ rows over 1:\d\d\.\d min and\s+5\d\d\d m/)).toBeVisible();
  await expect(page.getByRole('columnheader', { name: /Speed, km\/h.*used as speed/ })).toBeVisible();
  await expect(page.getByRole('group', { name: 'First rows of the file' }).getByRole('row')).toHaveCount(13);
  await page.getByRole('button', { name: 'Run the stint on this trace' }).click();
  await expect(page.getByRole('contentinfo')).toContainText('sorrelby-heavy.csv');
  await expect(page.getByText('No map: the trace carries no positions.')).toBeVisible();
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(page.getByRole('contentinfo')).not.toContainText('sorrelby-heavy.csv');
});

test('a trace can be dropped on the sheet', async ({ page }) => {
  await openSheet(page);
  const transfer = await page.evaluateHandle((content) => {
    const carried = new DataTransfer();
    carried.items.add(new File([content], 'dropped.csv', { type: 'text/csv' }));
    return carried;
  }, text);
  await page.dispatchEvent('body', 'dragover', { dataTransfer: transfer });
  await expect(page.getByText('Drop the speed trace anywhere on the sheet.')).toBeVisible();
  await page.dispatchEvent('body', 'drop', { dataTransfer: transfer });
  await expect(page.getByRole('heading', { name: 'dropped.csv' })).toBeVisible();
  await expect(page.getByText(/Understood as/)).toBeVisible();
});

test('a trace can be put away again', async ({ page }) => {
  const { sentence } = await openSheet(page);
  const before = await sentence.textContent();
  await page.getByLabel('Open a speed trace').setInputFiles(shipped);
  await page.getByRole('button', { name: 'Cancel' }).click();
  await expect(page.getByText('Understood as')).toHaveCount(0);
  await expect(sentence).toHaveText(before ?? '');
});

test('a bad trace is refused by row and column and changes nothing', async ({ page }) => {
  await openSheet(page);
  const hash = await page.locator('.hash').textContent();
  const lines = text.split(/\r?\n/);
  lines[40] = (lines[40] ?? '').replace(/[^,;]*$/, 'fast');
  const buffer = Buffer.from(lines.join('\n'));
  await page
    .getByLabel('Open a speed trace')
    .setInputFiles({ name: 'bad.csv', mimeType: 'text/csv', buffer });
  await expect(page.getByRole('alert')).toContainText(/row 41, column Speed.*'fast'/);
  await expect(page.getByText('Nothing has changed.')).toBeVisible();
  await expect(page.locator('.hash')).toHaveText(hash ?? '');
  await page.getByRole('button', { name: 'Close' }).click();
  await expect(page.getByRole('alert')).toHaveCount(0);
});
