import type { Locator, Page } from '@playwright/test';
import { expect, test } from './fixtures.ts';
import { openSheet } from './sheet.ts';

const radio = (page: Page, group: string, name: string): Locator =>
  page.getByRole('radiogroup', { name: group, exact: true }).getByRole('radio', { name });

test('phases are of the stint, charts and tables of every rung, and what is underlined says so', async ({
  page,
}) => {
  await openSheet(page);
  const rung = (name: string): Locator => radio(page, 'Rung', name);
  const form = (name: string): Locator => radio(page, 'Form', name);
  await rung('lap').check();
  await form('phases').check();
  await expect(rung('stint')).toBeChecked();
  await rung('lap').check();
  await expect(form('chart')).toBeChecked();
  await expect(page.getByText(/^Lap\s\d+, push: front face up to/)).toBeVisible();
  await form('table').check();
  await expect(rung('lap')).toBeChecked();
  await expect(page.getByRole('table', { name: /^Hard stops of lap/ })).toBeVisible();
  await rung('moment').check();
  await expect(form('table')).toBeChecked();
  await expect(page.getByRole('table', { name: 'The front brake at the cursor', exact: true })).toBeVisible();
});

test('where left and right differ, the side in hand is the one in view', async ({ page }) => {
  const { sentence, field } = await openSheet(page);
  await page.getByText('Tape, front').click();
  await radio(page, 'Left and right', 'differ').check();
  await radio(page, 'Side in hand, front', 'right').check();
  await field('Front right blanking').fill('62');
  await field('Front right blanking').press('Enter');
  await expect(page.getByText(/^Front right .*counted laps$/).first()).toBeVisible();
  await expect(page.getByRole('heading', { name: /^Front right face on lap/ })).toBeVisible();
  await expect(page.getByRole('img', { name: /^Front right: .* Rear: / })).toBeVisible();
  await expect(sentence).toHaveText(/^Front left 70\s% blanked runs too hot/);
  const face = async (): Promise<string> =>
    (await page.getByRole('img', { name: /Disc in section/ }).getAttribute('aria-label')) ?? '';
  const right = await face();
  await page.getByRole('radio', { name: 'table', exact: true }).check();
  await expect(page.getByRole('table')).toContainText('Temperatures of the front right disc');
  await radio(page, 'Side in hand, front', 'left').check();
  await expect(page.getByRole('table')).toContainText('Temperatures of the front left disc');
  expect(await face()).not.toBe(right);
});

for (const name of ['Window, front', 'Tape, front']) {
  test(`Escape folds "${name}" and gives the focus back to it`, async ({ page }) => {
    const { field } = await openSheet(page);
    const summary = page.locator('summary').filter({ hasText: name });
    const part = page.locator('details').filter({ has: summary });
    await summary.press('Enter');
    const inside = field(name.startsWith('Window') ? 'Bite, front' : 'Strip width, front');
    const before = await inside.inputValue();
    await inside.fill('12');
    // the first takes back what was typed
    await inside.press('Escape');
    await expect(inside).toHaveValue(before);
    await expect(part).toHaveAttribute('open', '');
    await inside.press('Escape');
    await expect(part).not.toHaveAttribute('open');
    await expect(summary).toBeFocused();
  });
}

test('in forced colours thumbs stand out from the sheet, and the hatch shows on the track', async ({
  page,
}) => {
  await page.emulateMedia({ forcedColors: 'active', colorScheme: 'dark' });
  const { slider } = await openSheet(page);
  await expect(page.locator('.track .hatch').first()).toBeAttached();
  for (const name of ['Front blanking', 'Position in the stint', 'Ambient']) {
    expect(await brightShare(page, slider(name)), name).toBeGreaterThan(0.02);
  }
  const hatch = page.locator('.track .hatch').first();
  expect(await hatch.evaluate((path) => getComputedStyle(path).stroke)).toBe('rgb(255, 255, 255)');
  expect(await slider('Front blanking').evaluate((range) => getComputedStyle(range).appearance)).toBe('none');
});

/** Share of a control's picture that is far from the black of the page. */
async function brightShare(page: Page, control: Locator): Promise<number> {
  const png = (await control.screenshot()).toString('base64');
  return page.evaluate(async (data) => {
    const picture = new Image();
    picture.src = `data:image/png;base64,${data}`;
    await picture.decode();
    const canvas = new OffscreenCanvas(picture.width, picture.height);
    const context = canvas.getContext('2d')!;
    context.drawImage(picture, 0, 0);
    const { data: bytes } = context.getImageData(0, 0, picture.width, picture.height);
    let bright = 0;
    for (let i = 0; i < bytes.length; i += 4) if (bytes[i]! + bytes[i + 1]! + bytes[i + 2]! > 380) bright++;
    return bright / (bytes.length / 4);
  }, png);
}

test('a lap table wider than the page says that it goes on', async ({ page }) => {
  await page.setViewportSize({ width: 320, height: 700 });
  await openSheet(page);
  await page.getByRole('radio', { name: 'table', exact: true }).check();
  await expect(page.getByText('More columns at the right: scroll the table sideways.')).toBeVisible();
  await page.setViewportSize({ width: 1360, height: 800 });
  await expect(page.getByText('More columns at the right')).toHaveCount(0);
});

test('on the chart of the hour no line strikes through a mark, and none leaves the frame', async ({
  page,
}) => {
  await page.setViewportSize({ width: 1360, height: 800 });
  await openSheet(page);
  await page.getByLabel('Stint', { exact: true }).selectOption('hour');
  const chart = page.getByRole('img', { name: /counted laps/ }).first();
  await expect(chart).toContainText(/stop 75\ss, tape 40\s%/);
  const { struck, beyond } = await chart.evaluate((svg) => {
    const marks = [...svg.querySelectorAll('text.halo')]
      .map((text) => text.getBoundingClientRect())
      .filter(({ top }) => top < svg.getBoundingClientRect().top + 50);
    const ticks = [...svg.querySelectorAll('line.fine')].map((line) => line.getBoundingClientRect());
    const right = Math.max(...ticks.map((tick) => tick.right));
    return {
      struck: ticks.filter((tick) =>
        marks.some(
          (mark) =>
            tick.x > mark.left && tick.x < mark.right && tick.bottom > mark.top + 3 && tick.top < mark.bottom,
        ),
      ).length,
      beyond: marks.filter((mark) => mark.right > right + 20).length,
    };
  });
  expect({ struck, beyond }).toEqual({ struck: 0, beyond: 0 });
});
