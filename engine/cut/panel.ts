/** A panel from the mouth it fits: the plates that cover what the plan says, held outside of the mouth or through the plate. */

import { rootFalling } from '../duct/bracketed-root.ts';
import type { Covered } from '../duct/blank.ts';
import { areaLoop, type Loop } from '../duct/loop.ts';
import type { Problem } from '../scenario/problem.ts';
import { LEAST_CORNER_MM } from './fastener.ts';
import { heldPlate } from './hold.ts';
import { roundedOutward } from './offset.ts';
import { formProblems, hoseProblems } from './panel-checks.ts';
import { insideOf } from './path.ts';
import { plateArea_mm2, type Plate } from './plate.ts';
import type { RimPlace } from './rim.ts';
import { roundedCorners } from './round-corners.ts';
import type { Point } from './side.ts';
import type { PanelWish } from './wish.ts';

export interface Panel {
  /** The right corner's, seen from the front of the car; more than one where the mouth's form parts them. */
  plates: Plate[];
  /** What they close of the mouth, corners rounded and tabs left out. */
  closes_mm2: number;
  problems: Problem[];
}

/** How far rounding may move the blanking that is asked for, either way [percentage points] */
const MOVE_PCT = 15;
/** [percentage points] */
const SETTLED_PCT = 1e-5;

/**
 * The panel that closes what its blanking says although its corners are round: what they leave open or cover is made good by the
 * blank's own size.
 */
export function drawPanel(wish: PanelWish): Panel {
  const flat = flatPlates(wish);
  const closes_mm2 = flat.reduce((sum, plate) => sum + plateArea_mm2(plate), 0);
  const spoilt = formProblems(flat, wish);
  if (spoilt.length > 0) return { plates: flat, closes_mm2, problems: spoilt };
  const taken: RimPlace[] = [];
  const held = flat.map((plate) => heldPlate(plate, wish, taken));
  const problems = held.flatMap((one) => [...hoseProblems(one.plate, wish), ...one.problems]);
  return { plates: held.map(({ plate }) => plate), closes_mm2, problems };
}

function flatPlates({ coveredAt, blanking_pct, corner_mm }: PanelWish): Plate[] {
  if (!(corner_mm >= LEAST_CORNER_MM)) return [];
  const asked = coveredAt(blanking_pct);
  const platesAt = (pct: number): Plate[] => roundedPlates(coveredAt(pct), corner_mm);
  const lacking_mm2 = (plates: Plate[]): number =>
    asked.covered_mm2 - plates.reduce((sum, plate) => sum + plateArea_mm2(plate), 0);
  const asIs = roundedPlates(asked, corner_mm);
  if (Math.abs(lacking_mm2(asIs)) < 1e-6 * asked.covered_mm2) return asIs;
  const bracket = {
    low: Math.max(0, asked.covered_pct - MOVE_PCT),
    high: Math.min(100, asked.covered_pct + MOVE_PCT),
    tolerance: SETTLED_PCT,
  };
  return platesAt(rootFalling((pct) => lacking_mm2(platesAt(pct)), bracket));
}

/** The pieces of a blank with round corners, each with the openings that lie in it. */
function roundedPlates({ pieces }: Covered, corner_mm: number): Plate[] {
  const openings = pieces.filter((loop) => areaLoop(loop) < 0);
  return pieces
    .filter((loop) => areaLoop(loop) > 0)
    .map((piece) => {
      const isInside = insideOf(piece);
      const own = openings.filter((loop) => isInside(loop[0]!));
      const edge = roundedCorners(piece, corner_mm, turnsOut) ?? roundedOutward(piece, corner_mm);
      return { edge, openings: own.map((loop) => roundedOpening(loop, corner_mm)), holes: [] };
    });
}

/** A corner of the mouth that points into it stays as it is: an arc there would lie on the body. */
const turnsOut = (_corner: Point, turn: number): boolean => turn > 0;

/** An opening that is too narrow for the radius is rounded by half of it, or left as it is: nobody's hand is in it. */
const roundedOpening = (loop: Loop, corner_mm: number): Loop =>
  roundedCorners(loop, corner_mm) ?? roundedCorners(loop, corner_mm / 2) ?? loop;
