import { axe } from './axe.ts';
import type { Locator, Page } from '@playwright/test';
import { expect, test } from './fixtures.ts';
import { openSheet } from './sheet.ts';

/** Presses a button as a keyboard does. */
async function press(button: Locator): Promise<void> {
  await button.focus();
  await button.press('Enter');
}

/** Takes the one of a choice that arrow keys reach from the one that is checked. */
async function choose(page: Page, group: string, name: string | RegExp): Promise<void> {
  const radios = page.getByRole('radiogroup', { name: group, exact: true }).getByRole('radio');
  await radios.and(page.locator(':checked')).focus();
  const wanted = page.getByRole('radiogroup', { name: group, exact: true }).getByRole('radio', { name });
  for (let i = 0; i < (await radios.count()); i++) {
    if (await wanted.isChecked()) return;
    await page.keyboard.press('ArrowRight');
  }
  throw new Error(`choice: ${group}`);
}

async function type(field: Locator, text: string): Promise<void> {
  await field.fill(text);
  await field.press('Enter');
}

const button = (page: Page, name: string): Locator => page.getByRole('button', { name, exact: true });
const tapeOf = (page: Page, axle: string): Locator =>
  page.locator('summary').filter({ hasText: `Tape, ${axle}` });
const words = (page: Page, axle: string): Locator =>
  page.getByRole('region', { name: `${axle} mouth` }).getByText(/panel/);

test('by keyboard a blanking is set to whole strips of 38 mm', async ({ page }) => {
  const { slider, field } = await openSheet(page);
  await press(tapeOf(page, 'front'));
  await choose(page, 'Strip of tape, front', /38/);
  await expect(words(page, 'front')).toHaveText(/^2 strips of 38\smm give 69\s%; panel\sD is 75\s%$/);
  await press(button(page, 'One strip less, front'));
  await expect(field('Front blanking')).toHaveValue(/^69\.1\s%$/);
  await expect(slider('Front blanking')).toHaveAttribute(
    'aria-valuetext',
    /^69 percent blanked, 2 strips of 38\smm,/,
  );
  await press(button(page, 'One strip more, front'));
  await expect(field('Front blanking')).toHaveValue(/^100\s%$/);
  await expect(button(page, 'One strip more, front')).toBeDisabled();
  await press(button(page, 'Undo'));
  await expect(field('Front blanking')).toHaveValue(/^69\.1\s%$/);
  await type(field('Strip width, front'), '30');
  await expect(words(page, 'front')).toHaveText(/^3 strips of 30\smm give 82\s%/);
});

test('a panel letter sets its percent and is marked until the blanking leaves it', async ({ page }) => {
  const { slider } = await openSheet(page);
  const panel = page
    .getByRole('group', { name: 'Panels, front' })
    .getByRole('button', { name: 'Panel C, 60 percent' });
  await expect(panel).toHaveAttribute('aria-pressed', 'false');
  await press(panel);
  await expect(slider('Front blanking')).toHaveValue('60');
  await expect(panel).toHaveAttribute('aria-pressed', 'true');
  await expect(slider('Front blanking')).toHaveAttribute(
    'aria-valuetext',
    /^60 percent blanked, panel C, 40 percent open/,
  );
  await slider('Front blanking').press('ArrowRight');
  await expect(panel).toHaveAttribute('aria-pressed', 'false');
});

test('every letter stands apart from its neighbour and is at least 24 pixels each way', async ({ page }) => {
  await page.setViewportSize({ width: 1360, height: 800 });
  await openSheet(page);
  for (const axle of ['front', 'rear']) {
    const letters = await page
      .getByRole('group', { name: `Panels, ${axle}` })
      .getByRole('button')
      .all();
    const boxes = await Promise.all(letters.map(async (letter) => (await letter.boundingBox())!));
    expect(boxes).toHaveLength(5);
    for (const [i, box] of boxes.entries()) {
      expect(Math.min(box.width, box.height)).toBeGreaterThanOrEqual(24);
      if (i > 0) expect(box.x).toBeGreaterThanOrEqual(boxes[i - 1]!.x + boxes[i - 1]!.width - 0.01);
    }
  }
});

