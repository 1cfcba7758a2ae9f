import type { Locator, Page } from '@playwright/test';
import { expect, test } from './fixtures.ts';
import { dragTo, openSheet } from './sheet.ts';

/** The list of phases with one of them open. */
async function openPhase(page: Page, name: RegExp): Promise<Locator> {
  await page.getByRole('radio', { name: 'phases', exact: true }).check();
  const editor = page.getByRole('region', { name: 'Phases' });
  await editor.locator('[data-act="row"]', { hasText: name }).press('Enter');
  return editor;
}

async function type(field: Locator, text: string): Promise<void> {
  await field.fill(text);
  await field.press('Enter');
}

test('a range or a step that is refused goes back and says what was expected', async ({ page }) => {
  const { slider, field } = await openSheet(page);
  const editor = await openPhase(page, /^2 Push/);
  await type(editor.getByRole('spinbutton', { name: 'Laps, typed' }), '18');
  await page.getByRole('radio', { name: 'chart', exact: true }).check();
  const alert = page.getByRole('alert');

  await slider('Laps').press('ArrowRight');
  await expect(alert).toHaveText(/^Expected 20, the laps of all phases\. 20 stays\.$/);
  await expect(slider('Laps')).toHaveValue('20');
  await dragTo(page, slider('Laps'), 0.7);
  await expect(slider('Laps')).toHaveValue('20');
  await expect(alert).toHaveCount(1);

  // another change of the stint, and what was said is past
  await field('Ambient').press('ArrowUp');
  await expect(alert).toHaveCount(0);

  await page.getByRole('button', { name: 'More: Laps' }).click();
  await expect(alert).toHaveText(/^Expected 20, the laps of all phases\. 20 stays\.$/);
  await expect(field('Laps')).toHaveValue('20');
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  await expect(alert).toHaveCount(0);
});

for (const [what, change] of [
  ['undo', (page: Page) => page.keyboard.press('Control+z')],
  ['another value', (page: Page) => page.getByRole('button', { name: 'Less: Ambient' }).press('Enter')],
  ['another stint', (page: Page) => page.getByLabel('Stint', { exact: true }).selectOption('restart')],
] as const) {
  test(`what the editor of phases refused is no longer said after ${what}`, async ({ page }) => {
    await openSheet(page);
    const editor = await openPhase(page, /^2 Push/);
    const remove = editor.getByRole('button', { name: 'Remove', exact: true });
    await remove.press('Enter');
    await editor.locator('[data-act="row"]', { hasText: /^1 Out-lap/ }).press('Enter');
    await remove.press('Enter');
    await editor.locator('[data-act="row"]', { hasText: /^1 In-lap/ }).press('Enter');
    await remove.press('Enter');
    await expect(page.getByRole('alert')).toHaveText('A stint needs at least one driven lap.');
    await change(page);
    await expect(page.getByRole('alert')).toHaveCount(0);
  });
}

test('an open phase that no lap is left for says so and can be duplicated', async ({ page }) => {
  const { field } = await openSheet(page);
  await page.getByLabel('Stint', { exact: true }).selectOption('hour');
  await type(field('Laps'), '28');
  const editor = await openPhase(page, /^8 Push, no lap left/);
  await editor.getByRole('button', { name: 'Duplicate', exact: true }).press('Enter');
  await expect(page.getByRole('alert')).toHaveCount(0);
  await expect(editor.locator('[data-act="row"]', { hasText: /^9 Push, 1\slap/ })).toBeVisible();
});

test('the range of a stop lies on its whole steps, and any value can be typed', async ({ page }) => {
  const { slider } = await openSheet(page);
  await page.getByLabel('Stint', { exact: true }).selectOption('hour');
  const editor = await openPhase(page, /^4 Stop/);
  const range = slider('Standing');
  await expect(range).toHaveValue('75');
  await range.press('End');
  await expect(range).toHaveAttribute('aria-valuetext', '600 s');
  await range.press('Home');
  await expect(range).toHaveAttribute('aria-valuetext', '5 s');
  await type(editor.getByRole('spinbutton', { name: 'Standing, typed' }), '73');
  await expect(range).toHaveAttribute('aria-valuetext', '73 s');
  await expect(range).toHaveValue('75');
  await range.press('ArrowLeft');
  await expect(range).toHaveAttribute('aria-valuetext', '70 s');
});
