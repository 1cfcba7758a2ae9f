/**
 * The sheet in its main states, compared with accepted pictures. They hold on other machines because nothing in them is
 * the machine's own: the typefaces are the page's, letters are drawn without hinting and in grey, colours are sRGB, numbers
 * are the same bytes everywhere, and what tells the time is covered. What differs between versions of a browser is the
 * smoothing of edges, which the comparison leaves out, and now and then a line of letters by a fraction of a pixel: it may
 * take `MOVED` of a picture. A label that moved, a colour or a control changes more than that.
 */
import type { Page } from '@playwright/test';
import { expect, test } from './fixtures.ts';
import { chromiumArgs } from './find-browser.ts';
import { openSheet } from './sheet.ts';

/** A word of the sentence at its size is some 0.2 % of the smallest picture. */
const MOVED = 0.002;

test.use({
  launchOptions: {
    ...(process.env['EMBERLAP_TEST_BROWSER'] ? { executablePath: process.env['EMBERLAP_TEST_BROWSER'] } : {}),
    args: [
      ...chromiumArgs,
      '--font-render-hinting=none',
      '--disable-lcd-text',
      '--force-color-profile=srgb',
      '--force-device-scale-factor=1',
    ],
  },
  reducedMotion: 'reduce',
  colorScheme: 'light',
  locale: 'en-GB',
  timezoneId: 'UTC',
});

const SHEETS = { paper: '#fffdf8', night: '#1b2026', sun: '#ffffff' };

const radio = async (page: Page, name: string): Promise<void> => {
  await page.getByRole('radio', { name, exact: true }).check();
};

interface Look {
  size: [width: number, height: number];
  theme?: 'paper' | 'night' | 'sun';
  gloves?: boolean;
  /** Names of what is taken on one visit, each with what leads to it from the one before. */
  shots: Record<string, (page: Page) => Promise<void>>;
}

const asItOpens = (): Promise<void> => Promise.resolve();

const [wide, tablet, portrait, phone, narrow]: Look['size'][] = [
  [1360, 800],
  [1024, 768],
  [768, 1024],
  [390, 844],
  [320, 640],
];

const looks: Look[] = [
  {
    size: wide!,
    shots: {
      'wide-paper': asItOpens,
      lap: (page) => radio(page, 'lap'),
      moment: (page) => radio(page, 'moment'),
      table: async (page) => {
        await radio(page, 'stint');
        await radio(page, 'table');
      },
      menu: async (page) => {
        await radio(page, 'chart');
        await page.getByRole('button', { name: 'Sheet', exact: true }).click();
      },
    },
  },
  {
    size: wide!,
    theme: 'night',
    shots: { 'wide-night': asItOpens, ledger: (page) => radio(page, 'ledger') },
  },
  { size: wide!, theme: 'sun', shots: { 'wide-sun': asItOpens } },
  { size: wide!, gloves: true, shots: { 'wide-gloves': asItOpens } },
  { size: tablet!, theme: 'night', shots: { 'tablet-night': asItOpens } },
  { size: portrait!, shots: { 'portrait-paper': asItOpens } },
  { size: phone!, shots: { 'phone-paper': asItOpens } },
  { size: narrow!, theme: 'sun', gloves: true, shots: { 'narrow-sun-gloves': asItOpens } },
];

// the last file of the suite: by two, or half the machine waits
test.describe.configure({ mode: 'parallel' });

for (const { size, theme = 'paper', gloves = false, shots } of looks) {
  test(`the sheet looks as accepted: ${Object.keys(shots).join(', ')}`, async ({ page }) => {
    await page.setViewportSize({ width: size[0], height: size[1] });
    await page.addInitScript(
      (look) => {
        localStorage.setItem('emberlap preferences', JSON.stringify(look));
      },
      { theme, gloves },
    );
    await openSheet(page);
    // the last of what is found out by itself
    await expect(page.getByText(/Measure first: /).first()).toBeAttached({ timeout: 60_000 });
    await page.evaluate(() => document.fonts.ready);
    for (const [name, lead] of Object.entries(shots)) {
      await lead(page);
      await expect.soft(page).toHaveScreenshot(`${name}.png`, {
        // told or not yet: it is covered by bare sheet
        mask: [page.locator('.standing')],
        maskColor: SHEETS[theme],
        maxDiffPixelRatio: MOVED,
      });
    }
  });
}
