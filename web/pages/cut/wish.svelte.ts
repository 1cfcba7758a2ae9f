/** What is asked of the panels to be cut beyond what the sheet says: it stays while another page is read. */
import type { Axle, CutRequest } from '../../../engine/index.ts';
import { isoDay } from '../../display/iso-day.ts';
import type { Side } from '../../state/sides.ts';

export interface Wish extends Pick<
  CutRequest,
  'hold' | 'fastener' | 'corner_mm' | 'kerf_mm' | 'by' | 'supersedes' | 'date'
> {
  axle: Axle;
  side: Side | 'both';
  /** Places in the set that were chosen or left; null: all that can be cut. */
  letters: readonly string[] | null;
  /** One blanking by itself in place of the set. */
  typed_pct: number | null;
  bed: 'A4' | 'Letter' | 'bed';
  bed_mm: readonly [width: number, height: number];
  /** What the rulers of a print measured. */
  across_mm: number;
  up_mm: number;
  hasTape: boolean;
}

const NAME = 'emberlap panels 1';

export const wish = $state<Wish>({
  axle: 'front',
  side: 'both',
  letters: null,
  typed_pct: null,
  hold: 'tabs',
  fastener: 'quarter-turn',
  corner_mm: 3,
  kerf_mm: 0,
  bed: 'A4',
  bed_mm: [600, 400],
  across_mm: 100,
  up_mm: 100,
  by: '',
  supersedes: '',
  hasTape: false,
  ...kept(),
  date: isoDay(Date.now()),
});

/** A page that is loaded anew has what was typed in it, or a kerf would be lost unseen; the day is today's. */
export function keep(): void {
  try {
    sessionStorage.setItem(NAME, JSON.stringify(wish));
  } catch {
    // denied or full: it holds until the page is left
  }
}

function kept(): Partial<Wish> {
  try {
    return (JSON.parse(sessionStorage.getItem(NAME) ?? '{}') as Partial<Wish> | null) ?? {};
  } catch {
    return {};
  }
}

/** Whether the page was open before: then it is as it was left. */
export const opened = { before: Object.keys(kept()).length > 0 };
