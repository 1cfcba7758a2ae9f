/** What the browser keeps of the sheet, for the next time it is opened. A cache that may be denied, full or gone. */
import { createStore, get, set, type UseStore } from 'idb-keyval';
import type { Axle, Scenario } from '../../engine/index.ts';
import type { View } from '../pages/stint/view.ts';
import type { Step } from './history.ts';
import { inTime } from './in-time.ts';
import type { EventPart } from './event-part.ts';
import type { Sheet } from './session.svelte.ts';

/** What is in view, and where in the stint. */
export interface Place {
  view: View;
  axle: Axle;
  cursor_s: number;
}

export interface KeptSheet {
  /** Milliseconds since 1970. */
  at_ms: number;
  scenario: Scenario;
  past: readonly Step<Sheet>[];
  future: readonly Step<Sheet>[];
  pins: readonly Scenario[];
  /** Nothing where an earlier version kept the sheet. */
  event?: EventPart | null;
  place: Place;
}

let opened: UseStore | null = null;
const store = (): UseStore => (opened ??= createStore('emberlap sheet', 'kept'));

/** The sheet as it was kept last, null where none is. Rejects where the storage is denied or gives no answer in time. */
export const recallSheet = (patience_ms: number): Promise<KeptSheet | null> =>
  inTime(async () => (await get<KeptSheet>('sheet', store())) ?? null, patience_ms);

/** Puts it in the place of the one before. Rejects where the storage is denied or full. */
export const keepSheet = (sheet: KeptSheet): Promise<void> => inTime(() => set('sheet', sheet, store()));

/** A file that the browser can write to again, and the hash of the scenario that is in it. */
export interface KeptFile {
  handle: FileSystemFileHandle;
  hash: string;
}

/** The file that the sheet is saved in. */
export const recallFile = (): Promise<KeptFile | null> =>
  inTime(async () => (await get<KeptFile>('file', store())) ?? null);
export const keepFile = (file: KeptFile | null): Promise<void> => inTime(() => set('file', file, store()));
