import type { Page } from '@playwright/test';
import { expect, test } from './fixtures.ts';
import { openSheet } from './sheet.ts';
import { crowded, holed, strangeUnit, unlikely, wrongUnit } from './traces.ts';

const give = (page: Page, name: string, content: string): Promise<void> =>
  page
    .getByLabel('Open a speed trace')
    .setInputFiles({ name, mimeType: 'text/csv', buffer: Buffer.from(content) });
const run = (page: Page) => page.getByRole('button', { name: 'Run the stint on this trace' });
const starts = (page: Page) => page.getByLabel(/^Lap starts since/);

async function giveTimes(page: Page, name: string, content: string): Promise<void> {
  await openSheet(page);
  await give(page, name, content);
  await page.getByLabel('Laps by').selectOption({ label: 'times that I give' });
  await expect(starts(page)).toBeVisible();
}

test('the true starts of laps are taken where rows are missing', async ({ page }) => {
  await giveTimes(page, 'holes.csv', holed());
  await starts(page).fill('0, 98.4, 196.8, 295.2');
  await starts(page).blur();
  await expect(page.getByRole('list', { name: 'Lap starts' }).getByRole('button')).toHaveCount(4);
  await expect(page.getByRole('alert')).toHaveCount(0);
  await expect(page.getByRole('radio', { name: /^Lap \d/ })).toHaveCount(4);
  await expect(page.getByRole('slider', { name: 'Moment in the file' })).toHaveAttribute('max', /^393\.[56]/);
});

test('while starts are mistyped nothing can be run, and the page says which hold', async ({ page }) => {
  await giveTimes(page, 'logger.csv', wrongUnit());
  await starts(page).fill('0, 98.4');
  await starts(page).blur();
  await expect(run(page)).toBeEnabled();
  await starts(page).fill('0, NaN');
  await run(page).click({ force: true });
  await expect(run(page)).toBeDisabled();
  await expect(page.getByText('Correct the lap starts first.')).toBeVisible();
  await expect(page.getByText('Laps still start at 0:00, 1:38.4.')).toBeVisible();
  await page.getByLabel('Speed: Unit').selectOption('mph');
  await expect(page.getByRole('columnheader', { name: /Speed, mph/ })).toBeVisible();
  await expect(starts(page)).toHaveValue('0, NaN');
  await expect(run(page)).toBeDisabled();
  await starts(page).fill('0, 98.4');
  await starts(page).blur();
  await expect(run(page)).toBeEnabled();
  await expect(page.getByText('Correct the lap starts first.')).toHaveCount(0);
});

test('of many problems five are shown, the others on demand, and the columns stay at hand', async ({
  page,
}) => {
  await openSheet(page);
  await give(page, 'crowded.csv', crowded());
  const alert = page.getByRole('alert');
  await expect(alert.getByRole('listitem').filter({ visible: true })).toHaveCount(5);
  await expect(page.getByRole('heading', { name: 'Columns' })).toBeInViewport();
  const more = alert.getByText(/^and \d+ more$/);
  await more.click();
  expect(await alert.getByRole('listitem').filter({ visible: true }).count()).toBeGreaterThan(6);
});

test('a unit that is unknown is chosen, the likely one too', async ({ page }) => {
  await openSheet(page);
  await give(page, 'strange.csv', strangeUnit());
  await expect(page.getByRole('alert')).toContainText('expected a unit of');
  const unit = page.getByLabel('Speed: Unit');
  await expect(unit.locator('option:checked')).toHaveText('choose');
  await unit.selectOption('km/h');
  await expect(run(page)).toBeEnabled();
  await expect(page.getByRole('alert')).toHaveCount(0);
});

test('an answer that does not fit the next file is not used, and the page says so', async ({ page }) => {
  await openSheet(page);
  await give(page, 'logger.csv', wrongUnit());
  await page.getByLabel('Speed: Unit').selectOption('mph');
  await expect(page.getByRole('columnheader', { name: /Speed, mph/ })).toBeVisible();
  await give(page, 'next.csv', unlikely());
  await expect(
    page.getByText(/^Read without your correction of .*: it does not fit this file\./),
  ).toBeVisible();
  await expect(page.getByRole('alert')).toHaveCount(0);
  await expect(run(page)).toBeEnabled();
  await give(page, 'third.csv', wrongUnit());
  await expect(page.getByText(/^Read as you corrected it/)).toBeVisible();
});

test('a correction with which nothing can be read is not remembered', async ({ page }) => {
  await openSheet(page);
  await give(page, 'logger.csv', wrongUnit());
  await page.getByLabel('Speed: Used as').selectOption({ label: 'not used' });
  await expect(page.getByRole('alert')).toContainText('no column is named as a speed');
  await give(page, 'next.csv', wrongUnit());
  await expect(run(page)).toBeEnabled();
  await expect(page.getByText(/^Read (as|without)/)).toHaveCount(0);
});

