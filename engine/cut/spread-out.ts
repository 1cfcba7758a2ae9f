/** Places on a rim chosen as far from one another as can be. */

import type { RimPlace } from './rim.ts';
import { distance_mm } from './side.ts';

/** Places that bow more than the straightest by so much are left where there are straighter ones. */
const MORE_BOW = 0.02;

/** So many places, none in the room of another or of those taken; fewer where there are no more. */
export function spreadOut(
  places: readonly RimPlace[],
  count: number,
  taken: readonly RimPlace[],
): RimPlace[] {
  const least = Math.min(...places.map(({ bow }) => bow));
  const straight = farApart(
    places.filter(({ bow }) => bow <= least + MORE_BOW),
    count,
    taken,
  );
  return straight.length < count ? farApart(places, count, taken) : straight;
}

/** How much lies between the rooms of two places; below 0 where they overlap [mm] */
const between_mm = (a: RimPlace, b: RimPlace): number =>
  distance_mm(a.middle, b.middle) - (a.room_mm + b.room_mm) / 2;

/** First the two that are furthest apart, then again and again the one that is furthest from all. */
function farApart(places: readonly RimPlace[], count: number, taken: readonly RimPlace[]): RimPlace[] {
  const chosen = taken.length > 0 || count < 2 ? [] : furthestPair(places);
  while (chosen.length < count) {
    const free_mm = (place: RimPlace): number =>
      Math.min(...[...taken, ...chosen].map((other) => between_mm(place, other)));
    const best = furthest(places, free_mm);
    if (!best || free_mm(best) < 0) return chosen;
    chosen.push(best);
  }
  return chosen;
}

/** Of those as far but for rounding the first. */
function furthest(places: readonly RimPlace[], far_mm: (place: RimPlace) => number): RimPlace | null {
  let best: RimPlace | null = null;
  for (const place of places) if (!best || far_mm(place) > far_mm(best) + 1e-6) best = place;
  return best;
}

/** None where even these are in each other's way. */
function furthestPair(places: readonly RimPlace[]): RimPlace[] {
  const partners = places.map(
    (place) => [place, furthest(places, (other) => between_mm(place, other))!] as const,
  );
  let best: readonly [RimPlace, RimPlace] | null = null;
  for (const pair of partners) if (!best || between_mm(...pair) > between_mm(...best) + 1e-6) best = pair;
  return best && between_mm(...best) >= 0 ? [...best] : [];
}
