/** What a step of the history is called: its name, and from what to what where it changed one value. */
import type { Scenario } from '../../engine/index.ts';
import { unitOf } from '../../engine/scenario/field.ts';
import { valueAt } from '../../engine/scenario/tree.ts';
import { digitsOf, NBSP, withUnit } from './format.ts';

/** Decimals that a value of a scenario may need. */
const MOST_DIGITS = 3;

/** "front blanking 30 to 35 %", "gap clear air to 8 m", "track dry to wet"; the bare name where no single value tells. */
export function stepWords(name: string, key: string | null, before: Scenario, after: Scenario): string {
  if (key === null) return name;
  const [from, to] = [before, after].map((at) => valueWords(key, valueAt(at, key)));
  if (!from || !to || from === to) return name;
  return `${name} ${withoutUnit(from, to)} to ${to}`;
}

function valueWords(key: string, value: unknown): string {
  if (typeof value === 'number') return withUnit(value, unitOf(key), digitsOf(value, MOST_DIGITS));
  if (key === 'conditions.wet') return value === true ? 'wet' : 'dry';
  if (key.startsWith('traffic.gap')) return 'clear air';
  if (typeof value === 'boolean') return value ? 'on' : 'off';
  return '';
}

/** The first of two numbers goes without the unit that both have. */
function withoutUnit(from: string, to: string): string {
  const [number = '', unit] = from.split(NBSP);
  return unit !== undefined && unit === to.split(NBSP)[1] ? number : from;
}
