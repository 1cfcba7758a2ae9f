import { gzipSync } from 'node:zlib';
import type { Page, Request } from '@playwright/test';
import { expect, test } from './fixtures.ts';

/** All scripts that a page and its workers ask for. */
function scriptsOf(page: Page): Request[] {
  const asked: Request[] = [];
  page.context().on('requestfinished', (request) => {
    // a worker of the searches is the stint's once more, out of the cache
    const isNew = asked.every((other) => other.url() !== request.url());
    if (request.url().endsWith('.js') && isNew) asked.push(request);
  });
  return asked;
}

async function compressed(scripts: Request[]): Promise<number> {
  const bodies = await Promise.all(scripts.map(async (script) => (await script.response())!.body()));
  return bodies.reduce((sum, body) => sum + gzipSync(body).length, 0);
}

const named = (scripts: Request[], name: string): Request[] =>
  scripts.filter((script) => script.url().includes(`/${name}-`));

test('the first view takes less than 130 kB of compressed scripts, the worker included', async ({ page }) => {
  const scripts = scriptsOf(page);
  await page.goto('/');
  await expect(page.locator('.sentence')).toContainText(/Safe on counted laps/);
  const shown_ms = await page.evaluate(
    () => performance.timeOrigin + performance.getEntriesByName('first stint')[0]!.startTime,
  );
  const first = scripts.filter((script) => script.timing().startTime < shown_ms);
  for (const part of ['page', 'first-run', 'worker']) expect(named(first, part)).toHaveLength(1);
  expect(await compressed(first)).toBeLessThan(130_000);
});

test('the safe span comes with 4 kB more', async ({ page }) => {
  // what is loaded at rest and what the draws need is not part of it: the span has to be there without
  await page.route(
    /(spread|TrustPage|PhaseEditor|LapTrace|LapTable|FeelList|Tray|Fields|trace)-.*\.js$/,
    () => undefined,
  );
  const scripts = scriptsOf(page);
  await page.goto('/');
  await expect(page.locator('.sentence')).toContainText(/Safe on counted laps/);
  expect(named(scripts, 'searches')).toHaveLength(1);
  expect(await compressed(named(scripts, 'searches'))).toBeLessThan(4_000);
});
