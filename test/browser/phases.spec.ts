import { axe } from './axe.ts';
import type { Locator, Page } from '@playwright/test';
import { expect, test } from './fixtures.ts';
import { openSheet } from './sheet.ts';

/** The list of phases as a keyboard reaches it: every step is a focus and a key. */
async function openPhases(page: Page) {
  await page.getByRole('radiogroup', { name: 'Form' }).getByRole('radio', { name: 'phases' }).focus();
  await page.keyboard.press('Space');
  const editor = page.getByRole('region', { name: 'Phases' });
  await expect(editor).toBeVisible();
  return {
    editor,
    rows: editor.getByRole('listitem'),
    row: (text: RegExp) => editor.locator('[data-act="row"]', { hasText: text }),
    said: editor.getByRole('status'),
    press: (name: string) => press(editor.getByRole('button', { name, exact: true })),
    check: (name: string) => press(editor.getByRole('checkbox', { name, exact: true }), 'Space'),
    choose: (name: string) => press(editor.getByRole('radio', { name, exact: true }), 'Space'),
    type: (name: string, text: string) =>
      typed(editor.getByRole('spinbutton', { name: `${name}, typed`, exact: true }), text),
  };
}

async function press(control: Locator, key = 'Enter'): Promise<void> {
  await control.focus();
  await control.press(key);
}

async function typed(field: Locator, text: string): Promise<void> {
  await field.focus();
  await field.press('ControlOrMeta+a');
  await field.page().keyboard.type(text);
  await field.press('Enter');
}

async function form(page: Page, name: 'chart' | 'table' | 'phases'): Promise<void> {
  await press(page.getByRole('radio', { name, exact: true }), 'Space');
}

test('a stop, tape, rain, traffic and a driver are laid out by keyboard alone', async ({ page }) => {
  await openSheet(page);
  const { rows, row, said, press, check, choose, type, editor } = await openPhases(page);
  await expect(rows).toHaveCount(4);

  await row(/^2 Push/).press('Enter');
  await choose('seconds');
  await type('Share of the lap', '50');
  await expect(row(/^2/)).toHaveText(/Push, the remaining 18\slaps, 0\.8\ss behind for half the lap/);
  await type('Laps', '9');
  await expect(page.locator('[data-phase="1"] strong')).toHaveText(/Push, 9\slaps/);

  await press('Pit stop');
  await expect(said).toHaveText(/^Pit stop added after phase 2\. 7 phases, 13 laps\.$/);
  await expect(row(/^4 Stop\s45\ss/)).toBeFocused();
  await expect(row(/^4/)).toHaveAttribute('aria-expanded', 'true');
  await type('Standing', '38');
  await check('Tape, front');
  await type('New tape, front', '40');
  await check('Fuel');
  await type('New fuel', '60');
  await check('Driver');
  await editor.getByLabel('New driver').focus();
  await page.keyboard.type('Early');
  await expect(row(/^4/)).toHaveText(
    /Stop\s38\ss, tape front 70 to 40\s%, 60\skg fuel, driver Early and soft/,
  );

  await row(/^5 Out-lap/).press('Enter');
  await press('Push laps');
  await expect(row(/^6 Push, 5\slaps/)).toBeFocused();
  await check('Track');
  await check('Ambient');
  await type('New ambient', '11');
  await expect(row(/^6/)).toHaveText(/Push, 5\slaps, (wet, 11\s°C|11\s°C, wet).*laps 13 to 17/);

  // the chart marks what the list says
  const chart = page.getByRole('img', { name: /counted laps|stays between|not judged/ }).first();
  await expect(chart).toContainText(/stop 38\ss, tape 40\s%/);
  await expect(chart).toContainText(/wet, 11\s°C|11\s°C, wet/);
  await expect(chart.locator('text.here', { hasText: 'wet' }).first()).toBeVisible();
  expect(await chart.locator('line.edited').count()).toBeGreaterThan(0);
  await expect(
    page.getByText(/^8 phases, 18 laps: out-lap; push, 9\slaps, .*; stop\s10\smin\.$/),
  ).toBeAttached();
  expect((await axe(page).analyze()).violations).toEqual([]);

  // and so does the table
  await form(page, 'table');
  const table = page.getByRole('table');
  await expect(table).toContainText(/Stop\s38\ss before this lap: tape front 70 to 40\s%, 60\skg fuel/);
  await expect(table).toContainText(/From lap\s13: (wet, 11\s°C|11\s°C, wet)/);
  await expect(table.getByRole('row', { name: /^11 3 in-lap/ })).toBeVisible();
  await expect(table.getByRole('row', { name: /^13 6 push/ })).toBeVisible();
  expect((await axe(page).analyze()).violations).toEqual([]);
});

