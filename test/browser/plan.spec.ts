import type { Page } from '@playwright/test';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { axe } from './axe.ts';
import { withoutFileAccess } from './files.ts';
import { expect, test } from './fixtures.ts';
import { openSheet } from './sheet.ts';

/** Goes by Tab to what has this name, from where the focus is. */
async function tabTo(page: Page, name: RegExp): Promise<void> {
  for (let stops = 0; stops < 120; stops++) {
    await page.keyboard.press('Tab');
    const said = await page.evaluate(() => {
      const { activeElement: at } = document;
      return at?.getAttribute('aria-label') ?? at?.textContent?.trim() ?? '';
    });
    if (name.test(said)) return;
  }
  throw new Error(`no stop of Tab is named ${name.source}`);
}

/** What stands on each page of a PDF. */
async function pagesOf(pdf: Buffer): Promise<string[]> {
  const document = await getDocument({ data: new Uint8Array(pdf), verbosity: 0 }).promise;
  const textOn = async (_: unknown, i: number): Promise<string> => {
    const { items } = await (await document.getPage(i + 1)).getTextContent();
    return items.map((item) => ('str' in item ? item.str : '')).join(' ');
  };
  return Promise.all(Array.from({ length: document.numPages }, textOn));
}

test('a whole event goes by keyboard from the forecast to the printed sheets', async ({ page }) => {
  test.setTimeout(150_000);
  await openSheet(page);
  await tabTo(page, /^Plan$/);
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Plan the event');
  await expect(page.getByRole('heading', { level: 1 })).toBeFocused();

  // one session is enough: two others go, and come back by undo, and go again
  await tabTo(page, /^Remove Friday practice$/);
  await page.keyboard.press('Enter');
  await tabTo(page, /^Remove Race$/);
  await page.keyboard.press('Enter');
  await expect(page.getByRole('group', { name: 'Qualifying' })).toBeVisible();
  await page.keyboard.press('Control+z');
  await expect(page.getByRole('group', { name: 'Race' })).toBeVisible();
  await page.keyboard.press('Control+y');
  await expect(page.getByRole('group', { name: 'Race' })).toHaveCount(0);

  await page.getByRole('heading', { level: 1 }).focus();
  await tabTo(page, /ambient, likely/);
  await page.keyboard.type('24');
  await tabTo(page, /^Plan this event$/);
  await page.keyboard.press('Enter');
  await expect(page.getByRole('progressbar')).toBeVisible();
  await expect(page.getByRole('button', { name: 'Plan this event' })).toBeFocused();
  await expect(page.getByText('Planned.', { exact: true })).toBeVisible({ timeout: 100_000 });
  await expect(page.getByText(/^Bring [A-D]\s\(\d+\s%\)/)).toHaveCount(2);

  const map = page.getByRole('application', { name: 'Front: which panel in which condition' });
  await map.focus();
  await page.keyboard.press('End');
  await page.keyboard.press('ArrowDown');
  await expect(page.locator('#plan-front ~ figure .read')).toContainText(/^28\s°C, gap 100\s*m: /);
  expect((await axe(page).analyze()).violations).toEqual([]);

  await page.emulateMedia({ media: 'print' });
  await page.evaluate(() => window.dispatchEvent(new Event('beforeprint')));
  const sheets = page.locator('.print article');
  await expect(sheets).toHaveCount(3);
  for (const sheet of await sheets.all()) await expect(sheet).toContainText('Not for use on a car');
  await expect(sheets.last()).toContainText(/Front Above \d{3}\s°C on two laps running/);
  const capitals_mm = await page
    .locator('.print .big')
    .first()
    .evaluate((big) => {
      const context = document.createElement('canvas').getContext('2d')!;
      const { font } = getComputedStyle(big);
      context.font = font;
      return (context.measureText('C').actualBoundingBoxAscent * 25.4) / 96;
    });
  expect(capitals_mm).toBeGreaterThanOrEqual(12);

  const pages = await pagesOf(await page.pdf({ preferCSSPageSize: true }));
  expect(pages).toHaveLength(3);
  for (const text of pages) expect(text).toContain('Not for use on a car');
  // a plan that no longer holds is not printed
  await page.emulateMedia({ media: null });
  await page.getByRole('checkbox', { name: 'Qualifying: stop planned' }).check();
  const none = await pagesOf(await page.pdf({ preferCSSPageSize: true }));
  expect(none).toEqual([expect.stringMatching(/No plan.*Not for use on a car.*Plan it, then print/)]);
});

