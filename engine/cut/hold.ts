/** What holds a plate: fasteners along the rim, and a tab to pull it out by and to tie it to. */

import type { Loop } from '../duct/loop.ts';
import { problem, type Problem } from '../scenario/problem.ts';
import { FASTENERS, MOST_FASTENERS, PITCH_MM, PULL_TAB } from './fastener.ts';
import { roundedByMoving } from './offset.ts';
import { insideOf } from './path.ts';
import type { Plate, RoundHole } from './plate.ts';
import { distanceFrom, rimLength_mm, rimPlaces, type RimPlace } from './rim.ts';
import { roundedCorners } from './round-corners.ts';
import { spreadOut } from './spread-out.ts';
import { beyond, distance_mm, toTheLeft, type Point } from './side.ts';
import { withTabs, type Tab } from './tab.ts';
import type { PanelWish } from './wish.ts';

export interface Held {
  plate: Plate;
  problems: Problem[];
}

/** Kept free on both sides of a tab, beyond the round corners at its root [mm] */
const ROOT_MM = 1;

/** A plate with its fasteners and its pull tab. What has been placed is added to `taken`. */
export function heldPlate(flat: Plate, wish: PanelWish, taken: RimPlace[]): Held {
  const { fasteners, pull } = placesOn(flat, wish, taken);
  taken.push(...(wish.hold === 'tabs' ? fasteners : []), ...pull);
  const tabs = [
    ...(wish.hold === 'tabs' ? fasteners.map((place) => fastenerTab(place, wish)) : []),
    ...pull.map(pullTab),
  ];
  const held = withTabs(flat.edge, tabs);
  const isTabs = (corner: Point): boolean => !flat.edge.some((own) => distance_mm(own, corner) < 1e-6);
  const radius_mm = tabRadius_mm(wish);
  const edge = roundedCorners(held, radius_mm, isTabs) ?? roundedByMoving(held, radius_mm);
  const holes = [...fasteners.map((place) => fastenerHole(place, wish)), ...pull.map(tetherHole)];
  return {
    plate: { ...flat, edge, holes },
    problems: [
      ...fastenerProblems(fasteners.length, wish),
      ...pullProblems(pull.length),
      ...holeProblems(edge, holes),
    ],
  };
}

interface Places {
  fasteners: RimPlace[];
  pull: RimPlace[];
}

/** Fasteners as far apart as can be; where they leave no room for the tab to pull by, that one comes first. */
function placesOn(flat: Plate, wish: PanelWish, taken: readonly RimPlace[]): Places {
  const wanted = clamp(2, Math.ceil(rimLength_mm(flat.edge, wish.mouth.loop) / PITCH_MM), MOST_FASTENERS);
  if (wish.hold === 'holes')
    return { fasteners: holePlaces(flat, wish, wanted), pull: pullPlaces(flat, wish, taken) };
  const fasteners = tabPlaces(flat, wish, taken, wanted);
  const pull = pullPlaces(flat, wish, [...taken, ...fasteners]);
  if (pull.length > 0) return { fasteners, pull };
  const first = pullPlaces(flat, wish, taken);
  return { fasteners: tabPlaces(flat, wish, [...taken, ...first], wanted), pull: first };
}

/** Larger ones would leave nothing of a tab's sides between its end and its root. */
const tabRadius_mm = ({ corner_mm, fastener }: PanelWish): number =>
  Math.min(corner_mm, 0.75 * FASTENERS[fastener].edge_mm);

/** A tab that the rounding of corners has taken is no tab. */
function holeProblems(edge: Loop, holes: readonly RoundHole[]): Problem[] {
  const distance = distanceFrom(edge);
  const isInside = insideOf(edge);
  if (holes.every((hole) => isInside(hole) && distance(hole) > hole.diameter_mm)) return [];
  return [problem('panel.hold', 'less', 'a hole and its rim on every tab', 'a smaller radius, or holes?')];
}

const clamp = (low: number, value: number, high: number): number => Math.min(high, Math.max(low, value));

