/** Starts of laps as a person types them: seconds or minutes, one error for each that is wrong. Pure. */
import { clockTime } from '../../../display/format.ts';

export interface TypedTimes {
  times_s: readonly number[];
  /** One sentence for each bad entry; empty when all are good. */
  errors: readonly string[];
}

const SECONDS_PER_PLACE = 60;

/** "96.4", "1:36.4" or "1:02:03.4" in seconds, or null. */
export function timeOf(text: string): number | null {
  if (!/^\d+(:[0-5]?\d){0,2}(\.\d+)?$/.test(text)) return null;
  return text.split(':').reduce((total, place) => total * SECONDS_PER_PLACE + Number(place), 0);
}

/** "1:36.4", as exact as it needs to be. */
export const typedTime = (time_s: number): string => clockTime(time_s, 3).replace(/\.?0+$/, '');

/** Entries parted by commas; by semicolons a decimal comma is allowed too. */
export function typedTimes(text: string, end_s: number): TypedTimes {
  const isByComma = !text.includes(';');
  const entries = text
    .split(isByComma ? /[,\n]/ : /[;\n]/)
    .map((entry) => entry.trim())
    .filter((entry) => entry !== '');
  const times_s: number[] = [];
  const errors: string[] = [];
  for (const entry of entries) {
    const time_s = timeOf(entry.replace(/\s*(s|min)$/, '').replace(',', '.'));
    const error = errorOf(entry, time_s, times_s.at(-1), end_s);
    if (error) errors.push(error);
    else if (time_s !== null) times_s.push(time_s);
  }
  if (entries.length === 0) errors.push('Expected at least one start, such as 0 or 1:36.4.');
  return { times_s, errors };
}

function errorOf(entry: string, time_s: number | null, before_s = -Infinity, end_s = Infinity): string {
  const got = `“${entry.slice(0, 24)}”`;
  if (time_s === null) return `${got} is no time: expected seconds (96.4) or minutes (1:36.4).`;
  if (time_s >= end_s) return `${got} is not inside the file, which ends at ${typedTime(end_s)}.`;
  if (time_s === before_s) return `${got} is there twice.`;
  if (time_s < before_s) return `${got} comes before ${typedTime(before_s)}: expected times in order.`;
  return '';
}

/** The starts with one more, in order. */
export const withStart = (times_s: readonly number[], time_s: number): number[] =>
  [...new Set([...times_s, time_s])].sort((a, b) => a - b);
