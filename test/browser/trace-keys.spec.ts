import { expect, test } from './fixtures.ts';
import { openByKeys, tabTo, typeChoice } from './keys.ts';
import { openSheet } from './sheet.ts';
import { openQuestion, wrongUnit } from './traces.ts';

test('an open question is answered, columns are named and the stint is run, by keys alone', async ({
  page,
}) => {
  await openSheet(page);
  await openByKeys(page, 'no-header.csv', openQuestion());
  const heading = page.getByRole('heading', { name: 'no-header.csv' });
  await expect(heading).toBeFocused();
  const question = page.getByRole('group', { name: /one number or two\?/ });
  await expect(question).toBeVisible();
  const run = page.getByRole('button', { name: 'Run the stint on this trace' });
  await expect(run).toHaveCount(0);
  await tabTo(page, question.getByRole('button', { name: /^One/ }));
  await page.keyboard.press('Enter');
  await expect(question).toHaveCount(0);
  await expect(heading).toBeFocused();

  const speed = page.getByLabel('column 2: Used as');
  if ((await speed.inputValue()) !== 'speed') {
    await tabTo(page, page.getByLabel('column 1: Used as'));
    await typeChoice(page, page.getByLabel('column 1: Used as'), 'time');
    await tabTo(page, speed);
    await typeChoice(page, speed, 'speed');
    await expect(speed).toBeFocused();
  }
  await tabTo(page, run);
  await page.keyboard.press('Enter');
  await expect(page.getByRole('contentinfo')).toContainText('no-header.csv');
  await expect(page.getByLabel('Open a speed trace')).toBeFocused();
});

test('a wrong unit is corrected, another lap chosen, the stint run and taken back, by keys alone', async ({
  page,
}) => {
  await openSheet(page);
  const before = await page.locator('.hash').textContent();
  await openByKeys(page, 'logger.csv', wrongUnit());
  await expect(page.getByText(/Understood as 3\s600 rows/)).toBeVisible();

  const unit = page.getByLabel('Speed: Unit');
  await tabTo(page, unit);
  await typeChoice(page, unit, 'mph');
  await expect(page.getByRole('columnheader', { name: /Speed, mph/ })).toBeVisible();
  await expect(unit).toBeFocused();

  const laps = page.getByRole('radio', { name: /^Lap \d/ });
  const first = page.getByRole('radio', { name: /^Lap \d/, checked: true });
  await tabTo(page, first);
  await page.keyboard.press('ArrowDown');
  const chosen = page.getByRole('radio', { name: /^Lap \d/, checked: true });
  await expect(chosen).toBeFocused();
  expect(await laps.count()).toBeGreaterThan(2);
  const lap = /^Lap (\d+)/.exec((await chosen.getAttribute('aria-label')) ?? '')?.[1];

  const run = page.getByRole('button', { name: 'Run the stint on this trace' });
  await expect(run).toBeVisible();
  await tabTo(page, run);
  await page.keyboard.press('Enter');
  await expect(page.getByRole('contentinfo')).toContainText(`logger.csv, lap ${lap}`);
  await expect(page.getByText(`The stint is run on logger.csv, lap ${lap}.`)).toHaveCount(1);
  await expect(page.getByLabel('Open a speed trace')).toBeFocused();
  await page.keyboard.press('Control+z');
  await expect(page.getByRole('contentinfo')).not.toContainText('logger.csv');
  await expect(page.locator('.hash')).toHaveText(before ?? '');
});

test('starts of laps are given by keys: typed, refused one by one, added at a moment and removed', async ({
  page,
}) => {
  await openSheet(page);
  await openByKeys(page, 'logger.csv', wrongUnit());
  const by = page.getByLabel('Laps by');
  await tabTo(page, by);
  await typeChoice(page, by, 'times that I give');

  const typed = page.getByLabel(/^Lap starts since/);
  await tabTo(page, typed);
  await page.keyboard.press('Control+a');
  await page.keyboard.type('0, fast, 1:36.4, 9000');
  await page.keyboard.press('Enter');
  const alert = page.getByRole('alert').filter({ hasText: 'fast' });
  await expect(alert.getByRole('listitem')).toHaveCount(2);
  await page.keyboard.press('Control+a');
  await page.keyboard.type('0, 1:36.4');
  await page.keyboard.press('Enter');
  await expect(alert).toHaveCount(0);
  const laps = page.getByRole('radio', { name: /^Lap \d/ });
  await expect(laps).toHaveCount(2);

  const moment = page.getByRole('slider', { name: 'Moment in the file' });
  await tabTo(page, moment);
  await page.keyboard.press('End');
  await page.keyboard.press('PageDown');
  await tabTo(page, page.getByRole('button', { name: /^Add lap start at/ }));
  await page.keyboard.press('Enter');
  await expect(laps).toHaveCount(3);
  const starts = page.getByRole('list', { name: 'Lap starts' });
  await tabTo(page, starts.getByRole('button').last());
  await page.keyboard.press('Enter');
  await expect(laps).toHaveCount(2);
  await expect(starts.getByRole('button').last()).toBeFocused();
  await expect(typed).toHaveValue('0:00, 1:36.4');
});

test('Escape puts the file away, but not while a time is typed', async ({ page }) => {
  await openSheet(page);
  await openByKeys(page, 'logger.csv', wrongUnit());
  const heading = page.getByRole('heading', { name: 'logger.csv' });
  const by = page.getByLabel('Laps by');
  await expect(by).toBeVisible();
  await by.selectOption({ label: 'times that I give' });
  await page.getByLabel(/^Lap starts since/).focus();
  await page.keyboard.press('Escape');
  await expect(heading).toBeVisible();
  await heading.focus();
  await page.keyboard.press('Escape');
  await expect(heading).toHaveCount(0);
  await expect(page.getByLabel('Open a speed trace')).toBeFocused();
});
