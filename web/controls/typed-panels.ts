/** A set of panels typed by hand: "0, 40, 60, 75, 85". Pure. */
import type { Problem } from '../../engine/scenario/problem.ts';
import { typedNumber } from './typed-number.ts';

const MOST = 8;

export type TypedPanels = { ok: true; panels_pct: number[] } | { ok: false; complaints: string[] };

/** The set in ascending order, or one line for each entry that is none. */
export function typedPanels(text: string): TypedPanels {
  const entries = entriesOf(text);
  const complaints: string[] = [];
  const panels_pct: number[] = [];
  for (const entry of entries) {
    const pct = typedNumber(entry, '%');
    if (pct === null || pct < 0 || pct > 100) complaints.push(`Expected 0 to 100 %, got “${entry}”.`);
    else if (panels_pct.includes(pct)) complaints.push(`“${entry}” is there twice.`);
    else panels_pct.push(pct);
  }
  if (entries.length > MOST) complaints.push(`Expected at most ${MOST} panels, got ${entries.length}.`);
  if (complaints.length > 0) return { ok: false, complaints };
  return { ok: true, panels_pct: panels_pct.sort((a, b) => a - b) };
}

/** What was expected of panels instead, those of which the same was in one sentence: "Expected 0, or 65 to 100, got 40, 60." */
export function expectedWords(problems: readonly Pick<Problem, 'expected' | 'value'>[]): string[] {
  return [...new Set(problems.map(({ expected }) => expected))].map((expected) => {
    const values = problems.filter((each) => each.expected === expected).map(({ value }) => value);
    return `Expected ${expected}, got ${values.join(', ')}.`;
  });
}

/** A comma with a space after it, a semicolon or a space part entries; without any of these each comma does. */
function entriesOf(text: string): string[] {
  const bare = text.trim().replaceAll(/\s+%/g, '%');
  const isSpaced = /[;\s]/.test(bare);
  return bare.split(isSpaced ? /;|,(?=\s)|\s+/ : ',').filter((entry) => entry !== '');
}
