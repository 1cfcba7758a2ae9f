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

interface State {
  name: string;
  size: [width: number, height: number];
  theme?: 'paper' | 'night' | 'sun';
  gloves?: boolean;
  act?: (page: Page) => Promise<void>;
}

const [wide, tablet, portrait, phone, narrow]: State['size'][] = [
  [1360, 800],
  [1024, 768],
  [768, 1024],
  [390, 844],
  [320, 640],
];

const states: State[] = [
  { name: 'wide-paper', size: wide! },
  { name: 'wide-night', size: wide!, theme: 'night' },
  { name: 'wide-sun', size: wide!, theme: 'sun' },
  { name: 'wide-gloves', size: wide!, gloves: true },
  { name: 'tablet-night', size: tablet!, theme: 'night' },
  { name: 'portrait-paper', size: portrait! },
  { name: 'phone-paper', size: phone! },
  { name: 'narrow-sun-gloves', size: narrow!, theme: 'sun', gloves: true },
  { name: 'lap', size: wide!, act: (page) => radio(page, 'lap') },
  { name: 'moment', size: wide!, act: (page) => radio(page, 'moment') },
  { name: 'table', size: wide!, act: (page) => radio(page, 'table') },
  { name: 'ledger', size: wide!, theme: 'night', act: (page) => radio(page, 'ledger') },
  {
    name: 'menu',
    size: wide!,
    act: (page) => page.getByRole('button', { name: 'Sheet', exact: true }).click(),
  },
];

// the last file of the suite: by two, or half the machine waits
test.describe.configure({ mode: 'parallel' });

for (const { name, size, theme = 'paper', gloves = false, act } of states) {
  test(`the sheet looks as accepted: ${name}`, async ({ page }) => {
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
    await act?.(page);
    await page.evaluate(() => document.fonts.ready);
    await expect(page).toHaveScreenshot(`${name}.png`, {
      // told or not yet: it is covered by bare sheet
      mask: [page.locator('.standing')],
      maskColor: SHEETS[theme],
      maxDiffPixelRatio: MOVED,
    });
  });
}
