/** What must be true of every panel before it is cut. */

import { problem, type Problem } from '../scenario/problem.ts';
import { LEAST_CORNER_MM } from './fastener.ts';
import { boxOf, flattened, heightOf, insideOf, longest_mm, widthOf } from './path.ts';
import { movedOutward } from './offset.ts';
import { cutsOf, plateArea_mm2, type Plate } from './plate.ts';
import { distanceFrom } from './rim.ts';
import type { PanelWish } from './wish.ts';

/** Beyond rounding of drawings [mm] */
const SLACK_MM = 0.05;
/** Of plate between an opening and a round corner; elsewhere it is wider (common practice, no source) [mm] */
const LEAST_RIM_MM = 2;
const ROUGH_MM = 0.2;
/** What a panel closes may be off what was asked by so much of it [-] */
const MOST_OFF = 0.001;
/** What a blank covers may be more than was asked, where it cannot be more open [percentage points] */
const MOST_OFF_PCT = 0.01;

/** What is wrong with the plates themselves; where anything is, they get no tabs. At most one problem. */
export function formProblems(flat: readonly Plate[], wish: PanelWish): Problem[] {
  const { mouth, blanking_pct, corner_mm, coveredAt } = wish;
  if (!(corner_mm >= LEAST_CORNER_MM)) {
    return [problem('corner_mm', corner_mm, `at least ${LEAST_CORNER_MM}`, 'no sharp edges')];
  }
  if (flat.length === 0) {
    return [problem('panel.blanking_pct', blanking_pct, 'more than 0', 'nothing to cut')];
  }
  const { covered_mm2, covered_pct } = coveredAt(blanking_pct);
  if (covered_pct - blanking_pct > MOST_OFF_PCT) {
    const expected = `at least ${Math.ceil(10 * covered_pct) / 10}`;
    return [problem('panel.blanking_pct', blanking_pct, expected, 'the least that such a blank covers')];
  }
  const closes_mm2 = flat.reduce((sum, plate) => sum + plateArea_mm2(plate), 0);
  if (Math.abs(closes_mm2 / covered_mm2 - 1) <= MOST_OFF)
    return flat.every(hasRim) ? sizeProblems(flat, wish) : [rimProblem(wish)];
  if (closes_mm2 > covered_mm2 || flat.some(({ edge }) => edge.length === 0)) {
    const expected = `a plate wider than ${2 * corner_mm} mm`;
    return [problem('panel.blanking_pct', blanking_pct, expected, 'its corners have no room')];
  }
  const most = Math.floor((1000 * closes_mm2) / mouth.area_mm2) / 10;
  return [problem('panel.blanking_pct', blanking_pct, `at most ${most}`, 'its round corners close no more')];
}

/** A round corner may come near an opening, or cut it: then the plate does not hang together. */
function hasRim({ edge, openings }: Plate): boolean {
  const [isInside, distance] = [insideOf(edge), distanceFrom(edge)];
  const points = openings.flatMap((loop) => flattened(loop, ROUGH_MM));
  return points.every((point) => isInside(point) && distance(point) >= LEAST_RIM_MM);
}

const rimProblem = ({ corner_mm }: PanelWish): Problem =>
  problem(
    'corner_mm',
    corner_mm,
    `less: ${LEAST_RIM_MM} mm of plate round every opening`,
    'a round corner cuts one',
  );

/** Nothing but tabs may stand out of the mouth. */
function sizeProblems(flat: readonly Plate[], { mouth }: PanelWish): Problem[] {
  const isInside = insideOf(mouth.loop);
  const beyond = flat.flatMap(({ edge }) => flattened(edge)).filter((point) => !isInside(point));
  const distance = distanceFrom(mouth.loop);
  if (beyond.every((point) => distance(point) <= SLACK_MM)) return [];
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

/** A wider cut is no cut for a panel (common practice, no source) [mm] */
const MOST_KERF_MM = 3;

/** At most one problem for all plates that are cut with a kerf. */
export function kerfProblems(plates: readonly Plate[], kerf_mm: number): Problem[] {
  if (!(kerf_mm >= 0 && kerf_mm <= MOST_KERF_MM))
    return [problem('kerf_mm', kerf_mm, `0 to ${MOST_KERF_MM}`)];
  const isLost = plates.flatMap(cutsOf).some((loop) => movedOutward(loop, kerf_mm / 2).length === 0);
  if (!isLost) return [];
  return [problem('panel.kerf_mm', kerf_mm, 'less than the narrowest opening', 'it cannot be cut so fine')];
}

const tenths = (mm: number): number => Math.round(mm * 10) / 10;
