/** The report of the checks in words. Every number on the page comes from report.json, which `npm run validate` writes. */
import { capital, decimal, grouped, NBSP } from '../../display/format.ts';
import report from './report.json';

export interface Line {
  quantity: string;
  unit: string;
  values: number;
  /** True: errors are shares of the source's number; else they are in the unit. */
  relative: boolean;
  median: number;
  max: number;
  allowed: { relative?: number; absolute?: number };
  /** How well the source knows its own number. */
  uncertainty: string;
  why: string;
}

export type Proof = 'measurement' | 'solution' | 'author' | 'code';

export interface Check {
  name: string;
  title: string;
  group: string;
  proof: Proof;
  by: string;
  lines: Line[];
}

export const checks: readonly Check[] = report.cases as Check[];

/** In the report's order. */
export const groups: readonly { name: string; checks: Check[] }[] = [
  ...new Set(checks.map(({ group }) => group)),
].map((name) => ({ name, checks: checks.filter(({ group }) => group === name) }));

const valuesOf = (group: readonly Check[]): number =>
  group.flatMap(({ lines }) => lines).reduce((sum, { values }) => sum + values, 0);

/** "558 values and 63 522 moments of whole stints": the many moments of a few stints are no wider a proof. */
export const compared = ((): string => {
  const whole = checks.filter(({ group }) => group === 'whole');
  const moments = valuesOf(whole);
  return `${grouped(valuesOf(checks) - moments)} values and ${grouped(moments)} moments of whole stints`;
})();

const plain = (size: number): string => {
  const rounded = Number(size.toPrecision(2));
  const digits = Math.max(0, 1 - Math.floor(Math.log10(rounded)));
  return String(Number(decimal(rounded, Math.min(digits, 12))));
};
const percentOf = (share: number): string => `${plain(share * 100)}${NBSP}%`;
const inUnit = (size: number, unit: string): string => (unit ? `${plain(size)}${NBSP}${unit}` : plain(size));

/** "1.4 %", "0.0052" or "0.1 m". */
export function errorWords({ relative, unit }: Line, size: number): string {
  if (size === 0) return 'rounding';
  return relative ? percentOf(size) : inUnit(size, unit);
}

export const allowedWords = ({ allowed, unit }: Line): string =>
  [
    ...(allowed.relative ? [percentOf(allowed.relative)] : []),
    ...(allowed.absolute ? [inUnit(allowed.absolute, unit)] : []),
  ].join(' + ');

/** Above this share of what is allowed, and that is more than so much, a row holds a difference that is known. */
const CLOSE = 0.8;
const WIDE = 0.05;

/** Whether a row's allowance is the known difference of two laws, and no room that agreement was given. */
export function isKnownOffset({ relative, max, allowed }: Line): boolean {
  const room = allowed.relative ?? 0;
  return relative && room > WIDE && max > CLOSE * room;
}

/** What agreement proves, and what it does not. */
export const proofs: Record<Proof, { name: string; means: string }> = {
  measurement: {
    name: 'measured',
    means: 'Somebody measured it. The law itself holds, as far off as the row says.',
  },
  solution: {
    name: 'solved another way',
    means:
      'The same equations, solved by other means. Our arithmetic is right; whether they fit your brake is another question.',
  },
  author: {
    name: 'another author',
    means: 'Somebody else’s law for the same thing. So far apart are people who measured it.',
  },
  code: {
    name: 'other code',
    means:
      'The same law, written down by somebody else. It proves that ours has no slip; how good the law is, is the source’s own doubt.',
  },
};

/** What the result leans on and nobody published in a form that we could check, see engine/MODEL.md. */
export const unchecked = [
  'How much of the car’s air passes the disc’s faces inside a wheel, and how turbulent it is.',
  'How much more cast vanes take than smooth tubes, and what the turn at their entry costs: set so that the heavy car does what practitioners report.',
  'The loss of a taped mouth between open and shut; only its two ends are known.',
  'How much a bent and shortened hose adds, and where the leak sits: measure the flow of your own.',
  'The pressure at a mouth behind another car.',
  'Pads: their share of the heat where a ring runs under them, the gap when they are off, what soaks in.',
  'Caliper and fluid: every way that heat takes to them.',
  'How the conductivity of your iron falls with temperature; carbon-ceramic altogether.',
  'Rain: how much water reaches the disc.',
] as const;

export const countOf = (proof: Proof): number => checks.filter((check) => check.proof === proof).length;

/** The checks that are furthest from their source, told by their worst line. */
export function furthest(count: number): string {
  const worst = checks.map(({ title, lines }) => ({
    title,
    size: Math.max(...lines.map(({ relative, max }) => (relative ? max : 0))),
  }));
  worst.sort((a, b) => b.size - a.size);
  return worst
    .slice(0, count)
    .map(({ title, size }) => `${title.charAt(0).toLowerCase()}${title.slice(1)} ${percentOf(size)}`)
    .join('; ');
}

/** What the source doubts of itself, where it is the same for all that is compared. */
export function sharedDoubt({ lines }: Check): string | null {
  const [first, ...others] = new Set(lines.map(({ uncertainty }) => uncertainty));
  return others.length === 0 ? (first ?? null) : null;
}

export const headingOf = (group: string): string => capital(group === 'reading' ? 'sensor reading' : group);
