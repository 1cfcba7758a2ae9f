import { fileURLToPath } from 'node:url';
import type { Page } from '@playwright/test';
import { expect, test } from './fixtures.ts';
import { openSheet } from './sheet.ts';

const trace = fileURLToPath(new URL('../../scenarios/traces/sorrelby-heavy.csv', import.meta.url));

const news = (page: Page) => page.locator('.news');
const front = (page: Page) => page.getByRole('slider', { name: 'Front blanking', exact: true });

async function linkOf(page: Page): Promise<string> {
  await page.getByRole('button', { name: 'Sheet', exact: true }).click();
  await page.getByRole('button', { name: 'Share a link' }).click();
  const link = await page.getByLabel('Link', { exact: true }).inputValue();
  await page.keyboard.press('Escape');
  return link;
}

test('a link opens the same sheet elsewhere, and asks nobody for it', async ({ page, browser, baseURL }) => {
  await openSheet(page);
  await front(page).press('Home');
  await page.getByLabel('Car', { exact: true }).selectOption('light');
  await expect(page.getByLabel('Car', { exact: true })).toHaveValue('light');
  await page.getByRole('slider', { name: 'Ambient' }).press('End');
  const link = await linkOf(page);
  expect(link.startsWith(`${baseURL}/#s=`)).toBe(true);
  expect(link.length).toBeLessThan(200);

  const elsewhere = await browser.newContext();
  const other = await elsewhere.newPage();
  const asked: string[] = [];
  other.on('request', (request) => asked.push(request.url()));
  await other.goto(link);
  await expect(other.getByLabel('Car', { exact: true })).toHaveValue('light');
  for (const name of ['Front blanking', 'Ambient']) {
    const value = await page.getByRole('slider', { name, exact: true }).inputValue();
    await expect(other.getByRole('slider', { name, exact: true })).toHaveValue(value);
  }
  await expect(news(other)).toContainText('This is the sheet of the link. Undo brings back what was here.');
  expect(asked.filter((url) => url.includes('s='))).toEqual([]);
  await expect.poll(() => other.evaluate(() => location.hash)).toBe('');
  await other.getByRole('button', { name: 'Undo', exact: true }).click();
  await expect(front(other)).toHaveValue('70');
  await elsewhere.close();
});

test('a link that is opened over work of one own takes nothing away', async ({ page }) => {
  await openSheet(page);
  const link = await linkOf(page);
  await front(page).press('Home');
  await expect(page.getByRole('banner')).toContainText(/saved/i);
  await page.waitForTimeout(1000);
  // in the address of the page that is open, and of one that is opened anew
  await page.evaluate((hash) => (location.hash = hash), new URL(link).hash);
  await expect(front(page)).toHaveValue('70');
  const undo = page.getByRole('button', { name: 'Undo', exact: true });
  await expect(undo).toHaveAccessibleDescription(/link/);
  await undo.click();
  await expect(front(page)).toHaveValue('0');
  await page.waitForTimeout(1000);
  await page.goto('about:blank');
  await page.goto(link);
  await expect(front(page)).toHaveValue('70');
  await expect(news(page)).toContainText('This is the sheet of the link.');
  await undo.click();
  await expect(front(page)).toHaveValue('0');
  await undo.click();
  await expect(front(page)).toHaveValue('70');
});

test('a broken link says so in one sentence, and what was here is still here', async ({ page }) => {
  await openSheet(page);
  await front(page).press('Home');
  const link = await linkOf(page);
  await page.waitForTimeout(1000);
  await page.goto('about:blank');
  await page.goto(link.slice(0, -7));
  await expect(news(page)).toContainText(
    'The link is broken: a part of it is missing or was changed on the way. What was here is still here.',
  );
  await expect(front(page)).toHaveValue('0');
});

test('a stint on a measured lap offers its file instead of a link', async ({ page }) => {
  await openSheet(page);
  await page.getByLabel('Open a speed trace').setInputFiles(trace);
  await page.getByRole('button', { name: 'Run the stint on this trace' }).click();
  await page.getByRole('button', { name: 'Sheet', exact: true }).click();
  await page.getByRole('button', { name: 'Share a link' }).click();
  await expect(
    page.getByText('A stint on a measured lap does not fit into a link. Save it and send the file.'),
  ).toBeVisible();
});
