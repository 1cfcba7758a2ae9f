/** The books of a corner: what was made, stored and lost between two moments of its stint. */
import { nodeTemperatures, storedHeat, BOOK, type Stepper } from '../disc/stepper.ts';
import type { Ledger, Ledgers } from './corner-facts.ts';
import type { Passage } from './passages.ts';

/** What has been booked by a moment, and what is stored in the corner then. */
export interface Entry {
  /** By BOOK [J] */
  booked_J: Float64Array;
  /** Recomputed from temperatures, so that what a ledger leaves unexplained is honest [J] */
  stored_J: number;
}

export const entryOf = (stepper: Stepper): Entry => ({
  booked_J: stepper.booked_J.slice(),
  stored_J: storedHeat(stepper, nodeTemperatures(stepper)),
});

/** Where the heat went from one entry to a later one. */
function ledgerBetween(before: Entry, after: Entry): Ledger {
  const book = (kind: keyof typeof BOOK): number =>
    after.booked_J[BOOK[kind]]! - before.booked_J[BOOK[kind]]!;
  const stored = after.stored_J - before.stored_J;
  const [brakeHeat, faceAir, vaneAir] = [book('brakeHeat'), book('faceAir'), book('vaneAir')];
  const [otherAir, radiation, conducted] = [book('otherAir'), book('radiation'), book('conducted')];
  const residual = brakeHeat - stored - faceAir - vaneAir - otherAir - radiation - conducted;
  return { brakeHeat, stored, vaneAir, faceAir, otherAir, radiation, conducted, residual };
}

/** The ledgers of the stint, of each lap and of all standing, from the entries at its start and at the end of each passage. */
export function ledgersOf(passages: readonly Passage[], entries: readonly Entry[]): Ledgers {
  const lapLedgers_J: Ledger[] = [];
  let standLedger_J = ledgerBetween(entries[0]!, entries[0]!);
  passages.forEach(({ kind }, i) => {
    const ledger = ledgerBetween(entries[i]!, entries[i + 1]!);
    if (kind === 'stand') standLedger_J = sumOf(standLedger_J, ledger);
    else lapLedgers_J.push(ledger);
  });
  return { ledger_J: ledgerBetween(entries[0]!, entries.at(-1)!), lapLedgers_J, standLedger_J };
}

function sumOf(one: Ledger, other: Ledger): Ledger {
  const keys = Object.keys(one) as (keyof Ledger)[];
  return Object.fromEntries(keys.map((key) => [key, one[key] + other[key]])) as unknown as Ledger;
}
