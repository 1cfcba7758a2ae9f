import { duplicated, moved, removed, split, type Edit } from '../../../state/phase-edits.ts';
import type { PhaseList } from '../../../display/phase-plan.ts';

export const ROW_ACTIONS = ['earlier', 'later', 'split', 'duplicate', 'remove'] as const;
export type RowAction = (typeof ROW_ACTIONS)[number];

/** What each button of a phase makes of the list. */
export const edits: Record<RowAction, (list: PhaseList, at: number) => Edit> = {
  earlier: (list, at) => moved(list, at, -1),
  later: (list, at) => moved(list, at, 1),
  split,
  duplicate: duplicated,
  remove: removed,
};

/** What is said when it is done. */
export const done: Record<RowAction, string> = {
  earlier: 'moved earlier',
  later: 'moved later',
  split: 'split in two',
  duplicate: 'duplicated',
  remove: 'removed',
};
