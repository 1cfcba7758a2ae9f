import { expect, test } from './fixtures.ts';
import { openSheet } from './sheet.ts';

const parts = [
  'LapTrace',
  'AllBlankings',
  'LapTable',
  'FeelList',
  'Ledger',
  'PhaseEditor',
  'TapeFields',
  'WindowFields',
  'trace-file',
  'library',
];

test('once the page is at rest, all that it shows later is there without the network', async ({ page }) => {
  const loaded = new Set<string>();
  page.on('requestfinished', (request) => loaded.add(request.url().split('/').at(-1) ?? ''));
  await openSheet(page);
  const missing = (): string[] =>
    parts.filter((part) => ![...loaded].some((name) => name.startsWith(`${part}-`) && name.endsWith('.js')));
  await expect.poll(missing, { timeout: 30_000 }).toEqual([]);
  await page.context().setOffline(true);
  await page.getByRole('radio', { name: 'lap', exact: true }).check();
  await expect(page.getByText(/^Lap\s\d+, push: front face up to/)).toBeVisible();
  await page.getByRole('radio', { name: 'stint', exact: true }).check();
  await page.getByRole('radio', { name: 'table', exact: true }).check();
  await expect(page.getByRole('heading', { name: /disc, pedal and fluid/ })).toBeVisible();
  await page.getByRole('radio', { name: 'phases', exact: true }).check();
  await expect(page.getByRole('heading', { name: 'Phases', exact: true })).toBeVisible();
  await page.getByText('Tape, front').click();
  await expect(page.getByText('Strips of tape, laid from the outboard edge')).toBeVisible();
  await page.getByLabel('Car', { exact: true }).selectOption('light');
  await expect(page.getByText('Light club car').last()).toBeVisible();
});

test('what cannot be loaded says so where it would stand, and the picture stays', async ({
  page,
  complaints,
}) => {
  await page.route('**/LapTable-*.js', (route) => route.abort());
  const { sentence } = await openSheet(page);
  await page.getByRole('radio', { name: 'table', exact: true }).check();
  await expect(page.getByRole('alert')).toHaveText(/could not be loaded/);
  await page.getByRole('radio', { name: 'chart', exact: true }).check();
  await expect(page.getByRole('alert')).toHaveCount(0);
  complaints.length = 0; // the browser says so in its console, too
  await expect(sentence).toHaveText(/Front 70\s% blanked/);
});

test('the page marks when its first stint is shown', async ({ page }) => {
  await openSheet(page);
  const marks = await page.evaluate(() => performance.getEntriesByName('first stint').length);
  expect(marks).toBe(1);
});
