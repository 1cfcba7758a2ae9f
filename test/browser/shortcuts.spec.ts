import type { Locator, Page } from '@playwright/test';
import { COMMANDS, SINGLE } from '../../web/frame/shortcuts.ts';
import { expect, test } from './fixtures.ts';
import { openSheet } from './sheet.ts';

const radio = (page: Page, name: string): Locator => page.getByRole('radio', { name, exact: true });

/** What is kept, printed and opened has no control to press. */
const WITHOUT_CONTROL = ['Ctrl S', 'Ctrl Shift S', 'Ctrl O', 'Ctrl P'];

test('every key of the list is said by a control that can be seen', async ({ page }) => {
  await openSheet(page);
  const listed = [...SINGLE, ...COMMANDS].flatMap(({ keys }) => keys);
  for (const key of listed.filter((each) => !WITHOUT_CONTROL.includes(each))) {
    const said = key.replace('Ctrl', 'Control').replaceAll(' ', '+');
    await expect(page.locator(`[aria-keyshortcuts~="${said}"]`).first(), key).toBeVisible();
  }
});

test('single keys take hold of a blanking, pin, choose the axle, the rung and the form, and play', async ({
  page,
}) => {
  const { slider } = await openSheet(page);
  await page.keyboard.press('r');
  await expect(slider('Rear blanking')).toBeFocused();
  await page.keyboard.press('f');
  await expect(slider('Front blanking')).toBeFocused();
  await page.keyboard.press('ArrowLeft');
  await expect(slider('Front blanking')).toHaveValue('69');
  await page.keyboard.press('p');
  await expect(page.getByRole('button', { name: 'Unpin' }).first()).toBeVisible();
  await page.keyboard.press('a');
  await expect(radio(page, 'rear')).toBeChecked();
  await page.keyboard.press('a');
  await expect(radio(page, 'front')).toBeChecked();
  await page.keyboard.press('2');
  await expect(radio(page, 'lap')).toBeChecked();
  await page.keyboard.press('3');
  await expect(radio(page, 'stint')).toBeChecked();
  await page.keyboard.press('6');
  await expect(radio(page, 'table')).toBeChecked();
  await page.keyboard.press('5');
  await page.keyboard.press('s');
  await expect(page.getByRole('button', { name: 'Pause' })).toBeVisible();
  await page.keyboard.press('s');
  await expect(page.getByRole('button', { name: 'Play' })).toBeVisible();
});

test('undo and redo go by the usual keys, but not while a number is typed', async ({ page }) => {
  const { slider, field } = await openSheet(page);
  await slider('Front blanking').fill('40');
  await field('Ambient').focus();
  await page.keyboard.press('Control+z');
  await expect(slider('Front blanking')).toHaveValue('40');
  await slider('Front blanking').focus();
  await page.keyboard.press('Control+z');
  await expect(slider('Front blanking')).toHaveValue('70');
  await page.keyboard.press('Control+Shift+z');
  await expect(slider('Front blanking')).toHaveValue('40');
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Control+y');
  await expect(slider('Front blanking')).toHaveValue('40');
});

test('single keys do nothing where a person types or chooses by letters', async ({ page }) => {
  const { field } = await openSheet(page);
  for (const typedIn of [field('Ambient'), page.getByLabel('Car', { exact: true })]) {
    await typedIn.focus();
    await page.keyboard.press('p');
    await page.keyboard.press('2');
  }
  await expect(page.getByRole('button', { name: 'Unpin' })).toHaveCount(0);
  await expect(radio(page, 'stint')).toBeChecked();
});

test('the question mark opens the list of keys, where single ones can be switched off for good', async ({
  page,
}) => {
  await openSheet(page);
  await page.keyboard.press('?');
  const heading = page.getByRole('heading', { name: 'Keys', exact: true });
  await expect(heading).toBeFocused();
  await expect(heading).toBeInViewport();
  await expect(page.locator('kbd').first()).toBeVisible();
  await page.getByRole('checkbox', { name: 'Single letters and digits are shortcuts' }).uncheck();
  await page.keyboard.press('Escape');
  await page.keyboard.press('2');
  await page.keyboard.press('?');
  await expect(radio(page, 'stint')).toBeChecked();
  await expect(heading).toBeHidden();
  await page.reload();
  await expect(page.locator('.sentence')).toContainText(/alibrated/);
  await page.keyboard.press('2');
  await expect(radio(page, 'stint')).toBeChecked();
});
