/** What must be true of every panel before it is cut. */

import { problem, type Problem } from '../scenario/problem.ts';
import { LEAST_CORNER_MM } from './fastener.ts';
import { boxOf, flattened, heightOf, insideOf, longest_mm, widthOf } from './path.ts';
import type { Plate } from './plate.ts';
import { distanceToLoop_mm } from './rim.ts';
import type { PanelWish } from './wish.ts';

/** Beyond rounding of drawings [mm] */
const SLACK_MM = 0.05;

/** What is wrong with the plates themselves; where anything is, they get no tabs. At most one problem. */
export function formProblems(flat: readonly Plate[], wish: PanelWish): Problem[] {
  const { blanking_pct, corner_mm } = wish;
  if (!(corner_mm >= LEAST_CORNER_MM)) {
    return [problem('panel.corner_mm', corner_mm, `at least ${LEAST_CORNER_MM}`, 'no sharp edges')];
  }
  if (flat.length === 0) {
    return [problem('panel.blanking_pct', blanking_pct, 'more than 0', 'nothing to cut')];
  }
  if (flat.some(({ edge }) => edge.length === 0)) {
    const expected = `a plate wider than ${2 * corner_mm} mm`;
    return [problem('panel.blanking_pct', blanking_pct, expected, 'its corners have no room')];
  }
  return sizeProblems(flat, wish);
}

/** Nothing but tabs may stand out of the mouth. */
function sizeProblems(flat: readonly Plate[], { mouth }: PanelWish): Problem[] {
  const isInside = insideOf(mouth.loop);
  const beyond = flat.flatMap(({ edge }) => flattened(edge)).filter((point) => !isInside(point));
  if (beyond.every((point) => distanceToLoop_mm(mouth.loop, point) <= SLACK_MM)) return [];
  const size = boxOf(flat.map(({ edge }) => edge));
  const found = `${tenths(widthOf(size))} x ${tenths(heightOf(size))} mm`;
  const expected = `inside of a mouth of ${tenths(mouth.width_mm)} x ${tenths(mouth.height_mm)} mm but for tabs`;
  return [problem('panel.size', found, expected, 'made for another mouth?')];
}

/** A plate no longer than the hose is wide could be drawn into it. */
export function hoseProblems({ edge }: Plate, { hose_mm }: PanelWish): Problem[] {
  const longest = longest_mm(edge);
  if (longest > hose_mm) return [];
  const expected = `more than the hose of ${hose_mm} mm`;
  return [problem('panel.longest_mm', tenths(longest), expected, 'it could be drawn in')];
}

const tenths = (mm: number): number => Math.round(mm * 10) / 10;
