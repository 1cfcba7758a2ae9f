/** The sheet as a file on disk: readable JSON. What it holds beyond the schema is kept. */
import type { Scenario } from '../../engine/index.ts';
import { keysUnknown } from '../../engine/scenario/keys.ts';
import { assembled, isCatalogueFile } from '../../engine/scenario/library.ts';
import { migrated } from '../../engine/scenario/migrate.ts';
import { parseScenario } from '../../engine/scenario/parse.ts';
import { problemLine } from '../../engine/scenario/problem.ts';
import { isTree } from '../../engine/scenario/tree.ts';

/** What a file says, and what one should know of how it was read; or everything that is wrong with it. */
export type Read =
  { ok: true; scenario: Scenario; notes: readonly string[] } | { ok: false; problems: readonly string[] };

/** What it is comes first; two spaces a level; a list of numbers stands in one line. */
export function fileText(scenario: Scenario): string {
  const { version, name, purpose, ...rest } = scenario;
  const text = JSON.stringify({ version, name, purpose, ...rest }, null, 2);
  // no text of JSON holds a line's end, so what is found is never inside one
  const inOneLine = text.replace(/\[\n[\s\d.,eE+-]+\]/g, (list) =>
    list.replace(/\[\s+|\s+\]|\s+/g, (gap) => (gap.startsWith('[') ? '[' : gap.endsWith(']') ? ']' : ' ')),
  );
  return `${inOneLine}\n`;
}

/** "heavy-closed-car-sorrelby-2026-11-26.json" */
export function fileName({ car, circuit, trace }: Scenario, now_ms: number): string {
  const now = new Date(now_ms);
  const day = [now.getFullYear(), now.getMonth() + 1, now.getDate()].map((part) =>
    `${part}`.padStart(2, '0'),
  );
  const words = [car.name, trace ? trace.name.replace(/\.\w+$/, '') : circuit.name]
    .map(plain)
    .filter(Boolean);
  return `${[...words, day.join('-')].join('-')}.json`;
}

/** Letters and digits that every disk takes. */
export const plain = (name: string): string =>
  name
    .normalize('NFKD')
    .replace(/\p{Mark}/gu, '')
    .toLowerCase()
    .replace(/[^\p{Letter}\p{Number}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 40);

export function readFile(text: string): Read {
  const json = jsonFrom(text);
  return 'problem' in json ? { ok: false, problems: [json.problem] } : readInput(json.value);
}

/** The same for what is JSON already. */
export function readInput(value: unknown): Read {
  const whole = wholeOf(value);
  if (!whole) return { ok: false, problems: ['file: expected a car and a circuit of the library'] };
  const brought = migrated(whole.input);
  const parsed = brought.ok ? parseScenario(brought.input) : brought;
  if (!parsed.ok) return { ok: false, problems: parsed.problems.map(problemLine) };
  const unknown = isTree(parsed.scenario) ? keysUnknown(parsed.scenario) : [];
  const kept = unknown.length > 0 ? [`Kept as it is, and without effect: ${few(unknown).join(', ')}.`] : [];
  const changed = brought.ok ? brought.changed.map((line) => `${line}.`) : [];
  return { ok: true, scenario: parsed.scenario, notes: [...changed, ...kept] };
}

/** A file of the catalogue names its car and circuit; null: one that is not there. */
function wholeOf(value: unknown): { input: unknown } | null {
  if (!isCatalogueFile(value)) return { input: value };
  try {
    return { input: assembled(value) };
  } catch {
    return null;
  }
}

const MOST_NAMED = 5;

const few = (names: readonly string[]): string[] =>
  names.length > MOST_NAMED
    ? [...names.slice(0, MOST_NAMED), `and ${names.length - MOST_NAMED} more`]
    : [...names];

/** The value of a text of JSON, or why it is none. */
export function jsonFrom(text: string): { value: unknown } | { problem: string } {
  const marked = text.replace(/^\uFEFF/, '');
  if (marked.trim() === '') return { problem: 'file: expected JSON, got nothing' };
  try {
    return { value: JSON.parse(marked) as unknown };
  } catch (error) {
    return { problem: `file: expected JSON, got text that is none${placeOf(String(error), marked)}` };
  }
}

/** Where the text stops being JSON, as far as the browser tells. */
function placeOf(message: string, text: string): string {
  const at = /position (\d+)/.exec(message)?.[1];
  const said = /line (\d+) column (\d+)/.exec(message);
  if (at === undefined) {
    if (said) return ` (line ${said[1]}, column ${said[2]})`;
    return /end of/.test(message) ? ' (it ends too early)' : '';
  }
  const before = text.slice(0, Number(at)).split('\n');
  if (Number(at) >= text.trimEnd().length) return ' (it ends too early)';
  return ` (line ${before.length}, column ${(before.at(-1) ?? '').length + 1})`;
}

/** Whether a file that was opened or dropped is a sheet's, not a logger's: JSON begins with a brace. */
export async function isSheetFile(file: File): Promise<boolean> {
  if (/\.json$/i.test(file.name)) return true;
  const start = await file
    .slice(0, 64)
    .text()
    .catch(() => '');
  return start.trimStart().startsWith('{');
}
