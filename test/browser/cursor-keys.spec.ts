import { readFile } from 'node:fs/promises';
import type { Locator, Page } from '@playwright/test';
import { expect, test } from './fixtures.ts';
import { tabTo } from './keys.ts';
import { openSheet } from './sheet.ts';

const drawing = (page: Page, name: string | RegExp): Locator => page.getByRole('application', { name });
const rung = (page: Page, name: string): Locator =>
  page.getByRole('radiogroup', { name: 'Rung', exact: true }).getByRole('radio', { name, exact: true });
const heading = (page: Page): Locator => page.getByRole('heading', { name: /^(Lap\s\d+|Standing)/ }).first();
const lapNow = async (page: Page): Promise<number> =>
  Number(/\d+/.exec((await heading(page).textContent()) ?? '')![0]);

test('keys on the stint’s chart move the one cursor: by sample, by lap, to the ends', async ({ page }) => {
  const { cursor } = await openSheet(page);
  const chart = drawing(page, /counted laps$/);
  await tabTo(page, chart);
  const [start, lap] = [await cursor(), await lapNow(page)];
  await chart.press('ArrowRight');
  await expect.poll(cursor).toBeGreaterThan(start);
  await chart.press('Shift+ArrowRight');
  await expect.poll(() => lapNow(page)).toBe(lap + 1);
  await chart.press('Home');
  await expect.poll(cursor).toBe(0);
  await expect.poll(() => lapNow(page)).toBe(1);
  await chart.press('End');
  await expect(heading(page)).toHaveText(/^Standing after lap\s20/);
});

test('M goes to the next hard stop on every drawing, and Shift and M back to it', async ({ page }) => {
  await openSheet(page);
  for (const name of [/counted laps$/, 'Lap cells of both axles', /^Circuit, lap/, 'Disc in section']) {
    const on = drawing(page, name);
    await on.press('m');
    await expect(heading(page)).toHaveText(/^Lap\s\d+, turn \d+/);
    const first = await heading(page).textContent();
    await on.press('m');
    await expect(heading(page)).not.toHaveText(first!);
    await on.press('Shift+M');
    await expect(heading(page)).toHaveText(first!);
  }
  const scrubber = page.getByRole('slider', { name: 'Position in the stint' });
  const before = await heading(page).textContent();
  await scrubber.press('m');
  await expect(heading(page)).not.toHaveText(before!);
});

test('what the cursor is on is said once the keys rest, and every drawing has its summary', async ({
  page,
}) => {
  await openSheet(page);
  const chart = drawing(page, /counted laps$/);
  await chart.press('m');
  await chart.press('m');
  const said = page.locator('[aria-live="polite"]', { hasText: /^lap \d+/ });
  await expect(said).toHaveText(
    /^lap \d+, [\d.]+ seconds, \d+ km\/h, hard stop at turn \d+; front face \d+\s°C/,
  );
  await expect(chart).toHaveAccessibleDescription(
    /^Front face over 20 laps\. .*M goes to the next hard stop/,
  );
  await expect(drawing(page, 'Lap cells of both axles')).toHaveAccessibleDescription(/^Front: .*Rear: /);
  await expect(drawing(page, /^Circuit, lap/)).toHaveAccessibleDescription(/Hottest: turn/);
});

test('a tap on the circuit goes to that place of the lap, and the lap stays', async ({ page }) => {
  const { cursor } = await openSheet(page);
  const map = drawing(page, /^Circuit, lap/);
  const lap = await lapNow(page);
  const car = page.locator('circle.car');
  const place = async (): Promise<string> =>
    `${await car.getAttribute('cx')} ${await car.getAttribute('cy')}`;
  const [before, at] = [await cursor(), await place()];
  const line = (await page.locator('.chart line.start').boundingBox())!;
  await page.mouse.click(line.x + line.width / 2, line.y + line.height / 2);
  await expect.poll(place).not.toBe(at);
  expect(await cursor()).not.toBe(before);
  expect(await lapNow(page)).toBe(lap);
  const box = (await map.boundingBox())!;
  const now = await cursor();
  await page.mouse.click(box.x + 1, box.y + 1);
  expect(await cursor()).toBe(now);
});

test('pointing at one drawing moves the others', async ({ page }) => {
  await openSheet(page);
  const cells = drawing(page, 'Lap cells of both axles');
  const box = (await cells.boundingBox())!;
  await page.mouse.click(box.x + box.width * 0.3, box.y + 30);
  const lap = await lapNow(page);
  expect(lap).toBeLessThan(9);
  await expect(drawing(page, `Circuit, lap ${lap}`)).toBeVisible();
  await rung(page, 'lap').check();
  await expect(page.getByText(new RegExp(`^Lap\\s${lap}, push: front face up to`))).toBeVisible();
});

test('on the lap’s rung the ends are the lap’s, hard stops are numbered, and the map goes along', async ({
  page,
}) => {
  await openSheet(page);
  await rung(page, 'lap').check();
  const trace = drawing(page, /^Lap\s\d+, push/);
  const lap = await lapNow(page);
  await trace.press('Home');
  await expect(page.getByText(/^0:00\.0 after the line/)).toBeVisible();
  await trace.press('End');
  await expect.poll(() => lapNow(page)).toBe(lap);
  const stops = page.getByRole('table', { name: `Hard stops of lap ${lap}` }).getByRole('row');
  const count = (await stops.count()) - 1;
  expect(count).toBeGreaterThan(2);
  for (let n = 1; n <= count; n++)
    await expect(trace.locator('text.bold', { hasText: new RegExp(`^${n}$`) })).toBeVisible();
  await expect(stops.nth(1)).toHaveText(/^1 turn \d+\s*\d+\s°C, \d+\sK (above|below) bite\s*\d+\s°C$/);
});

test('tables are saved as files, with the unit in every heading', async ({ page }) => {
  await openSheet(page);
  await page.getByRole('radio', { name: 'table', exact: true }).check();
  const save = async (): Promise<string[]> => {
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Download CSV' }).click();
    return (await readFile(await (await download).path(), 'utf8')).trimEnd().split('\n');
  };
  const laps = await save();
  expect(laps[0]).toMatch(/^Lap,"Face min, °C",.*Phase,Window$/);
  expect(laps).toHaveLength(21);
  await rung(page, 'lap').check();
  const samples = await save();
  expect(samples[0]).toMatch(/^"Time after the line, s","Distance, m","Speed, km\/h"/);
  const shown = page.getByRole('table', { name: /^Every sample of lap/ }).getByRole('row');
  expect(samples).toHaveLength(await shown.count());
});
