/** How a person likes the sheet: kept in the browser, none of it part of a scenario. A browser that keeps nothing keeps the page's own. */

export type Theme = 'system' | 'paper' | 'night' | 'sun';

export interface Prefs {
  theme: Theme;
  /** Large targets. */
  gloves: boolean;
  /** Whether single letters are shortcuts. */
  shortcuts: boolean;
}

const OWN: Prefs = { theme: 'system', gloves: false, shortcuts: true };
const NAME = 'emberlap preferences';

const kept = $state<Prefs>({ ...OWN, ...read() });

/** The preferences as they are; change them by `prefer`. */
export const prefs: Readonly<Prefs> = kept;

export function prefer(changed: Partial<Prefs>): void {
  Object.assign(kept, changed);
  try {
    localStorage.setItem(NAME, JSON.stringify(kept));
  } catch {
    // denied or full: they hold until the page is left
  }
}

/** What was kept, as far as it is what this version knows. */
function read(): Partial<Prefs> {
  try {
    const stored: unknown = JSON.parse(localStorage.getItem(NAME) ?? '{}');
    if (typeof stored !== 'object' || stored === null) return {};
    const alike = Object.entries(stored).filter(
      ([key, value]) => typeof value === typeof OWN[key as keyof Prefs],
    );
    return Object.fromEntries(alike);
  } catch {
    return {};
  }
}
