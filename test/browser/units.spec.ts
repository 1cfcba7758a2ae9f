import { readFile } from 'node:fs/promises';
import type { Page } from '@playwright/test';
import { expect, test } from './fixtures.ts';
import { dragTo, openSheet } from './sheet.ts';

async function choose(page: Page, ...units: { group: string; unit: string }[]): Promise<void> {
  await page.getByRole('button', { name: 'Sheet', exact: true }).click();
  for (const { group, unit } of units) {
    const choice = page.getByRole('radiogroup', { name: group, exact: true });
    if (!(await choice.isVisible())) await page.getByText('Each by itself').click();
    await choice.getByRole('radio', { name: unit, exact: true }).check();
  }
  await page.keyboard.press('Escape');
  if (await page.locator('#menu').isVisible()) await page.keyboard.press('Escape');
  await expect(page.locator('#menu')).toBeHidden();
}

const US = { group: 'Units', unit: 'US' };
const METRIC = { group: 'Units', unit: 'Metric' };

/** The sheet as it is written to a file. */
async function saved(page: Page): Promise<string> {
  await page.getByRole('button', { name: 'Sheet', exact: true }).click();
  const file = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save as copy' }).click();
  return readFile(await (await file).path(), 'utf8');
}

const chart = '.chart svg text';

test('units are switched for sentence, axis, table and fields, and come back with the page', async ({
  page,
}) => {
  const { sentence, field, slider } = await openSheet(page);
  await expect(sentence).toContainText(/ by \d+\sK/);
  await choose(page, US);
  await expect(sentence).toContainText(/ by \d+\s°F/);
  await expect(sentence).not.toContainText(/\d\s(K|°C)\b/);
  await expect(page.locator(chart).getByText('°F', { exact: true }).first()).toBeAttached();
  await expect(page.locator(chart).getByText('1202', { exact: true }).first()).toBeAttached();
  await expect(page.locator(chart).getByText('1400', { exact: true }).first()).toBeAttached();
  await expect(field('Ambient')).toHaveValue(/^79\s°F$/);
  await expect(field('Altitude')).toHaveValue(/^689\sft$/);
  await expect(slider('Ambient')).toHaveAttribute('min', '-22');
  await expect(slider('Altitude')).toHaveAttribute('max', '9850');
  await expect(slider('Front blanking')).toHaveAttribute('aria-valuetext', /\d+\s°F to \d+\s°F/);
  await expect(page.getByText('4.33 × 3.94 in')).toBeVisible();
  await expect(page.locator('footer')).toContainText(/79\s°F, 689\sft/);
  await page.getByRole('radio', { name: 'table', exact: true }).check();
  await expect(page.getByRole('columnheader', { name: /Face max,\s°F/ })).toBeVisible();
  await expect(page.getByText(/At most \d+\s°F, /)).toBeVisible();
  await page.reload();
  await expect(sentence).toContainText(/ by \d+\s°F/);
  await expect(field('Ambient')).toHaveValue(/^79\s°F$/);
});

test('nothing of it is in the sheet that is saved, nor in its hash', async ({ page }) => {
  await page.addInitScript(() => {
    // saves by a download, where a test can read it
    delete (window as { showOpenFilePicker?: unknown }).showOpenFilePicker;
  });
  await openSheet(page);
  const hash = await page.locator('.hash').textContent();
  const before = await saved(page);
  await choose(page, US);
  await expect(page.locator('.hash')).toHaveText(hash ?? '');
  expect(await saved(page)).toBe(before);
  expect(before).toContain('"ambient_C": 26');
});

test('a field takes either unit, answers nonsense with the range, and steps by round steps', async ({
  page,
}) => {
  const { field, slider } = await openSheet(page);
  await field('Ambient').fill('80F');
  await field('Ambient').press('Enter');
  await expect(field('Ambient')).toHaveValue(/^26\.7\s°C$/);
  await choose(page, US);
  await expect(field('Ambient')).toHaveValue(/^80\s°F$/);
  await page.getByRole('button', { name: 'More: Ambient' }).click();
  await expect(field('Ambient')).toHaveValue(/^81\s°F$/);
  await field('Ambient').fill('30 °C');
  await field('Ambient').press('Enter');
  await expect(field('Ambient')).toHaveValue(/^86\s°F$/);
  await field('Ambient').fill('hot');
  await field('Ambient').press('Enter');
  await expect(page.getByRole('alert')).toHaveText(
    /^Expected \u221222 to 131 °F, got “hot”\. 86\s°F stays\.$/,
  );
  await field('Gap to the car ahead').fill('50 ft');
  await field('Gap to the car ahead').press('Enter');
  await expect(field('Gap to the car ahead')).toHaveValue(/^50\sft$/);
  await slider('Gap to the car ahead').press('ArrowRight');
  await expect(field('Gap to the car ahead')).toHaveValue(/^55\sft$/);
  await choose(page, METRIC);
  await expect(field('Gap to the car ahead')).toHaveValue(/^16\.8\sm$/);
});

test('dragging works in the other units, and one drag is one step back', async ({ page }) => {
  const { slider, field } = await openSheet(page);
  await choose(page, US);
  const hash = await page.locator('.hash').textContent();
  await dragTo(page, slider('Ambient'), 0.9);
  await expect(field('Ambient')).toHaveValue(/^11\d\s°F$/);
  await expect(page.locator('.hash')).not.toHaveText(hash ?? '');
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(field('Ambient')).toHaveValue(/^79\s°F$/);
  await expect(page.locator('.hash')).toHaveText(hash ?? '');
});

test('each unit is chosen by itself', async ({ page }) => {
  const { field } = await openSheet(page);
  await choose(page, { group: 'Length', unit: 'in, ft' });
  await expect(field('Altitude')).toHaveValue(/^689\sft$/);
  await expect(field('Ambient')).toHaveValue(/^26\s°C$/);
  await page.getByRole('radio', { name: 'lap', exact: true }).check();
  await expect(page.locator(chart).getByText('mi', { exact: true })).toBeVisible();
  await expect(page.locator(chart).getByText('km/h', { exact: true })).toBeVisible();
  await choose(page, { group: 'Speed', unit: 'mph' });
  await expect(page.locator(chart).getByText('mph', { exact: true })).toBeVisible();
  await expect(page.getByText(/after the line, \d+\smph/).first()).toBeVisible();
});
