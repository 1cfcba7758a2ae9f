/** What a person corrected about files with one header, kept in the browser. A cache that may be denied, full or gone. */
import { createStore, del, get, set, type UseStore } from 'idb-keyval';
import type { TraceChoices } from '../../engine/index.ts';
import { inTime } from './in-time.ts';

export interface Correction {
  choices: TraceChoices;
  /** When it was made, milliseconds since 1970. */
  at_ms: number;
}

/** Every way in and out may reject; then nothing is remembered and nothing else is lost. */
export interface Memory {
  recall(fingerprint: string): Promise<Correction | null>;
  keep(fingerprint: string, correction: Correction): Promise<void>;
  forget(fingerprint: string): Promise<void>;
}

let opened: UseStore | null = null;
const store = (): UseStore => (opened ??= createStore('emberlap', 'trace corrections'));

export const browserMemory: Memory = {
  recall: (fingerprint) => inTime(async () => correctionOf(await get(fingerprint, store()))),
  keep: (fingerprint, correction) => inTime(() => set(fingerprint, correction, store())),
  forget: (fingerprint) => inTime(() => del(fingerprint, store())),
};

/** What was stored, perhaps by another version; null where it is not a correction. */
export function correctionOf(stored: unknown): Correction | null {
  if (typeof stored !== 'object' || stored === null) return null;
  const { choices, at_ms } = stored as Partial<Correction>;
  return typeof choices === 'object' && choices !== null && typeof at_ms === 'number'
    ? { choices, at_ms }
    : null;
}
