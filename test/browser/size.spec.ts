import { gzipSync } from 'node:zlib';
import { expect, test } from './fixtures.ts';
import { openSheet } from './sheet.ts';

test('the first view takes less than 150 kB of compressed scripts, the worker included', async ({ page }) => {
  const sizes: Promise<number>[] = [];
  page.context().on('response', (response) => {
    if (response.url().endsWith('.js')) sizes.push(response.body().then((body) => gzipSync(body).length));
  });
  await openSheet(page);
  const scripts = await Promise.all(sizes);
  expect(scripts).toHaveLength(2);
  expect(scripts.reduce((sum, size) => sum + size, 0)).toBeLessThan(150_000);
});
