import { expect, test } from './fixtures.ts';
import { openSheet } from './sheet.ts';

test('nothing moves until it is played, and pause stops it', async ({ page }) => {
  const { cursor } = await openSheet(page);
  const start = await cursor();
  await page.waitForTimeout(300);
  expect(await cursor()).toBe(start);
  await page.getByRole('button', { name: 'Play' }).click();
  await expect.poll(cursor).toBeGreaterThan(start);
  await page.getByRole('button', { name: 'Pause' }).click();
  const paused = await cursor();
  await page.waitForTimeout(300);
  expect(await cursor()).toBe(paused);
});

test('the speed can be changed while it plays', async ({ page }) => {
  const { cursor } = await openSheet(page);
  await page.getByRole('button', { name: 'Play' }).click();
  await page.getByLabel('Speed', { exact: true }).selectOption('60×');
  const from = await cursor();
  await expect.poll(cursor).toBeGreaterThan(from + 0.02);
});

test('the cursor goes on while the blanking is dragged, and the picture follows', async ({ page }) => {
  const { cursor, slider, sentence } = await openSheet(page);
  await page.getByRole('button', { name: 'Play' }).click();
  const box = (await slider('Front blanking').boundingBox())!;
  await page.mouse.move(box.x + 9 + 0.7 * (box.width - 18), box.y + box.height / 2);
  await page.mouse.down();
  let last = await cursor();
  for (const share of [0.6, 0.5, 0.4, 0.3, 0.2]) {
    await page.mouse.move(box.x + 9 + share * (box.width - 18), box.y + box.height / 2, { steps: 5 });
    await page.waitForTimeout(80);
    const now = await cursor();
    expect(now).toBeGreaterThan(last);
    last = now;
  }
  await page.mouse.up();
  await expect(page.getByRole('button', { name: 'Pause' })).toBeVisible();
  await expect(sentence).toContainText(/(Front|Rear) (19|20|21)\s%/);
});

test('the stint is scrubbed by mouse on chart and scrubber', async ({ page }) => {
  await openSheet(page);
  const moment = page.getByRole('heading', { name: /^Lap\s\d+/ }).first();
  const chart = page.getByRole('img', { name: /counted laps$|stays between/ }).first();
  const box = (await chart.boundingBox())!;
  await page.mouse.click(box.x + box.width * 0.2, box.y + box.height / 2);
  await expect(moment).toHaveText(/^Lap\s[2-5]\b/);
  const scrubber = (await page.getByRole('slider', { name: 'Position in the stint' }).boundingBox())!;
  await page.mouse.click(scrubber.x + scrubber.width * 0.8, scrubber.y + scrubber.height / 2);
  await expect(moment).toHaveText(/^Lap\s1[5-8]\b/);
});

test('the stint is scrubbed by keyboard', async ({ page }) => {
  const { cursor } = await openSheet(page);
  const scrubber = page.getByRole('slider', { name: 'Position in the stint' });
  await scrubber.focus();
  const start = await cursor();
  await scrubber.press('ArrowRight');
  const sample = await cursor();
  expect(sample).toBeGreaterThan(start);
  await scrubber.press('Shift+ArrowRight');
  expect(await cursor()).toBeGreaterThan(sample + 0.03);
  await expect(scrubber).toHaveAttribute('aria-valuetext', /^lap \d+, [\d.]+ seconds, \d+ km\/h$/);
});

test('laps and stops are stepped through', async ({ page }) => {
  await openSheet(page);
  const moment = page.getByRole('heading', { name: /^Lap\s\d+/ }).first();
  const before = Number(/\d+/.exec((await moment.textContent()) ?? '')?.[0]);
  await page.getByRole('button', { name: 'Next lap' }).click();
  await expect(moment).toHaveText(new RegExp(`^Lap\\s${before + 1}\\b`));
  await page.getByRole('button', { name: 'Next stop' }).click();
  await expect(moment).toHaveText(/^Lap\s\d+, \S/);
  await page.getByRole('button', { name: 'Previous lap' }).click();
  await page.getByRole('button', { name: 'Previous lap' }).click();
  await expect(moment).toHaveText(new RegExp(`^Lap\\s${before}\\b`));
});