test('nonsense is answered beside its field and loses nothing, and a broken file changes nothing', async ({
  page,
}) => {
  await withoutFileAccess(page);
  await openSheet(page);
  await page.goto('/#plan');
  const field = (end: string) => page.getByRole('textbox', { name: `Race: ambient, ${end}, °C` });
  const type = async (end: string, text: string): Promise<void> => {
    await field(end).fill(text);
    await field(end).press('Enter');
  };
  await type('high', '99');
  await expect(page.getByRole('alert')).toHaveText(/^Expected −30 to 55 °C, got “99”\. 31 °C stays\.$/);
  await expect(field('high')).toHaveValue('31');
  // a hotter forecast is typed from low to high: it waits, and is taken whole
  await type('low', '35');
  await expect(page.getByRole('alert').last()).toHaveText(
    /^Low 35\s°C is above likely 26\s°C\. Not taken until low, likely and high rise; 19\s°C, 26\s°C, 31\s°C stays\.$/,
  );
  await expect(page.getByRole('button', { name: 'Undo' })).toBeDisabled();
  await type('likely', '38');
  await type('high', '41');
  await expect(page.getByRole('alert')).toHaveCount(0);
  await expect(field('low')).toHaveValue('35');
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(field('low')).toHaveValue('19');

  // no more panels than there are steps for
  const least = page.getByRole('textbox', { name: 'Least that a panel covers, %' });
  await least.fill('70');
  await least.press('Enter');
  const panels = page.getByRole('radiogroup', { name: 'Panels' });
  await expect(panels.getByRole('radio')).toHaveCount(3);
  await least.fill('75');
  await least.press('Enter');
  await expect(page.getByRole('alert')).toHaveText(
    /^Expected room for 4 panels, one in every 5\s%, from the least to the most that one covers, got “75”\./,
  );

  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Open event' }).click();
  const event = {
    version: 1,
    name: 'Broken',
    sessions: [{ name: 'Day', ambient_C: { low: 30, likely: 25, high: 20 } }],
  };
  await (
    await chooser
  ).setFiles({
    name: 'broken.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify(event)),
  });
  await expect(page.locator('.news[role=status]')).toContainText(
    'broken.json is not opened, and nothing has changed.',
  );
  await expect(page.locator('.news[role=status] li')).toHaveText([
    'sessions.0.ambient_C.low: expected at most high, 20, got 30',
  ]);
  await expect(page.getByRole('textbox', { name: 'Event', exact: true })).toHaveValue(
    'A weekend at Sorrelby',
  );
});

test('a search is cancelled, and a change is kept for the next time at 320 pixels, with gloves and in °F too', async ({
  page,
}) => {
  await page.setViewportSize({ width: 320, height: 700 });
  await page.addInitScript(() =>
    localStorage.setItem('emberlap preferences', '{"gloves":true,"units":"°F in","theme":"night"}'),
  );
  await page.goto('/#plan');
  await page.getByRole('button', { name: 'Plan this event' }).click();
  await page.getByRole('button', { name: 'Cancel' }).click();
  await expect(page.getByRole('progressbar')).toHaveCount(0);
  await expect(page.getByRole('button', { name: 'Plan this event' })).toBeFocused();
  await page.getByRole('button', { name: 'Add a session' }).click();
  await expect(page.getByRole('group', { name: 'Session 4' })).toBeVisible();
  await expect(page.getByRole('textbox', { name: 'Session 4: ambient, likely, °F' })).toHaveValue('79');
  await expect(page.locator('main').last()).not.toContainText('°C');
  const low_px = await page
    .locator(
      'main button:visible, main input[type=text]:visible, main label:has(input:not([type=text])):visible',
    )
    .evaluateAll((all) => Math.min(...all.map((each) => each.getBoundingClientRect().height)));
  expect(low_px).toBeGreaterThanOrEqual(64);
  const beyond = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  expect(beyond).toBeLessThanOrEqual(0);
  expect((await axe(page).analyze()).violations).toEqual([]);
  await page.waitForFunction(
    () =>
      new Promise<boolean>((resolve) => {
        const open = indexedDB.open('emberlap sheet');
        open.onsuccess = () => {
          const read = open.result.transaction('kept').objectStore('kept').get('sheet');
          read.onsuccess = () => {
            open.result.close();
            resolve(
              (read.result as { event?: { sessions: unknown[] } } | undefined)?.event?.sessions.length === 4,
            );
          };
        };
      }),
  );
  await page.reload();
  await expect(page.getByRole('group', { name: 'Session 4' })).toBeVisible();
});
