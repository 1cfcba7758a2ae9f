import { gzipSync } from 'node:zlib';
import { expect, test } from './fixtures.ts';

test('the first view takes less than 130 kB of compressed scripts, the worker and the safe span included', async ({
  page,
}) => {
  const sizes = new Map<string, Promise<number>>();
  page.context().on('response', (response) => {
    const url = response.url();
    // a worker of the searches is the stint's once more, out of the cache
    if (!url.endsWith('.js') || sizes.has(url)) return;
    sizes.set(
      url,
      response.body().then((body) => gzipSync(body).length),
    );
  });
  // what the draws need, which come next, is not part of it: the span has to be there without
  await page.route('**/spread-*.js', () => undefined);
  await page.goto('/');
  await expect(page.locator('.sentence')).toContainText(/Safe on counted laps/);
  for (const part of ['page', 'first-run', 'worker', 'searches'])
    expect([...sizes.keys()].filter((url) => url.includes(`/${part}-`))).toHaveLength(1);
  const scripts = await Promise.all(sizes.values());
  expect(scripts.reduce((sum, size) => sum + size, 0)).toBeLessThan(130_000);
});
