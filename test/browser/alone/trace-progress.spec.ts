import { writeFileSync } from 'node:fs';
import { expect, test } from '../fixtures.ts';
import { openSheet } from '../sheet.ts';
import { long } from '../traces.ts';

test('600 000 rows show their progress, leave the page at hand and can be cancelled', async ({
  page,
}, info) => {
  const { sentence, slider } = await openSheet(page);
  const opener = page.getByLabel('Open a speed trace');
  const path = info.outputPath('long.csv');
  writeFileSync(path, long(600_000));
  await opener.setInputFiles(path);
  const progress = page.getByRole('progressbar', { name: 'Reading long.csv' });
  await expect(progress).toBeVisible();
  await slider('Front blanking').fill('35');
  await expect(sentence).toContainText(/35\s%/, { timeout: 3_000 });
  await page.getByRole('button', { name: 'Cancel' }).click();
  await expect(progress).toHaveCount(0);
  await expect(page.getByRole('heading', { name: 'long.csv' })).toHaveCount(0);

  await page.evaluate(() => {
    const tasks: number[] = [];
    Object.assign(window, { tasks });
    new PerformanceObserver((list) => {
      for (const { duration } of list.getEntries()) tasks.push(duration);
    }).observe({ type: 'longtask' });
  });
  await opener.setInputFiles(path);
  await expect(progress).toBeVisible();
  const shares = new Set<string>();
  while (await progress.isVisible()) {
    shares.add((await progress.getAttribute('value', { timeout: 1000 }).catch(() => null)) ?? '');
  }
  await expect(page.getByText(/Understood as 600\s000 rows/)).toBeVisible();
  expect(shares.size, 'steps of progress that were seen').toBeGreaterThan(3);
  const tasks = await page.evaluate(() => (window as unknown as { tasks: number[] }).tasks);
  expect(Math.max(0, ...tasks), 'longest time that the page could not answer [ms]').toBeLessThan(200);
});
