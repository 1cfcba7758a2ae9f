/** Notes on the numbers of the moment: what the model does, then the calculation by hand. */
import type { Maker } from './note.ts';
import { modelWords, numberKeys, type NumberKey } from '../../../display/whence.ts';

const AIR: readonly NumberKey[] = ['ram', 'duct', 'vanes', 'leak', 'plenum'];

const momentNote =
  (key: NumberKey): Maker =>
  ({ more: [name = ''] }) => ({
    name,
    value: '',
    what: modelWords(key),
    lines: [],
    source: '',
    model: AIR.includes(key) ? 'Air' : 'Disc',
    byHand: key,
  });

export const momentNotes = Object.fromEntries(numberKeys.map((key) => [key, momentNote(key)]));
