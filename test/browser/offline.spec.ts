import { fileURLToPath } from 'node:url';
import type { Page } from '@playwright/test';
import { expect, test as base } from './fixtures.ts';
import { openSite, type Site } from './site.ts';

const dist = process.env['EMBERLAP_DIST'] ?? fileURLToPath(new URL('../../dist/', import.meta.url));

const test = base.extend<{ site: Site }>({
  site: async ({ browserName: _ }, use) => {
    const site = await openSite(dist);
    await use(site);
    await site.shut();
  },
  baseURL: async ({ site }, use) => use(site.url),
});
test.use({ serviceWorkers: 'allow' });
test.setTimeout(180_000);

const READY = /Ready without network/;

async function open(page: Page): Promise<void> {
  await page.goto('./');
  await expect(page.locator('.sentence')).toContainText(/alibrated/);
}

async function openUntilReady(page: Page): Promise<void> {
  await open(page);
  await expect(page.getByText(READY)).toBeVisible({ timeout: 40_000 });
}

test('after one visit the whole job works without network, in whatever folder the page stands', async ({
  page,
  context,
  site,
}) => {
  await openUntilReady(page);
  await context.setOffline(true);
  await site.shut();
  await page.reload();
  await expect(page.locator('.sentence')).toContainText(/alibrated/);
  await page.getByLabel('Car', { exact: true }).selectOption('light');
  await expect(page.getByText('Light club car').last()).toBeVisible();
  await page.getByLabel('Circuit', { exact: true }).selectOption('slow');
  await expect(page.locator('footer')).toContainText('Tibbinlow');
  for (const legend of ['Rung', 'Form']) {
    const all = page.getByRole('radiogroup', { name: legend }).getByRole('radio');
    for (let i = 0; i < (await all.count()); i++) {
      await all.nth(i).check();
      await expect(all.nth(i)).toBeChecked();
    }
  }
  await page.getByText('Window, front').click();
  await page.getByRole('button', { name: 'Sheet', exact: true }).click();
  await expect(page.getByRole('heading', { name: 'Keys', exact: true })).toBeVisible();
  await page.keyboard.press('Escape');
  await page.getByLabel('Open a speed trace').setInputFiles({
    name: 'short.csv',
    mimeType: 'text/csv',
    buffer: Buffer.from('Time,Speed\ns,km/h\n0,fast\n'),
  });
  await expect(page.getByRole('alert').first()).toBeVisible();
  await page.getByRole('link', { name: 'How far to trust this' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toContainText(/trust/i);
  await expect(page.getByText(/could not be loaded/)).toHaveCount(0);
});

test('nothing is fetched for later before the first stint is shown', async ({ page, site }) => {
  await openUntilReady(page);
  const shown_ms = await page.evaluate(
    () => performance.timeOrigin + performance.getEntriesByName('first stint')[0]!.startTime,
  );
  expect(site.asked.get('service-worker.js')).toBeGreaterThan(shown_ms);
});

test('a new version is offered, left for later, and taken without losing the work', async ({
  page,
  site,
}) => {
  await openUntilReady(page);
  const front = page.getByRole('slider', { name: 'Front blanking', exact: true });
  await front.fill('40');
  await expect(page.getByText(/saved \d\d:\d\d/)).toBeVisible();
  site.renew('Emberlap renewed');
  await page.reload();
  const offer = page.getByRole('button', { name: 'New version' });
  await expect(offer).toBeVisible({ timeout: 40_000 });
  await expect(page).toHaveTitle('Emberlap');
  await offer.click();
  await expect(page.getByText('A new version is ready. Taking it loads')).toBeVisible();
  await page.getByRole('button', { name: 'Later', exact: true }).click();
  await expect(offer).toHaveCount(0);
  await expect(page).toHaveTitle('Emberlap');

  await page.reload();
  await offer.click({ timeout: 40_000 });
  await page.getByRole('button', { name: 'Take it now' }).click();
  await expect(page).toHaveTitle('Emberlap renewed');
  await expect(front).toHaveValue('40');
});

test('a tab whose version another tab has left behind says so and goes on', async ({
  page,
  context,
  site,
}) => {
  await openUntilReady(page);
  site.renew('Emberlap renewed');
  const other = await context.newPage();
  await open(other);
  await other.getByRole('button', { name: 'New version' }).click({ timeout: 40_000 });
  await other.getByRole('button', { name: 'Take it now' }).click();
  await expect(other).toHaveTitle('Emberlap renewed');
  await page.bringToFront();
  await page.getByRole('button', { name: 'New version' }).click();
  await expect(page.getByText('Another tab has taken a new version').last()).toBeVisible();
  await page.getByRole('button', { name: 'Later', exact: true }).click();
  await page.getByRole('slider', { name: 'Front blanking', exact: true }).fill('35');
  await expect(page.locator('.sentence')).toContainText(/35\s%/);
});