function tabPlaces(flat: Plate, wish: PanelWish, taken: readonly RimPlace[], count: number): RimPlace[] {
  const { edge_mm } = FASTENERS[wish.fastener];
  return standingOut(flat, wish, { width_mm: 2 * edge_mm, length_mm: 2 * edge_mm }, taken, count);
}

const pullPlaces = (flat: Plate, wish: PanelWish, taken: readonly RimPlace[]): RimPlace[] =>
  standingOut(flat, wish, PULL_TAB, taken, 1);

/** Places for tabs of a size that reach no other part of the mouth. */
function standingOut(
  { edge }: Plate,
  wish: PanelWish,
  size: { width_mm: number; length_mm: number },
  taken: readonly RimPlace[],
  count: number,
): RimPlace[] {
  const { mouth } = wish;
  const root_mm = tabRadius_mm(wish) + ROOT_MM;
  const isInside = insideOf(mouth.loop);
  const distance = distanceFrom(mouth.loop);
  const free = rimPlaces(edge, mouth.loop, { width_mm: size.width_mm, root_mm }).filter((place) =>
    tips(place, size).every((tip) => !isInside(tip) && distance(tip) > size.length_mm / 2),
  );
  return spreadOut(free, count, taken);
}

const tips = (place: RimPlace, { width_mm, length_mm }: { width_mm: number; length_mm: number }): Point[] =>
  [-0.5, 0, 0.5].map((share) =>
    beyond(beyond(place.middle, place.outward, length_mm), toTheLeft(place.outward), share * width_mm),
  );

/** Holes in the plate itself, as far from every edge as their fastener wants. */
function holePlaces({ edge, openings }: Plate, { mouth, fastener }: PanelWish, count: number): RimPlace[] {
  const { edge_mm } = FASTENERS[fastener];
  const distances = [edge, ...openings].map(distanceFrom);
  const free = rimPlaces(edge, mouth.loop, { width_mm: 2 * edge_mm, root_mm: 0 }).filter((place) => {
    const middle = beyond(place.middle, place.outward, -edge_mm);
    return distances.every((distance) => distance(middle) > edge_mm - 0.02);
  });
  return spreadOut(free, count, []);
}

const fastenerTab = (place: RimPlace, { fastener }: PanelWish): Tab => ({
  place,
  length_mm: 2 * FASTENERS[fastener].edge_mm,
});

const pullTab = (place: RimPlace): Tab => ({ place, length_mm: PULL_TAB.length_mm });

function fastenerHole({ middle, outward }: RimPlace, { hold, fastener }: PanelWish): RoundHole {
  const { hole_mm, edge_mm } = FASTENERS[fastener];
  const at = beyond(middle, outward, hold === 'tabs' ? edge_mm : -edge_mm);
  return { ...at, diameter_mm: hole_mm, use: 'fastener' };
}

const tetherHole = ({ middle, outward }: RimPlace): RoundHole => ({
  ...beyond(middle, outward, PULL_TAB.length_mm - PULL_TAB.tether_mm * 1.5),
  diameter_mm: PULL_TAB.tether_mm,
  use: 'tether',
});

function fastenerProblems(found: number, { hold, fastener }: PanelWish): Problem[] {
  if (found >= 2) return [];
  const { edge_mm, name } = FASTENERS[fastener];
  const what =
    hold === 'tabs' ? `tabs of ${2 * edge_mm} mm on the rim` : `holes ${edge_mm} mm from every edge`;
  const hint = hold === 'tabs' ? 'a smaller fastener, or holes?' : 'a smaller fastener, or tabs?';
  return [problem('panel.hold', `room for ${found}`, `room for 2 ${what} (${name})`, hint)];
}

const pullProblems = (found: number): Problem[] =>
  found > 0
    ? []
    : [
        problem(
          'panel.pull_tab',
          'no room',
          `${PULL_TAB.width_mm} mm of free rim for the tab to pull and tether it by`,
        ),
      ];
