import { fileURLToPath } from 'node:url';
import { readFileSync } from 'node:fs';
import { axe } from './axe.ts';
import { expect, test } from './fixtures.ts';
import { openSheet } from './sheet.ts';
import { openQuestion, wrongUnit } from './traces.ts';

const shipped = fileURLToPath(new URL('../../scenarios/traces/sorrelby-heavy.csv', import.meta.url));
const text = readFileSync(shipped, 'utf8');

test('a good trace is shown as understood, then the stint runs on it', async ({ page }) => {
  await openSheet(page);
  await page.getByLabel('Open a speed trace').setInputFiles(shipped);
  await expect(page.getByText(/Understood as \d+ rows over 1:\d\d\.\d min and\s+5\s\d\d\d\sm/)).toBeVisible();
  await expect(page.getByRole('columnheader', { name: /Speed, km\/h.*used as speed/ })).toBeVisible();
  await expect(page.getByRole('group', { name: 'First rows of the file' }).getByRole('row')).toHaveCount(13);
  await page.getByRole('button', { name: 'Run the stint on this trace' }).click();
  await expect(page.getByRole('contentinfo')).toContainText('sorrelby-heavy.csv');
  // said as the drawing's summary, and where the drawing would stand
  await expect(page.getByText('No map: the trace carries no positions.')).toHaveCount(2);
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
  await expect(page.getByText('Drop a speed trace, or the file of a sheet, anywhere.')).toBeVisible();
  await page.dispatchEvent('body', 'drop', { dataTransfer: transfer });
  await expect(page.getByRole('heading', { name: 'dropped.csv' })).toBeVisible();
  await expect(page.getByText(/Understood as/)).toBeVisible();
});

test('a trace can be put away again', async ({ page }) => {
  const { sentence } = await openSheet(page);
  // with the last that comes by itself
  await expect(sentence).toContainText(/of\s100 runs/);
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

for (const [width, height] of [
  [320, 700],
  [390, 844],
  [1024, 768],
  [1360, 800],
] as const) {
  test(`at ${width} pixels the reader keeps to the page and axe finds nothing`, async ({ page }) => {
    await page.setViewportSize({ width, height });
    await openSheet(page);
    const opener = page.getByLabel('Open a speed trace');
    const inOrder = async (): Promise<void> => {
      const beyond = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
      expect(beyond).toBeLessThanOrEqual(0);
      // the sheet behind it is looked at in access.spec.ts
      expect((await axe(page).include('.panel').analyze()).violations).toEqual([]);
    };
    await opener.setInputFiles({
      name: 'open.csv',
      mimeType: 'text/csv',
      buffer: Buffer.from(openQuestion()),
    });
    await expect(page.getByRole('group', { name: /one number or two/ })).toBeVisible();
    await inOrder();
    await opener.setInputFiles({ name: 'laps.csv', mimeType: 'text/csv', buffer: Buffer.from(wrongUnit()) });
    // a choice before it is read would be one for the file before
    await expect(page.getByRole('heading', { name: 'laps.csv' })).toBeVisible();
    await expect(page.getByRole('heading', { name: 'What was set right' })).toBeVisible();
    await page.getByLabel('Laps by').selectOption({ label: 'times that I give' });
    await expect(page.getByRole('slider', { name: 'Moment in the file' })).toBeVisible();
    await page.getByLabel(/^Lap starts since/).fill('never');
    await page.getByLabel(/^Lap starts since/).blur();
    await expect(page.getByRole('alert').filter({ hasText: 'never' })).toBeVisible();
    await inOrder();
  });
}

test('a file above 50 MB is refused before it is read', async ({ page }) => {
  await openSheet(page);
  const transfer = await page.evaluateHandle(() => {
    const carried = new DataTransfer();
    carried.items.add(new File([new Uint8Array(50_000_001)], 'huge.csv'));
    return carried;
  });
  await page.dispatchEvent('body', 'drop', { dataTransfer: transfer });
  await expect(page.getByRole('alert')).toHaveText('file: expected at most 50 MB, got 51 MB');
});
