/** The look of the sheet, put on the page's root. Without runes: it is there before anything is drawn. */

export type Theme = 'system' | 'paper' | 'night' | 'sun';
type ShownTheme = Exclude<Theme, 'system'>;

export interface Look {
  theme: Theme;
  /** Large targets. */
  gloves: boolean;
}

/** Where all that a person prefers is kept in the browser. */
export const PREFS_NAME = 'emberlap preferences';

/** What the browser's own bars take: each theme's `--page`. */
export const PAGE_COLOURS: Readonly<Record<ShownTheme, string>> = {
  paper: '#f7f4ec',
  night: '#14181d',
  sun: '#ffffff',
};

const DARK = '(prefers-color-scheme: dark)';
let held: Look = { theme: 'system', gloves: false };

export function applyLook({ theme, gloves }: Look): void {
  held = { theme, gloves };
  const shown = shownTheme(theme, matchMedia(DARK).matches);
  const root = document.documentElement;
  root.dataset['theme'] = shown;
  root.toggleAttribute('data-gloves', gloves);
  document.querySelector('meta[name="theme-color"]')?.setAttribute('content', PAGE_COLOURS[shown]);
}

/** Who follows the system follows it while the page is open, too. */
export function followSystem(): void {
  matchMedia(DARK).addEventListener('change', () => applyLook(held));
}

/** A name that this version does not know follows the system. */
export const shownTheme = (theme: string, isDark: boolean): ShownTheme =>
  theme in PAGE_COLOURS ? (theme as ShownTheme) : isDark ? 'night' : 'paper';

/** All that was kept; nothing where the browser keeps nothing. */
export function storedPrefs(): Record<string, unknown> {
  try {
    const stored: unknown = JSON.parse(localStorage.getItem(PREFS_NAME) ?? '{}');
    return typeof stored === 'object' && stored !== null ? { ...stored } : {};
  } catch {
    return {};
  }
}
