import type { Scenario } from '../../engine/index.ts';

/** Objects with their keys in order, so that the same values give the same text whatever made them. */
const inOrder = (_key: string, value: unknown): unknown =>
  typeof value === 'object' && value !== null && !Array.isArray(value)
    ? Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)))
    : value;

/** Texts of the parts of scenarios: a change makes new those parts only that it touches. */
const texts = new WeakMap<object, string>();

function textOf(part: unknown): string {
  if (typeof part !== 'object' || part === null) return JSON.stringify(part);
  const known = texts.get(part);
  if (known !== undefined) return known;
  const text = JSON.stringify(part, inOrder);
  texts.set(part, text);
  return text;
}

/** Eight hexadecimal digits that tell two scenarios apart on paper (FNV-1a, 32 bit); not a proof of anything. */
export function scenarioHash(scenario: Scenario): string {
  const parts = Object.entries(scenario).filter(([, part]) => part !== undefined);
  const inTurn = parts.sort(([a], [b]) => (a < b ? -1 : 1));
  const texts = inTurn.flatMap(([key, part], i) => [i === 0 ? '{' : ',', `"${key}":`, textOf(part)]);
  const hash = hashed([...texts, '}']);
  const digits = (hash >>> 0).toString(16).padStart(8, '0');
  return `${digits.slice(0, 4)} ${digits.slice(4)}`;
}

/** Of the texts one after another. Not of them joined: such a text is slow to walk through, in every frame of a drag. */
function hashed(texts: readonly string[]): number {
  let hash = 0x811c9dc5;
  for (const text of texts) {
    for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  }
  return hash;
}
