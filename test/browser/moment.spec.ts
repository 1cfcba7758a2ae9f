import { axe } from './axe.ts';
import type { Locator, Page } from '@playwright/test';
import { expect, test } from './fixtures.ts';
import { tabTo } from './keys.ts';
import { openSheet } from './sheet.ts';

async function openMoment(page: Page): Promise<{ drawing: Locator; parts: Locator; air: Locator }> {
  await openSheet(page);
  await page.getByRole('radio', { name: 'moment', exact: true }).check();
  return {
    drawing: page.getByRole('application', { name: /face \d+\s°C/ }),
    parts: page.getByRole('table', { name: 'The front brake at the cursor', exact: true }),
    air: page.getByRole('table', { name: /^The air of the front brake/ }),
  };
}

const whence = (page: Page, name: string): Locator =>
  page.getByRole('button', { name: new RegExp(`, ${name}: where it comes from$`) });

test('every part of the brake has its temperature, in the drawing and in the table beside it', async ({
  page,
}) => {
  const { drawing, parts } = await openMoment(page);
  await expect(parts.getByRole('row')).toHaveCount(9);
  for (const name of [
    'face',
    'core',
    'vane wall',
    'rim',
    'bell',
    'pad',
    'caliper',
    'fluid',
    'wheelhouse air',
  ]) {
    const row = parts.getByRole('row').filter({ has: page.getByRole('rowheader', { name, exact: true }) });
    const value = (await row.getByRole('button').textContent())!;
    expect(value).toMatch(/^\d+\s°C$/);
    await expect(drawing).toContainText(new RegExp(`${name}\\s*${value}`));
  }
  await expect(drawing).toHaveAccessibleDescription(/^Front: face\s\d+\s°C.*Air: .*vanes\s\d+\sg\/s/);
});

test('the air goes by the car’s speed, is told for clear air or behind a car, and what is taped is not let in', async ({
  page,
}) => {
  const { drawing, air } = await openMoment(page);
  await expect(page.locator('figcaption')).toContainText(/Air of this corner at \d+\skm\/h, in clear air/);
  const flow = async (): Promise<number> =>
    parseFloat((await air.getByRole('button', { name: /mouth and hose/ }).textContent())!);
  await drawing.press('Shift+M');
  await drawing.press('m');
  const entry = await flow();
  for (let i = 0; i < 20; i++) await drawing.press('ArrowRight');
  await expect.poll(flow).not.toBe(entry);
  await drawing.press('Home');
  const open = await flow();
  await page.getByRole('slider', { name: 'Front blanking', exact: true }).fill('100');
  await expect.poll(flow).toBe(0);
  expect(open).toBeGreaterThan(5);
  await expect(air).toContainText('leak, drawn in');
  await page.getByRole('slider', { name: 'Front blanking', exact: true }).fill('70');
  await page.getByRole('slider', { name: 'Gap' }).fill('8');
  await expect(page.locator('figcaption')).toContainText(
    /behind the car ahead: \d+\sg\/s through mouth and hose, \d+\s% less than in clear air \(\d+\sg\/s\)\./,
  );
  await expect(air).toHaveAccessibleName(/behind the car ahead, and how that differs from clear air$/);
  await expect(air.getByRole('row').nth(2)).toContainText(/\d+\s% less/);
  await expect(drawing).toContainText(/mouth and hose \d+\sg\/s, \d+\s% less/);
});

test('a number says where it comes from by keys alone, and Escape takes the note away', async ({ page }) => {
  await openMoment(page);
  await tabTo(page, whence(page, 'core'));
  const note = page.getByRole('group', { name: 'Where core comes from' });
  await expect(note).toContainText('The mean of all layers of the cheek');
  await expect(note).toContainText('ΔT = γ Q₁ / (m c)');
  await expect(note).toContainText(/By hand, for the hottest stop \(turn \d+, lap\s\d+\)/);
  await expect(note).toContainText(/m\s=\s[\d.]+\skg/);
  await page.keyboard.press('Tab');
  await expect(note.getByRole('link')).toBeFocused();
  await page.keyboard.press('Escape');
  await expect(note).toHaveCount(0);
  await expect(whence(page, 'core')).toBeFocused();
  await page.keyboard.press('Enter');
  await note.getByRole('link').click();
  await expect(page.getByRole('heading', { name: 'How far to trust this' })).toBeVisible();
});

test('the note stands under a pointer that rests, stays while it is read, and goes when it is left', async ({
  page,
}) => {
  await openMoment(page);
  await whence(page, 'vanes').hover();
  const note = page.getByRole('group', { name: 'Where vanes comes from' });
  await expect(note).toContainText('ṁ = A √(2 ρ Δp)');
  await note.hover();
  await page.waitForTimeout(500);
  await expect(note).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(note).toHaveCount(0);
  await whence(page, 'leak, lost').hover();
  await expect(page.getByRole('group', { name: 'Where leak, lost comes from' })).toBeVisible();
  await page.mouse.move(5, 5);
  await expect(page.getByRole('group', { name: /^Where .* comes from$/ })).toHaveCount(0);
});

for (const [width, height] of [
  [320, 700],
  [1024, 768],
  [1280, 800],
] as const) {
  test(`at ${width} pixels the moment and its notes stay inside, and axe finds nothing`, async ({ page }) => {
    await page.setViewportSize({ width, height });
    await openMoment(page);
    const beyond = (): Promise<number> =>
      page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    expect(await beyond()).toBeLessThanOrEqual(0);
    await whence(page, 'face').click();
    await expect(page.getByRole('group', { name: 'Where face comes from' })).toContainText('T = T₁ + ΔT');
    expect(await beyond()).toBeLessThanOrEqual(0);
    const note = (await page.getByRole('group', { name: 'Where face comes from' }).boundingBox())!;
    expect(note.x).toBeGreaterThanOrEqual(0);
    expect(note.x + note.width).toBeLessThanOrEqual(width);
    expect((await axe(page).analyze()).violations).toEqual([]);
  });
}

for (const rung of ['moment', 'lap']) {
  test(`the rung of the ${rung} stands in a wide window without scrolling`, async ({ page }) => {
    await page.setViewportSize({ width: 1360, height: 800 });
    await openSheet(page);
    await page.getByRole('radio', { name: rung, exact: true }).check();
    await expect(page.getByRole('application').first()).toBeVisible();
    expect(await page.evaluate(() => document.documentElement.scrollHeight)).toBeLessThanOrEqual(800);
  });
}
