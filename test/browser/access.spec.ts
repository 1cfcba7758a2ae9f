import { axe } from './axe.ts';
import { expect, test } from './fixtures.ts';
import { openSheet } from './sheet.ts';

for (const [width, height] of [
  [320, 700],
  [390, 844],
  [768, 1024],
  [1024, 768],
  [1360, 800],
  [1600, 900],
] as const) {
  test(`at ${width} pixels nothing reaches beyond the side and axe finds nothing`, async ({ page }) => {
    await page.setViewportSize({ width, height });
    await openSheet(page);
    await page.getByText('Window, front').click();
    const beyond = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    expect(beyond).toBeLessThanOrEqual(0);
    expect((await axe(page).analyze()).violations).toEqual([]);
  });
}

test('axe finds nothing in the table, the lap and the trace reader', async ({ page }) => {
  await openSheet(page);
  await page.getByRole('radio', { name: 'lap' }).check();
  expect((await axe(page).analyze()).violations).toEqual([]);
  await page.getByRole('radio', { name: 'table' }).check();
  const buffer = Buffer.from('Time,Speed\ns,km/h\n0,fast\n');
  await page
    .getByLabel('Open a speed trace')
    .setInputFiles({ name: 'bad.csv', mimeType: 'text/csv', buffer });
  await expect(page.getByRole('alert')).toBeVisible();
  expect((await axe(page).analyze()).violations).toEqual([]);
});

test('the whole sheet stands in a wide window without scrolling', async ({ page }) => {
  await page.setViewportSize({ width: 1280, height: 800 });
  await openSheet(page);
  expect(await page.evaluate(() => document.documentElement.scrollHeight)).toBeLessThanOrEqual(800);
  await page.getByRole('button', { name: 'Pin this run' }).click();
  expect(await page.evaluate(() => document.documentElement.scrollHeight)).toBeLessThanOrEqual(800);
});

test('on a phone the tray moves the blanking of either axle', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  const { slider } = await openSheet(page);
  await page.getByRole('button', { name: '5 percent less, front' }).click();
  await expect(slider('Front blanking')).toHaveValue('65');
  await page.getByRole('radiogroup', { name: 'Axle at hand' }).getByRole('radio', { name: 'Rear' }).check();
  await slider('Blanking, rear').fill('20');
  await expect(slider('Rear blanking')).toHaveValue('20');
});

test('nothing moves when the first result arrives', async ({ page }) => {
  await page.addInitScript(() => {
    const shifts: number[] = [];
    Object.assign(window, { shifts });
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) shifts.push((entry as unknown as { value: number }).value);
    }).observe({ type: 'layout-shift', buffered: true });
  });
  await openSheet(page);
  const sum = await page.evaluate('window.shifts.reduce((sum, each) => sum + each, 0)');
  expect(sum).toBeLessThan(0.01);
});
