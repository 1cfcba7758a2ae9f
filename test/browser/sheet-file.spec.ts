import { readFile } from 'node:fs/promises';
import { axe } from './axe.ts';
import type { FileChooser, Page } from '@playwright/test';
import { diskOf, withFileAccess, withoutFileAccess } from './files.ts';
import { expect, test } from './fixtures.ts';
import { openSheet } from './sheet.ts';

const news = (page: Page) => page.locator('.news');

async function openMenu(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Sheet', exact: true }).click();
  await expect(page.getByRole('dialog', { name: 'Sheet' })).toBeVisible();
}

/** Waits for what listens to the keys. */
const isListening = (page: Page) => expect(news(page)).toBeAttached();

/** Takes a text as if it had been dropped on the sheet. */
async function drop(page: Page, name: string, text: string): Promise<void> {
  const data = await page.evaluateHandle(
    ([fileName, content]) => {
      const transfer = new DataTransfer();
      transfer.items.add(new File([content!], fileName!));
      return transfer;
    },
    [name, text],
  );
  await page.dispatchEvent('body', 'drop', { dataTransfer: data });
}

/** A file of the sheet that is open, without the browser's own window. */
async function saved(page: Page): Promise<Record<string, unknown>> {
  await page.keyboard.press('Control+s');
  await expect.poll(async () => (await diskOf(page)).written.length).toBeGreaterThan(0);
  return JSON.parse((await diskOf(page)).written.at(-1)!) as Record<string, unknown>;
}

test('Ctrl+S asks for a file once and then writes the same again; a copy asks anew', async ({ page }) => {
  await withFileAccess(page);
  const { slider } = await openSheet(page);
  await isListening(page);
  await page.keyboard.press('Control+s');
  await expect(news(page)).toContainText(/^\s*Saved in heavy-closed-car-sorrelby-\d{4}-\d\d-\d\d\.json\./);
  await slider('Front blanking').press('ArrowLeft');
  await page.keyboard.press('Control+s');
  await expect.poll(async () => (await diskOf(page)).written.length).toBe(2);
  const { asked, written } = await diskOf(page);
  expect(asked).toHaveLength(1);
  const [before, after] = written.map(
    (text) => JSON.parse(text) as { version: number; blanking_pct: { front: number } },
  );
  expect(before!.version).toBe(1);
  expect(before!.blanking_pct.front).toBe(70);
  expect(after!.blanking_pct.front).toBeLessThan(70);
  expect(written[0]).toMatch(/^\{\n {2}"version": 1,\n {2}"name"/);
  await openMenu(page);
  await expect(page.getByText(/\.json, with all that is in the sheet\.$/)).toBeVisible();
  await page.getByRole('button', { name: 'Share a link' }).click();
  await expect(page.getByLabel('Link', { exact: true })).toHaveValue(/#s=/);
  expect((await axe(page).include('#menu').analyze()).violations).toEqual([]);
  await page.getByRole('button', { name: 'Save as copy' }).click();
  await expect.poll(async () => (await diskOf(page)).asked.length).toBe(2);
});

test('where the browser cannot write a file, it loads down and can be opened again, unknown keys and all', async ({
  page,
}) => {
  await withoutFileAccess(page);
  const { slider, sentence } = await openSheet(page);
  await isListening(page);
  await slider('Front blanking').press('Home');
  const download = page.waitForEvent('download');
  await page.keyboard.press('Control+s');
  const file = await download;
  const text = await readFile(await file.path(), 'utf8');
  // a save that is under way is let finish
  const choosers: FileChooser[] = [];
  await expect(async () => {
    const asked = page.waitForEvent('filechooser', { timeout: 3_000 });
    await page.keyboard.press('Control+o');
    choosers.push(await asked);
  }).toPass();
  const changed = text
    .replace('\n  "trace": null', '\n  "note": {\n    "wind": "west"\n  },\n  "trace": null')
    .replace('"front": 0', '"front": 44');
  await choosers[0]!.setFiles({
    name: 'ours.json',
    mimeType: 'application/json',
    buffer: Buffer.from(changed),
  });
  await expect(news(page)).toContainText('ours.json is open. Undo brings back what was here.');
  await expect(news(page)).toContainText('Kept as it is, and without effect: note.');
  await expect(sentence).toContainText(/Front 44\s% blanked/);
  const again = page.waitForEvent('download');
  await page.keyboard.press('Control+s');
  expect(await readFile(await (await again).path(), 'utf8')).toBe(changed);
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  await expect(slider('Front blanking')).toHaveValue('0');
});

test('a file that is dropped is told from a speed trace', async ({ page }) => {
  await openSheet(page);
  await drop(page, 'dropped.json', '{ "version": 1, "blanking_pct": { "front": 52 } }');
  await expect(news(page)).toContainText('dropped.json is open.');
  await expect(page.getByRole('slider', { name: 'Front blanking', exact: true })).toHaveValue('52');
  await drop(page, 'lap.csv', 'time,speed\n0,10\n1,20\n');
  await expect(page.getByRole('heading', { name: 'lap.csv' })).toBeVisible();
});

test('a broken file names each problem, and what was here is still here', async ({ page }) => {
  const { slider, sentence } = await openSheet(page);
  await slider('Front blanking').press('Home');
  await drop(
    page,
    'broken.json',
    '{ "version": 1, "conditions": { "ambient_C": 295 }, "blanking_pct": { "front": "a" } }',
  );
  const alert = news(page);
  await expect(alert).toContainText('broken.json is not opened, and nothing has changed.');
  await expect(alert.getByRole('listitem')).toHaveText([
    'conditions.ambient_C: expected -30 to 55, got 295 (kelvin?)',
    "blanking_pct.front: expected 0 to 100, got 'a'",
  ]);
  await drop(page, 'cut.json', '{ "version": 1,');
  await expect(alert).toContainText('file: expected JSON, got text that is none (it ends too early)');
  await expect(slider('Front blanking')).toHaveValue('0');
  await expect(sentence).toContainText(/Front 0\s% blanked/);
  expect((await axe(page).include('.news').analyze()).violations).toEqual([]);
  await alert.getByRole('button', { name: 'Close' }).click();
  await expect(alert.getByRole('listitem')).toHaveCount(0);
});

test('a file of an earlier version is brought to this one, and the page says what changed; a newer one is refused', async ({
  page,
}) => {
  await withFileAccess(page);
  await openSheet(page);
  await isListening(page);
  const file = await saved(page);
  const brakes = file['brakes'] as { front: { duct: Record<string, unknown> } };
  delete brakes.front.duct['clearance_mm'];
  brakes.front.duct['flattened'] = 0.5;
  await drop(page, 'old.json', JSON.stringify({ ...file, version: 0 }));
  await expect(news(page)).toContainText('old.json is open.');
  await expect(news(page).getByRole('listitem')).toHaveText([
    /^brakes\.front\.duct\.flattened 0\.5 is now clearance_mm [\d.]+\.$/,
  ]);
  await drop(page, 'new.json', JSON.stringify({ ...file, version: 2 }));
  await expect(news(page)).toContainText(
    'version: expected at most 1, got 2 (it was written by a newer Emberlap)',
  );
});

test('starting over is a step that undo takes back', async ({ page }) => {
  const { slider } = await openSheet(page);
  await slider('Front blanking').press('Home');
  await openMenu(page);
  await page.getByRole('button', { name: 'Start over' }).click();
  await expect(page.getByRole('dialog', { name: 'Sheet' })).toBeHidden();
  await expect(slider('Front blanking')).toHaveValue('70');
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  await expect(slider('Front blanking')).toHaveValue('0');
});
