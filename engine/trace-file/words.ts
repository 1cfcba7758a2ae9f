/** Numbers and counts as the reader's sentences print them. Spaces inside a number and before a unit do not break. */

export const NBSP = '\u00A0';

/** More problems than a person reads are counted, not listed. */
const MOST_PROBLEMS = 20;

/** Thousands parted by a space: 5300 as '5 300'. */
export const grouped = (value: number, digits = 0): string =>
  value.toFixed(digits).replace(/\B(?=(\d{3})+(?!\d))(?<!\..*)/g, NBSP);

export const quantity = (value: number, unit: string, digits = 0): string =>
  unit === '' ? grouped(value, digits) : `${grouped(value, digits)}${NBSP}${unit}`;

/** Up to six digits, no more than the number has. */
export const plain = (value: number): string => `${+value.toPrecision(6)}`;

export const count = (n: number, one: string, many = `${one}s`): string =>
  `${grouped(n)} ${n === 1 ? one : many}`;

export function listed(problems: readonly string[]): string[] {
  const rest = problems.length - MOST_PROBLEMS;
  return rest > 0 ? [...problems.slice(0, MOST_PROBLEMS), `and ${rest} more`] : [...problems];
}

/** 'a', 'a and b', 'a, b and c'. */
export const joined = (parts: readonly string[], last = 'and'): string =>
  parts.length < 2 ? (parts[0] ?? '') : `${parts.slice(0, -1).join(', ')} ${last} ${parts.at(-1)}`;

/** How many rows something happened to, and to which first. */
export class Tally {
  n = 0;
  first = 0;

  note(row: number): void {
    if (this.n === 0) this.first = row;
    this.n += 1;
  }

  sentence(say: (n: number) => string): string {
    return this.n === 0 ? '' : `${say(this.n)} (${this.n === 1 ? '' : 'first '}row ${this.first})`;
  }
}
