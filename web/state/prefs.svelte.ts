/** How a person likes the sheet: kept in the browser, none of it part of a scenario. A browser that keeps nothing keeps the page's own. */

import { followChoice } from '../display/units.ts';
import type { Paper } from '../print/paper.ts';
import { applyLook, PREFS_NAME, storedPrefs, type Look } from './look.ts';

export interface Prefs extends Look {
  /** Names of the units chosen beside those of the scenario, with blanks between them. */
  units: string;
  /** Whether single letters are shortcuts. */
  shortcuts: boolean;
  /** Of the run sheet; empty: what is usual where the browser's language comes from. */
  paper: Paper | '';
}

const OWN: Prefs = { theme: 'system', gloves: false, units: '', shortcuts: true, paper: '' };

const kept = $state<Prefs>({ ...OWN, ...read() });
followChoice(() => kept.units);

/** The preferences as they are; change them by `prefer`. */
export const prefs: Readonly<Prefs> = kept;

export function prefer(changed: Partial<Prefs>): void {
  Object.assign(kept, changed);
  if ('theme' in changed || 'gloves' in changed) applyLook(kept);
  try {
    localStorage.setItem(PREFS_NAME, JSON.stringify(kept));
  } catch {
    // denied or full: they hold until the page is left
  }
}

/** What was kept, as far as it is what this version knows. */
function read(): Partial<Prefs> {
  const alike = Object.entries(storedPrefs()).filter(
    ([key, value]) => typeof value === typeof OWN[key as keyof Prefs],
  );
  return Object.fromEntries(alike);
}
