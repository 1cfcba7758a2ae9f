import { axe } from './axe.ts';
import report from '../../web/pages/trust/report.json' with { type: 'json' };
import { expect, test } from './fixtures.ts';
import { openSheet } from './sheet.ts';

const link = { name: 'How far to trust this' };

for (const [width, height] of [
  [320, 700],
  [390, 844],
  [1024, 768],
  [1360, 800],
] as const) {
  test(`at ${width} pixels the checks stand inside the page and axe finds nothing`, async ({ page }) => {
    await page.setViewportSize({ width, height });
    await page.goto('/#trust');
    await expect(page.getByRole('heading', { level: 1, ...link })).toBeVisible();
    const beyond = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    expect(beyond).toBeLessThanOrEqual(0);
    expect((await axe(page).analyze()).violations).toEqual([]);
  });
}

test('a link of the foot leads there and back, by keyboard, and the stint is as it was left', async ({
  page,
}) => {
  const { slider, sentence } = await openSheet(page);
  await page.getByRole('radio', { name: 'lap' }).check();
  await page.getByRole('link', link).focus();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(link.name);
  await expect(page.getByRole('heading', { level: 1 })).toBeFocused();
  await expect(page).toHaveTitle(/How far to trust this/);
  await expect(slider('Front blanking')).toBeHidden();
  await page.keyboard.press('Control+z');

  await page.getByRole('link', { name: 'Back to the stint' }).first().click();
  await expect(page.getByRole('link', link)).toBeFocused();
  await expect(page).toHaveTitle('Emberlap');
  await expect(page.getByRole('radio', { name: 'lap' })).toBeChecked();
  await expect(sentence).toHaveText(/\S/);
  await page.goBack();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(link.name);
});

test('every number shown is that of the report', async ({ page }) => {
  await page.goto('/#trust');
  await expect(page.getByRole('table')).toHaveCount(new Set(report.cases.map(({ group }) => group)).size);
  const lines = report.cases.flatMap(({ lines }) => lines);
  const rows = page.locator('tr.line');
  await expect(rows).toHaveCount(lines.length);
  const shown = await rows.evaluateAll((all) =>
    all.map((row) => [...row.querySelectorAll('td')].map((cell) => cell.textContent)),
  );
  shown.forEach(([values, median, max], i) => {
    const line = lines[i]!;
    expect(Number(values)).toBe(line.values);
    for (const [text, size] of [
      [median, line.median],
      [max, line.max],
    ] as const) {
      if (size === 0) expect(text).toBe('rounding');
      else expect(parseFloat(text!) / (line.relative ? 100 : 1)).toBeCloseTo(size, 12);
    }
  });
});

test('at 320 pixels each number of a check stands under its name, and no number is broken', async ({
  page,
}) => {
  await page.setViewportSize({ width: 320, height: 700 });
  await page.goto('/#trust');
  const row = page.locator('tr.line').first();
  await expect(row).toBeVisible();
  const cells = await row.locator('td').evaluateAll((all) =>
    all.map((cell) => {
      const { left, right, top } = cell.getBoundingClientRect();
      const fits = cell.scrollWidth <= cell.clientWidth;
      return { left, right, top, fits, name: getComputedStyle(cell, '::before').content };
    }),
  );
  expect(cells.map(({ name }) => name)).toEqual(['"Values"', '"Typical"', '"Largest"', '"Allowed"']);
  expect(new Set(cells.map(({ top }) => top)).size).toBe(1);
  expect(cells.every(({ fits }) => fits)).toBe(true);
  cells.slice(1).forEach(({ left }, i) => expect(left).toBeGreaterThanOrEqual(cells[i]!.right));
  await page.getByText('Where a settled disc stands').waitFor();
  const text = await page.getByRole('region', { name: 'Follow one number' }).innerText();
  expect(text).toContain('10\u00a0000');
  expect(text).not.toMatch(/\d \d{3}\b|[a-zA-Z]_[a-zA-Z]/);
});

test('a difference of laws that is known is called so, and what the mouth’s check leaves open', async ({
  page,
}) => {
  await page.goto('/#trust');
  const row = page.getByRole('row').filter({ hasText: 'mean Nusselt number, laminar' }).first();
  await expect(row).toContainText('known offset');
  await expect(page.locator('tr.line').filter({ hasText: 'known offset' })).toHaveCount(
    report.cases
      .flatMap(({ lines }) => lines)
      .filter(({ relative, max, allowed }) => {
        const room = 'relative' in allowed ? (allowed.relative ?? 0) : 0;
        return relative && room > 0.05 && max > 0.8 * room;
      }).length,
  );
  await expect(page.getByText('A small reserve there is a difference, not an exam passed')).toBeVisible();
  await expect(page.getByText('only the two ends are checked')).toBeVisible();
});
