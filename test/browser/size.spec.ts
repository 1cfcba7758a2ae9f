import { gzipSync } from 'node:zlib';
import { expect, test } from './fixtures.ts';
import { openSheet } from './sheet.ts';

test('the first view takes less than 150 kB of compressed scripts, the worker included', async ({ page }) => {
  const sizes = new Map<string, Promise<number>>();
  page.context().on('response', (response) => {
    const url = response.url();
    // the worker of the safe span is the stint's once more, out of the cache
    if (!url.endsWith('.js') || sizes.has(url)) return;
    sizes.set(
      url,
      response.body().then((body) => gzipSync(body).length),
    );
  });
  const { sentence } = await openSheet(page);
  await expect(sentence).toContainText(/Safe on counted laps/);
  expect(sizes.size).toBe(2);
  const scripts = await Promise.all(sizes.values());
  expect(scripts.reduce((sum, size) => sum + size, 0)).toBeLessThan(150_000);
});