test('a set of panels is typed; each bad entry is answered and nothing is lost', async ({ page }) => {
  await openSheet(page);
  await press(tapeOf(page, 'front'));
  const set = page.getByRole('textbox', { name: /^Panels A, B, C/ });
  await type(set, '0, half, 120');
  await expect(page.getByRole('alert').getByRole('listitem')).toHaveText([/“half”/, /“120”/]);
  await expect(set).toHaveValue('0, half, 120');
  const letters = page.getByRole('group', { name: 'Panels, front' }).getByRole('button');
  await expect(letters).toHaveCount(5);
  await type(set, '70, 0, 30');
  await expect(page.getByRole('alert')).toHaveCount(0);
  await expect(set).toHaveValue('0, 30, 70');
  await expect(letters).toHaveCount(3);
  await expect(page.getByRole('button', { name: 'Panel C, 70 percent' })).toHaveAttribute(
    'aria-pressed',
    'true',
  );
});

test('by keyboard left and right are parted, set, made equal and brought back', async ({ page }) => {
  const { slider, field, sentence } = await openSheet(page);
  await press(tapeOf(page, 'front'));
  await choose(page, 'Left and right', 'differ');
  await expect(field('Front left blanking')).toHaveValue(/^70\s%$/);
  await choose(page, 'Side in hand, front', /right/);
  await type(field('Front right blanking'), '62');
  await expect(page.getByText(/The lever moves the right side only/)).toBeVisible();
  await expect(sentence).toHaveText(/^Front left 70\s% blanked runs too hot/);
  await type(field('Inlet recovery, front right'), '0.6');
  await expect(slider('Inlet recovery, front right')).toHaveValue('0.6');
  await choose(page, 'Side in hand, front', /left/);
  await expect(slider('Inlet recovery, front left')).toHaveValue('0.85');
  await expect(field('Front left blanking')).toHaveValue(/^70\s%$/);
  expect((await axe(page).analyze()).violations).toEqual([]);

  const hash = page.locator('.hash');
  const parted = (await hash.textContent()) ?? '';
  await choose(page, 'Left and right', 'equal');
  await expect(field('Front blanking')).toHaveValue(/^70\s%$/);
  await expect(sentence).toHaveText(/^Front 70\s% blanked/);
  await press(button(page, 'Undo'));
  await expect(hash).toHaveText(parted);
  await choose(page, 'Side in hand, front', /right/);
  await expect(field('Front right blanking')).toHaveValue(/^62\s%$/);
});

test('with the sides apart the sheet still stands without scrolling', async ({ page }) => {
  await page.setViewportSize({ width: 1360, height: 800 });
  await openSheet(page);
  await press(tapeOf(page, 'front'));
  await choose(page, 'Left and right', 'differ');
  await press(tapeOf(page, 'front'));
  expect(await page.evaluate(() => document.documentElement.scrollHeight)).toBeLessThanOrEqual(800);
});

test('on a phone the tray says which side it moves, and moves that one only', async ({ page }) => {
  await page.setViewportSize({ width: 320, height: 700 });
  const { field } = await openSheet(page);
  await press(tapeOf(page, 'front'));
  await choose(page, 'Left and right', 'differ');
  await choose(page, 'Side at hand, front', /right/);
  await page.getByRole('button', { name: '5 percent less, front right' }).click();
  await expect(field('Front right blanking')).toHaveValue(/^65\s%$/);
  await choose(page, 'Side at hand, front', /left/);
  await expect(field('Front left blanking')).toHaveValue(/^70\s%$/);
  expect(
    await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth),
  ).toBeLessThanOrEqual(0);
  expect((await axe(page).analyze()).violations).toEqual([]);
});
