import { axe } from './axe.ts';
import type { Page } from '@playwright/test';
import { expect, test } from './fixtures.ts';
import { openSheet } from './sheet.ts';

const GLOVE_PX = 64;

/** As if a person had chosen a look before. */
async function prefer(page: Page, look: { theme?: string; gloves?: boolean }): Promise<void> {
  await page.addInitScript((kept) => {
    localStorage.setItem('emberlap preferences', JSON.stringify(kept));
  }, look);
}

const theme = (page: Page): Promise<string | undefined> =>
  page.evaluate(() => document.documentElement.dataset['theme']);
const bars = (page: Page): Promise<string | null> =>
  page.locator('meta[name="theme-color"]').getAttribute('content');

test('the theme follows the system until one is chosen; a choice is there at once and kept', async ({
  page,
}) => {
  await page.emulateMedia({ colorScheme: 'dark' });
  await openSheet(page);
  await expect.poll(async () => [await theme(page), await bars(page)]).toEqual(['night', '#14181d']);
  await page.emulateMedia({ colorScheme: 'light' });
  await expect.poll(async () => [await theme(page), await bars(page)]).toEqual(['paper', '#f7f4ec']);

  const canvas = page.locator('canvas').first();
  const drawn = (): Promise<string> => canvas.evaluate((at: HTMLCanvasElement) => at.toDataURL());
  const before = await drawn();
  await page.getByRole('button', { name: 'Sheet', exact: true }).click();
  await page.getByRole('radiogroup', { name: 'Theme' }).getByRole('radio', { name: 'sun' }).check();
  await expect(page.locator('body')).toHaveCSS('background-color', 'rgb(255, 255, 255)');
  await expect.poll(drawn).not.toBe(before);
  await page.emulateMedia({ colorScheme: 'dark' });
  await expect.poll(async () => [await theme(page), await bars(page)]).toEqual(['sun', '#ffffff']);
  await page.reload();
  expect(await theme(page)).toBe('sun');
});

test('the first frame has the theme that was kept', async ({ page }) => {
  await page.emulateMedia({ colorScheme: 'light' });
  await prefer(page, { theme: 'night' });
  await page.addInitScript(() => {
    requestAnimationFrame(() => {
      Object.assign(window, { firstTheme: document.documentElement.dataset['theme'] });
    });
  });
  await openSheet(page);
  expect(await page.evaluate('window.firstTheme')).toBe('night');
});

test('gloves are put on in the menu, and stay on', async ({ page }) => {
  await openSheet(page);
  const play = page.getByRole('button', { name: 'Play' });
  expect((await play.boundingBox())!.height).toBeLessThan(GLOVE_PX);
  await page.getByRole('button', { name: 'Sheet', exact: true }).click();
  await page.getByRole('radiogroup', { name: 'Targets for' }).getByRole('radio', { name: 'gloves' }).check();
  await expect.poll(async () => (await play.boundingBox())!.height).toBeGreaterThanOrEqual(GLOVE_PX);
  await page.reload();
  await expect.poll(async () => (await play.boundingBox())!.height).toBeGreaterThanOrEqual(GLOVE_PX);
});

/** Everything in sight that is pressed, typed into or moved, and is smaller than a glove; a link in a sentence may be. */
function tooSmall(page: Page): Promise<string[]> {
  return page.evaluate((least) => {
    const targets = [
      'button, select, summary, .button, label:has([type=radio], [type=checkbox])',
      'input:not(.unseen, [type=radio], [type=checkbox])',
    ].join();
    return [...document.querySelectorAll<HTMLElement>(targets)]
      .filter((at) => at.checkVisibility() && !at.closest('.unseen'))
      .map((at) => ({ at, box: at.getBoundingClientRect() }))
      .filter(({ at, box }) => box.height < least - 0.5 || (at.matches('button') && box.width < least - 0.5))
      .map(
        ({ at, box }) =>
          `${at.tagName} ${at.ariaLabel ?? at.textContent.trim()}: ${box.width} x ${box.height}`,
      );
  }, GLOVE_PX);
}

for (const [width, height] of [
  [320, 640],
  [390, 844],
  [1024, 768],
  [1360, 800],
] as const) {
  test(`gloves: at ${width} pixels every target is large and nothing reaches beyond the side`, async ({
    page,
  }) => {
    await page.setViewportSize({ width, height });
    await prefer(page, { gloves: true });
    await openSheet(page);
    for (const form of ['chart', 'table', 'ledger', 'phases', 'how sure']) {
      await page.getByRole('radio', { name: form, exact: true }).check();
      await expect.soft(page.getByRole('slider', { name: 'Ambient' })).toBeVisible();
      expect.soft(await tooSmall(page), form).toEqual([]);
      const beyond = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
      expect.soft(beyond, form).toBeLessThanOrEqual(0);
    }
    await page.getByRole('button', { name: 'Sheet', exact: true }).click();
    await expect(page.getByRole('heading', { name: 'Look' })).toBeVisible();
    expect.soft(await tooSmall(page), 'menu').toEqual([]);
  });
}

/** Names in the top line that are wider than what shows them. */
const cutNames = (): string[] =>
  [...document.querySelectorAll<HTMLSelectElement>('header select')].flatMap((select) => {
    const { fontWeight, fontSize, fontFamily } = getComputedStyle(select);
    const pen = document.createElement('canvas').getContext('2d')!;
    pen.font = `${fontWeight} ${fontSize} ${fontFamily}`;
    const name = select.selectedOptions[0]?.text ?? '';
    return pen.measureText(name).width + 16 > select.clientWidth ? [name] : [];
  });

for (const look of [
  { theme: 'paper', gloves: true },
  { theme: 'night', gloves: false },
  { theme: 'sun', gloves: false },
]) {
  const name = look.theme + (look.gloves ? ' in gloves' : '');
  const violations = async (page: Page): Promise<unknown[]> => (await axe(page).analyze()).violations;

  test(`${name}: axe finds nothing on the narrow sheet`, async ({ page }) => {
    await prefer(page, look);
    await page.setViewportSize({ width: 390, height: 844 });
    await openSheet(page);
    expect(await violations(page)).toEqual([]);
  });

  test(`${name}: axe finds nothing at the lap's rung with the menu open`, async ({ page }) => {
    await prefer(page, look);
    await page.setViewportSize({ width: 1360, height: 800 });
    await openSheet(page);
    await page.getByRole('radio', { name: 'lap', exact: true }).check();
    await expect(page.getByText(/^Lap\s\d+, push: front face up to/)).toBeVisible();
    await expect(page.getByRole('table', { name: /^Hard stops of lap/ })).toBeVisible();
    // what is driven is there to be read, at this width without the words before it
    expect(await page.evaluate(cutNames)).toEqual([]);
    // in gloves nothing stands without scrolling
    if (!look.gloves) expect(await page.evaluate(() => document.documentElement.scrollHeight)).toBe(800);
    await page.getByRole('button', { name: 'Sheet', exact: true }).click();
    await expect(page.getByRole('heading', { name: 'Look' })).toBeVisible();
    expect(await violations(page)).toEqual([]);
  });
}
