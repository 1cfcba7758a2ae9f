/** One plate to be cut: its edge, its openings and its round holes; and what moves all of them. */

import { areaLoop, circle, reversed, type Loop } from '../duct/loop.ts';
import { mirroredLoop } from './path.ts';
import type { Point } from './side.ts';

export interface RoundHole extends Point {
  readonly diameter_mm: number;
  readonly use: 'fastener' | 'tether';
}

export interface Plate {
  /** Counter-clockwise, tabs included. */
  readonly edge: Loop;
  /** What it leaves open, clockwise. */
  readonly openings: readonly Loop[];
  readonly holes: readonly RoundHole[];
}

/** Everything that is cut: the edge counter-clockwise, openings and holes clockwise. */
export const cutsOf = ({ edge, openings, holes }: Plate): Loop[] => [
  edge,
  ...openings,
  ...holes.map((hole) => reversed(circle(hole.x_mm, hole.y_mm, hole.diameter_mm))),
];

/** The plate's own area; its fasteners close their holes, so they count as plate [mm²] */
export const plateArea_mm2 = ({ edge, openings }: Plate): number =>
  [edge, ...openings].reduce((sum, loop) => sum + areaLoop(loop), 0);

/** The plate of the other side of the car. */
export const mirroredPlate = (plate: Plate): Plate => ({
  edge: mirroredLoop(plate.edge),
  openings: plate.openings.map(mirroredLoop),
  holes: plate.holes.map((hole) => ({ ...hole, x_mm: 0 - hole.x_mm })),
});
