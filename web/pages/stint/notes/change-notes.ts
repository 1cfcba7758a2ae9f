/** Notes on the words that tell what changed against the pinned run. */
import type { CornerResult } from '../../../../engine/index.ts';
import { cornerInView } from '../../../display/corner.ts';
import { changesOf, type Change } from '../../../display/difference.ts';
import { kelvins } from '../../../display/format.ts';
import { lessLine, partLine, type About, type Maker, type Told } from './note.ts';

/** Those that are temperatures; the others are differences themselves. */
const LEVELS = ['face peak', 'coldest stop', 'fluid'];

/** What the words tell of a corner. */
export function changes(corner: CornerResult, { pinned }: Told): Change[] {
  const before =
    pinned && cornerInView(pinned.result, corner.axle, corner.side === 'both' ? null : corner.side);
  return before ? changesOf(before, corner) : [];
}

const changed: Maker = ({ corner, more: [name] }: About, told) => {
  const from = changes(corner, told).find((each) => each.name === name)?.from;
  if (!from || name === undefined) return null;
  const isLevel = LEVELS.includes(name);
  const line = isLevel
    ? lessLine('T now − T pinned', from.is_K, from.was_K)
    : partLine('now − pinned', from.is_K, from.was_K);
  return {
    name: `change of the ${name}`,
    value: kelvins(from.is_K - from.was_K),
    what: `The ${name} of the run shown less that of the pinned one${isLevel ? '' : '; of a limit, what is left to it'}.`,
    lines: [line],
    source: 'both are whole runs',
    model: 'The window',
  };
};

export const changeNotes = { changed };
