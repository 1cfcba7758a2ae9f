import { axe } from './axe.ts';
import { expect, test } from './fixtures.ts';
import { openSheet } from './sheet.ts';

for (const [width, height] of [
  [390, 844],
  [1024, 768],
  [1360, 800],
] as const) {
  test(`at ${width} pixels the table tells of disc, pedal and fluid, and axe finds nothing`, async ({
    page,
  }) => {
    await page.setViewportSize({ width, height });
    await openSheet(page);
    await expect(page.getByRole('heading', { name: /disc, pedal and fluid/ })).toHaveCount(0);
    await page.getByRole('radio', { name: 'table' }).check();
    const list = page.getByRole('region', { name: 'Front disc, pedal and fluid over the stint' });
    await expect(list).toContainText(
      /At most \d+\sK, at turn\s\d+ on lap\s\d+; above 200\sK in \d+ of all \d+ brakings, hard or not\./,
    );
    await expect(list).toContainText(
      /\d+\s% heavier at turn\s\d+ on lap\s\d+ than in the middle of the window/,
    );
    await expect(list).toContainText(/fluid at \d+\s°C after \d+\smin, \d+\sK below its wet boiling point/);
    const beyond = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    expect(beyond).toBeLessThanOrEqual(0);
    expect((await axe(page).analyze()).violations).toEqual([]);
  });
}

test('what the table tells of the pedal follows the blanking and the axle', async ({ page }) => {
  await page.setViewportSize({ width: 1360, height: 800 });
  const { field } = await openSheet(page);
  await page.getByRole('radio', { name: 'table' }).check();
  const pedal = page.getByRole('definition').filter({ hasText: /in the middle of the window/ });
  const before = (await pedal.textContent())!;
  await field('Front blanking').fill('100');
  await field('Front blanking').press('Enter');
  await expect(pedal).not.toHaveText(before);
  await page.getByRole('radio', { name: 'rear' }).check();
  await expect(
    page.getByRole('heading', { name: 'Rear disc, pedal and fluid over the stint' }),
  ).toBeVisible();
});
