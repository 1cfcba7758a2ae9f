/** What must be true of every panel before it is cut. */

import { problem, type Problem } from '../scenario/problem.ts';
import { FASTENERS, LEAST_CORNER_MM, PULL_TAB } from './fastener.ts';
import { flattened, insideOf, longest_mm } from './path.ts';
import type { Plate } from './plate.ts';
import { distanceToLoop_mm } from './rim.ts';
import type { PanelWish } from './wish.ts';

/** Beyond rounding of drawings [mm] */
const SLACK_MM = 0.05;

export function panelProblems(plates: readonly Plate[], wish: PanelWish): Problem[] {
  const found = [...cornerProblems(wish), ...(plates.length === 0 ? [nothingToCut(wish.blanking_pct)] : [])];
  if (plates.some(({ edge }) => edge.length === 0)) return [...found, tooNarrow(wish)];
  return [
    ...found,
    ...plates.flatMap((plate) => [...hoseProblems(plate, wish), ...sizeProblems(plate, wish)]),
  ];
}

const cornerProblems = ({ corner_mm }: PanelWish): Problem[] =>
  corner_mm >= LEAST_CORNER_MM
    ? []
    : [problem('panel.corner_mm', corner_mm, `at least ${LEAST_CORNER_MM}`, 'no sharp edges')];

const nothingToCut = (blanking_pct: number): Problem =>
  problem('panel.blanking_pct', blanking_pct, 'more than 0', 'nothing to cut');

const tooNarrow = ({ blanking_pct, corner_mm }: PanelWish): Problem =>
  problem(
    'panel.blanking_pct',
    blanking_pct,
    `a plate wider than ${2 * corner_mm} mm`,
    'its corners have no room',
  );

/** A plate no longer than the hose is wide could be drawn into it. */
function hoseProblems({ edge }: Plate, { hose_mm }: PanelWish): Problem[] {
  const longest = longest_mm(edge);
  if (longest > hose_mm) return [];
  return [
    problem(
      'panel.longest_mm',
      round(longest),
      `more than the hose of ${hose_mm} mm`,
      'it could be drawn in',
    ),
  ];
}

/** Nothing but tabs may stand out of the mouth. */
function sizeProblems({ edge }: Plate, wish: PanelWish): Problem[] {
  const { mouth } = wish;
  const isInside = insideOf(mouth.loop);
  const beyond = flattened(edge, 0.05).filter((point) => !isInside(point));
  const over_mm = Math.max(0, ...beyond.map((point) => distanceToLoop_mm(mouth.loop, point)));
  const tab_mm = furthestCorner_mm(wish);
  if (over_mm <= tab_mm + SLACK_MM) return [];
  const expected = `at most ${round(tab_mm)}, its tabs`;
  return [problem('panel.beyond_the_mouth_mm', round(over_mm), expected, 'made for another mouth?')];
}

/** The corner of a tab, seen from the middle of its root on a rim that bows away from it. */
function furthestCorner_mm({ hold, fastener }: PanelWish): number {
  const pull = Math.hypot(PULL_TAB.length_mm, PULL_TAB.width_mm / 2);
  const { edge_mm } = FASTENERS[fastener];
  return hold === 'tabs' ? Math.max(pull, Math.hypot(2 * edge_mm, edge_mm)) : pull;
}

const round = (mm: number): number => Math.round(mm * 10) / 10;
