/** A tab that stands out of the mouth, part of the plate. */

import type { Loop } from '../duct/loop.ts';
import { loopLength_mm, sidesOf } from './path.ts';
import { pointsAlong, type RimPlace } from './rim.ts';
import { beyond, partOf, sideLength_mm, type Point, type Side } from './side.ts';

export interface Tab {
  place: RimPlace;
  /** From the middle of its place on the rim. */
  length_mm: number;
}

/** The plate with tabs on its edge; their corners are not rounded yet. */
export function withTabs(plate: Loop, tabs: readonly Tab[]): Loop {
  if (tabs.length === 0) return plate;
  const whole = loopLength_mm(plate);
  const inTurn = [...tabs].sort((a, b) => a.place.middle_mm - b.place.middle_mm);
  return inTurn.flatMap((tab, i) => {
    const next = inTurn[(i + 1) % inTurn.length]!.place;
    const until = next.start_mm + (i + 1 === inTurn.length ? whole : 0);
    return [...tabCorners(plate, tab), ...edgeBetween(plate, tab.place.end_mm, until)];
  });
}

/** Out along one side of the tab, and back along the other. */
function tabCorners(plate: Loop, { place, length_mm }: Tab): Loop {
  const { middle, outward } = place;
  const pointAt = pointsAlong(plate);
  const [from, to] = [pointAt(place.start_mm), pointAt(place.end_mm)];
  const behind = (p: Point): number =>
    (middle.x_mm - p.x_mm) * outward.x + (middle.y_mm - p.y_mm) * outward.y; // where the rim bows out
  const out = (point: Point): Point => beyond(point, outward, length_mm + behind(point));
  return [from, out(from), out(to)].map((point) => ({ ...point, bulge: 0 }));
}

/** The plate's own edge between two ways along it, neither more than once round before or behind its start. */
function edgeBetween(plate: Loop, from_mm: number, to_mm: number): Loop {
  const sides = sidesOf(plate);
  let way_mm = -loopLength_mm(plate);
  const parts: Side[] = [];
  for (const side of [...sides, ...sides, ...sides]) {
    const length = sideLength_mm(side);
    const [start, end] = [(from_mm - way_mm) / length, (to_mm - way_mm) / length];
    if (end > 1e-9 && start < 1 - 1e-9) parts.push(partOf(side, Math.max(0, start), Math.min(1, end)));
    way_mm += length;
  }
  return parts.map(({ from, bulge }) => ({ ...from, bulge }));
}