test('phases are moved, split, duplicated and removed, the focus goes along, and undo names the step', async ({
  page,
}) => {
  await openSheet(page);
  const { rows, row, said, press, editor } = await openPhases(page);
  const undo = page.getByRole('button', { name: 'Undo', exact: true });

  await row(/^2 Push/).press('Enter');
  await press('Later');
  await expect(row(/^3 Push/)).toHaveAttribute('aria-expanded', 'true');
  await expect(editor.getByRole('button', { name: 'Later' })).toBeFocused();
  await expect(said).toHaveText(/^Phase 2 moved later\./);
  await press('Earlier');
  await expect(row(/^2 Push/)).toBeVisible();

  await press('Split');
  await expect(rows).toHaveCount(5);
  await expect(row(/^2 Push, 9\slaps/)).toBeVisible();
  await expect(row(/^3 Push, the remaining 9\slaps/)).toBeFocused();

  await row(/^1 Out-lap/).press('Enter');
  await expect(editor.getByRole('button', { name: 'Earlier' })).toHaveAttribute('aria-disabled', 'true');
  await expect(editor.getByRole('button', { name: 'Split' })).toHaveAttribute('aria-disabled', 'true');
  await press('Earlier');
  await expect(editor.getByRole('button', { name: 'Earlier' })).toBeFocused();

  await press('Duplicate');
  await expect(rows).toHaveCount(6);
  await expect(row(/^2 Out-lap/)).toBeFocused();
  await press('Remove');
  await expect(said).toHaveText(/^Phase 2 removed\. 5 phases, 20 laps\.$/);
  await expect(row(/^2 Push, 9\slaps/)).toBeFocused();
  await expect(row(/^2/)).toHaveAttribute('aria-expanded', 'false');

  await expect(undo).toHaveAccessibleDescription('Undo phase 2 removed');
  await page.keyboard.press('Control+z');
  await expect(rows).toHaveCount(6);
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Control+z');
  await expect(rows).toHaveCount(4);
  await expect(editor.locator(':focus')).toHaveCount(1);
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Control+z');
  await expect(undo).toBeDisabled();
});

test('what cannot be is answered once, beside the field, and changes nothing', async ({ page }) => {
  await openSheet(page);
  const { rows, row, press, type, editor } = await openPhases(page);
  const hash = page.locator('.hash');
  const before = await hash.textContent();
  const alerts = page.getByRole('alert');

  await row(/^2 Push/).press('Enter');
  for (const [text, expected] of [
    ['0', /Expected 1 to 200.*, got “0”\. what remains stays\./],
    ['many', /Expected 1 to 200.*, got “many”/],
    ['2.5', /Expected a whole number, 1 to 200, got “2\.5”/],
  ] as const) {
    await type('Laps', text);
    await expect(alerts).toHaveCount(1);
    await expect(alerts).toHaveText(expected);
    await expect(row(/^2 Push, the remaining 18\slaps/)).toBeVisible();
  }

  await row(/^4 Stop/).press('Enter');
  await type('Standing', '0');
  await expect(alerts).toHaveText(/Expected 1 to 7200 s, got “0”\. 600\ss stays\./);

  // a stint without a lap
  for (let i = 0; i < 2; i++) {
    await row(/^1 /).press('Enter');
    await press('Remove');
  }
  await row(/^1 In-lap/).press('Enter');
  await press('Remove');
  await expect(alerts).toHaveCount(1);
  await expect(alerts).toHaveText(/^A stint needs at least one driven lap\.$/);
  await expect(rows).toHaveCount(2);
  await expect(editor.getByRole('button', { name: 'Remove' })).toBeFocused();
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Control+z');
  await expect(hash).toHaveText(before ?? '');
});

test('the rest of the stint goes to one phase, and who had it keeps its laps', async ({ page }) => {
  await openSheet(page);
  const { row, press, type } = await openPhases(page);
  await row(/^3 In-lap/).press('Enter');
  await press('Push laps');
  await type('Laps', 'what remains');
  await expect(row(/^4 Push, the remaining 5\slaps/)).toBeVisible();
  await expect(row(/^2 Push, 13\slaps/)).toBeVisible();
});

test('the shipped stints read well in the list', async ({ page }) => {
  await openSheet(page);
  await page.getByLabel('Stint', { exact: true }).selectOption('night-rain');
  const { row } = await openPhases(page);
  await expect(row(/^3 Push, 4\slaps, 11\s°C/)).toBeVisible();
  await expect(row(/^4 Push, the remaining 6\slaps, wet/)).toBeVisible();

  await page.getByLabel('Stint', { exact: true }).selectOption('hour');
  await expect(
    row(/^4 Stop\s75\ss, tape front 60 to 40\s%, 60\skg fuel, driver Early and soft/),
  ).toBeVisible();
  await expect(row(/^6 Push, 4\slaps, 0\.6\ss behind, out of line above 190\skm\/h/)).toBeVisible();
  await expect(row(/^8 Push, the remaining 3\slaps/)).toBeVisible();
  const chart = page.getByRole('img', { name: /counted laps|stays between|not judged/ }).first();
  await expect(chart).toContainText(/stop 75\ss, tape 40\s%/);
  await form(page, 'table');
  await expect(page.getByRole('table')).toContainText(/Stop\s75\ss before this lap: tape front 60 to 40\s%/);
  await expect(page.getByRole('row', { name: /^20 7 safety car/ })).toBeVisible();
});

for (const [width, height] of [
  [320, 700],
  [390, 844],
  [1024, 768],
  [1360, 800],
] as const) {
  test(`at ${width} pixels the open editor stays in the page, and axe finds nothing`, async ({ page }) => {
    await page.setViewportSize({ width, height });
    await openSheet(page);
    const { row, press, check, choose, editor } = await openPhases(page);
    await row(/^2 Push/).press('Enter');
    await choose('seconds');
    for (const name of ['Ambient', 'Track', 'Balance', 'Tape, front', 'Tape, rear']) await check(name);
    const beyond = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    expect(beyond).toBeLessThanOrEqual(0);
    const inside = await editor.evaluate((section) => {
      const right = section.getBoundingClientRect().right + 0.5;
      return [...section.querySelectorAll('button, input, select, p')]
        .filter((part) => !part.matches('.unseen, [type=range]'))
        .filter((part) => part.getBoundingClientRect().right > right)
        .map((part) => part.outerHTML.slice(0, 80));
    });
    expect(inside).toEqual([]);
    expect((await axe(page).analyze()).violations).toEqual([]);
    await press('Pit stop');
    await expect(row(/^4 Stop/)).toBeInViewport();
  });
}
