/** The geometry of mouths and blanks for who draws or makes them. Not needed for a rectangle that is blanked from outboard. */
import { blankOf } from '../duct/blank-keys.ts';
import { blankFor, type Covered } from '../duct/blank.ts';
import { mouthOutline } from '../duct/mouth-outline.ts';
import { sweepOf } from '../duct/sweep.ts';
import type { Duct } from './schema.ts';
import type { Reach, Tape } from './tape.ts';

export { sidesOf, type Loop } from '../duct/loop.ts';
export { sizeMouth } from '../duct/mouth-outline.ts';
export { blankOf, mouthOutline };

const lastBlanks = new WeakMap<Duct, { pct: number; covered: Covered }>();

/** What the blank of a duct covers; the last one is remembered, for it is drawn and told of at once. */
export function blankAt(duct: Duct, pct: number): Covered {
  const last = lastBlanks.get(duct);
  if (last?.pct === pct) return last.covered;
  const covered = blankFor(mouthOutline(duct), blankOf(duct), pct);
  lastBlanks.set(duct, { pct, covered });
  return covered;
}

const reaches = new WeakMap<Duct, Reach>();

/** The duct as tape sees it: with what a straight edge covers of its mouth, where that is not in proportion. */
export function taped(duct: Duct): Duct & Tape {
  if ((duct.mouth_shape ?? 'rectangle') === 'rectangle') return duct;
  let reach = reaches.get(duct);
  if (!reach) reaches.set(duct, (reach = reachFor(duct)));
  return { ...duct, reach };
}

function reachFor(duct: Duct): Reach {
  const outline = mouthOutline(duct);
  const { across_mm, coveredAt, depthFor } = sweepOf(outline, blankOf(duct).from);
  return {
    across_mm,
    pctAt: (depth_mm) => (100 * coveredAt(depth_mm)) / outline.area_mm2,
    depthFor: (pct) => depthFor((outline.area_mm2 * pct) / 100),
  };
}
