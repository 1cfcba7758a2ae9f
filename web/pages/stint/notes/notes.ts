/** The note of each key: the one list of all numbers that say where they come from. */
import { changeNotes } from './change-notes.ts';
import { drawNotes } from './draw-notes.ts';
import { driverNotes } from './driver-notes.ts';
import { lapNotes } from './lap-notes.ts';
import { ledgerNotes } from './ledger-notes.ts';
import { mapNotes } from './map-notes.ts';
import { momentNotes } from './moment-notes.ts';
import type { Maker, Note, Told } from './note.ts';
import { spanNotes } from './span-notes.ts';
import { verdictNotes } from './verdict-notes.ts';

const makers: Readonly<Record<string, Maker>> = {
  ...changeNotes,
  ...verdictNotes,
  ...spanNotes,
  ...drawNotes,
  ...driverNotes,
  ...lapNotes,
  ...ledgerNotes,
  ...mapNotes,
  ...momentNotes,
};

/** null where the key is none, or there is no such number today. */
export function noteOf(key: string, told: Told): Note | null {
  const [quantity = '', axle, side, ...more] = key.split('|');
  const corner = told.run.result.corners.find((each) => each.axle === axle && each.side === side);
  return (corner && makers[quantity]?.({ corner, more }, told)) ?? null;
}

/** Those of several keys that there are, in their order. */
export const notesOf = (keys: string, told: Told): { key: string; note: Note }[] =>
  keys.split(';').flatMap((key) => {
    const note = noteOf(key, told);
    return note ? [{ key, note }] : [];
  });
