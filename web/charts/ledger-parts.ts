/** Where the heat of a corner went, as parts to draw and print: none negative, in and out alike in sum, on paper too. */
import type { Ledger } from '../../engine/index.ts';
import { apportioned } from '../display/apportion.ts';

/** What a staircase goes up and comes down by. Which of two a part is follows its sign: a brake that cools gives heat back. */
export const IN = ['friction', 'givenBack', 'takenUp'] as const;
export const OUT = ['vanes', 'faces', 'others', 'radiation', 'conducted', 'kept'] as const;
export type Part = (typeof IN)[number] | (typeof OUT)[number];

/** One part as it is drawn [J] and printed [units of the account]. */
export interface Step {
  from_J: number;
  to_J: number;
  units: number;
  pct: number;
}

export interface Account {
  total_J: number;
  /** What went in, as printed. */
  units: number;
  residual_J: number;
  steps: Record<Part, Step>;
}

/** One line of the picture: a part now, in the pinned run, and what that makes of a difference as printed. */
export interface LedgerRow {
  part: Part;
  isIn: boolean;
  now: Step;
  pinned: Step | null;
  change: number | null;
}

export interface LedgerView {
  rows: LedgerRow[];
  now: Account;
  pinned: Account | null;
  /** Decimals of a megajoule that are printed. */
  digits: number;
  /** Heat at the right end of the picture [J] */
  span_J: number;
}

const MJ = 1e6;

function heatsOf(ledger: Ledger): Record<Part, number> {
  const { brakeHeat, stored, vaneAir, faceAir, otherAir, radiation, conducted } = ledger;
  const losses = [vaneAir, faceAir, otherAir, radiation, conducted];
  const above = (heat_J: number): number => Math.max(0, heat_J);
  return {
    friction: brakeHeat,
    givenBack: above(-stored),
    // a part that is colder than what is around it
    takenUp: losses.reduce((sum, loss) => sum + above(-loss), 0),
    vanes: above(vaneAir),
    faces: above(faceAir),
    others: above(otherAir),
    radiation: above(radiation),
    conducted: above(conducted),
    kept: above(stored),
  };
}

const totalOf = (ledger: Ledger): number => {
  const heats = heatsOf(ledger);
  return IN.reduce((sum, part) => sum + heats[part], 0);
};

/** The ledger as two staircases that end at the same height. */
function accountOf(ledger: Ledger, digits: number): Account {
  const heats = heatsOf(ledger);
  const total_J = totalOf(ledger);
  const units = Math.round((total_J / MJ) * 10 ** digits);
  const stairs = (parts: readonly Part[]): [Part, Step][] => {
    const values = parts.map((part) => heats[part]);
    const printed = apportioned(values, units);
    const shares = apportioned(values, 100);
    let at = 0;
    return parts.map((part, i) => {
      const from_J = at;
      at += heats[part];
      return [part, { from_J, to_J: at, units: printed[i] ?? 0, pct: shares[i] ?? 0 }];
    });
  };
  const steps = Object.fromEntries([...stairs(IN), ...stairs(OUT)]) as Account['steps'];
  return { total_J, units, residual_J: ledger.residual, steps };
}

/** Three figures of the larger total; a thousandth of a megajoule at the finest. */
function digitsFor(total_J: number): number {
  const figures = 2 - Math.floor(Math.log10(Math.max(total_J, 1) / MJ));
  return Math.min(3, Math.max(0, figures));
}

/** Always there, so that nothing jumps from lap to lap; the rest where there is such heat, now or in the pinned run. */
const LASTING: readonly Part[] = ['friction', 'faces', 'others', 'radiation', 'conducted'];

export function ledgerView(ledger: Ledger, pinnedLedger: Ledger | null): LedgerView {
  const span_J = Math.max(totalOf(ledger), pinnedLedger ? totalOf(pinnedLedger) : 0);
  const digits = digitsFor(span_J);
  const now = accountOf(ledger, digits);
  const pinned = pinnedLedger && accountOf(pinnedLedger, digits);
  const isThere = (part: Part): boolean =>
    LASTING.includes(part) || [now, pinned].some((of) => of && of.steps[part].to_J > of.steps[part].from_J);
  const rows = [...IN, ...OUT].filter(isThere).map((part): LedgerRow => {
    const before = pinned?.steps[part] ?? null;
    return {
      part,
      isIn: IN.some((each) => each === part),
      now: now.steps[part],
      pinned: before,
      change: before && now.steps[part].units - before.units,
    };
  });
  return { rows, now, pinned, digits, span_J };
}

/** A whole number of printed units in megajoules. */
export const megajoules = (units: number, digits: number): number => units / 10 ** digits;