test('a remembered correction with which nothing can be read is dropped, and the page says so', async ({
  page,
}) => {
  await openSheet(page);
  await give(page, 'logger.csv', wrongUnit());
  await page.getByLabel('Speed: Unit').selectOption('mph');
  await expect(page.getByRole('columnheader', { name: /Speed, mph/ })).toBeVisible();
  await page.evaluate(
    () =>
      new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open('emberlap');
        opening.onerror = () => reject(new Error('not opened'));
        opening.onsuccess = () => {
          const change = opening.result.transaction('trace corrections', 'readwrite');
          const cursor = change.objectStore('trace corrections').openCursor();
          cursor.onsuccess = () =>
            cursor.result?.update({ choices: { roles: { 1: null } }, at_ms: Date.now() });
          change.oncomplete = () => {
            opening.result.close();
            resolve();
          };
        };
      }),
  );
  await give(page, 'next.csv', wrongUnit());
  await expect(page.getByText(/^Read without your correction of .*It is forgotten\.$/)).toBeVisible();
  await expect(run(page)).toBeEnabled();
  await give(page, 'third.csv', wrongUnit());
  await expect(run(page)).toBeEnabled();
  await expect(page.getByText(/^Read (as|without)/)).toHaveCount(0);
});

test('what was remembered stands above the problems', async ({ page }) => {
  await openSheet(page);
  await give(page, 'logger.csv', wrongUnit());
  await page.getByLabel('Speed: Unit').selectOption('mph');
  await expect(page.getByRole('columnheader', { name: /Speed, mph/ })).toBeVisible();
  await give(page, 'next.csv', wrongUnit().split('\n').slice(0, 30).join('\n'));
  const remembered = (await page.getByText(/^Read as you corrected it/).boundingBox())!;
  const problems = (await page.getByRole('alert').boundingBox())!;
  expect(remembered.y + remembered.height).toBeLessThanOrEqual(problems.y);
});

test('of two files that are dropped the first is read, and the page says so', async ({ page }) => {
  await openSheet(page);
  const transfer = await page.evaluateHandle((content) => {
    const carried = new DataTransfer();
    for (const name of ['one.csv', 'two.csv']) carried.items.add(new File([content], name));
    return carried;
  }, wrongUnit());
  await page.dispatchEvent('body', 'drop', { dataTransfer: transfer });
  await expect(page.getByRole('heading', { name: 'one.csv' })).toBeVisible();
  await expect(
    page.getByText('One file is read at a time: one.csv is read, two.csv is not.').first(),
  ).toBeVisible();
});

test('the chooser offers the usual endings of text files', async ({ page }) => {
  await openSheet(page);
  const accept = await page.getByLabel('Open a speed trace').getAttribute('accept');
  expect(accept?.split(',')).toEqual(['.csv', '.txt', '.tsv', '.log', '.dat', '.asc', 'text/*']);
});

for (const [width, height] of [
  [390, 844],
  [1024, 768],
  [1360, 800],
] as const) {
  test(`at ${width} pixels run and cancel are in sight wherever the panel is scrolled to`, async ({
    page,
  }) => {
    await page.setViewportSize({ width, height });
    await openSheet(page);
    await give(page, 'logger.csv', wrongUnit());
    await expect(page.getByText('First rows as understood')).toBeVisible();
    const tray = page.getByRole('complementary', { name: 'Blanking at hand' });
    for (const part of ['What was set right', 'First rows as understood', 'Laps']) {
      await page.getByRole('heading', { name: part, exact: true }).scrollIntoViewIfNeeded();
      await expect(run(page)).toBeInViewport({ ratio: 1 });
      await expect(page.getByRole('button', { name: 'Cancel' })).toBeInViewport({ ratio: 1 });
      await expect(tray.filter({ visible: true })).toHaveCount(0);
    }
    await page.getByRole('button', { name: 'Cancel' }).click();
    await expect(tray.filter({ visible: true })).toHaveCount(width < 900 ? 1 : 0);
  });
}

test('the panel says that more is below until its end is reached', async ({ page }) => {
  await page.setViewportSize({ width: 1360, height: 800 });
  await openSheet(page);
  await give(page, 'logger.csv', wrongUnit());
  const hint = page.getByText('More below');
  await expect(hint).toBeVisible();
  await page.getByRole('heading', { name: 'logger.csv' }).evaluate((heading) => {
    let box: HTMLElement | null = heading.parentElement;
    while (box && getComputedStyle(box).overflowY !== 'auto') box = box.parentElement;
    box!.scrollTop = box!.scrollHeight;
  });
  await expect(hint).toHaveCount(0);
});
