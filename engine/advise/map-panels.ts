/** Which panel of a set is fitted in a cell of a conditions map: of those that stay in the one with the largest weighed margin. */
import type { AxlePlan } from './axle-plan.ts';
import type { Look } from './look.ts';
import type { SpanCell } from './map-cell.ts';
import { weighed_K, type MarginDoubt } from './margin-doubt.ts';
import { together, type Steps } from './search.ts';

/** What is brought for an axle, an open mouth first. */
export type SetOfAxle = Pick<AxlePlan, 'axle' | 'panels'>;

/** Weighed margins of one corner by place in the set: of the panels that stay in those that may be the best [K] */
export type Tried = ReadonlyMap<number, number>;

interface Asked extends Pick<SpanCell, 'span_pct' | 'best'> {
  panels: SetOfAxle['panels'];
  /** Whether the axle has no other corner that must do with the same panel. */
  isAlone: boolean;
}

/** Looks at few: with more blanking the hot margin falls and the cold one grows, so from the best on all others have less to spare. */
export function* triedIn(
  look: Look,
  doubt: MarginDoubt,
  { span_pct, best, panels, isAlone }: Asked,
): Steps<Tried> {
  if (!span_pct || !best) return new Map();
  const coverOf = (place: number): number =>
    panels[place]!.sides_pct?.[doubt.side] ?? panels[place]!.blanking_pct;
  const inside = panels
    .map((_, place) => place)
    .filter((place) => span_pct[0] <= coverOf(place) && coverOf(place) <= span_pct[1]);
  if (inside.length < 2) return new Map(inside.map((place) => [place, best.weighed_K]));
  function* weighedAt(place: number): Steps<[number, number]> {
    return [place, weighed_K((yield* look(coverOf(place))).verdict, doubt)];
  }
  if (!isAlone) return new Map(yield* together(inside.map(weighedAt)));
  const below = inside.findLastIndex((place) => coverOf(place) <= best.blanking_pct);
  const tried = new Map<number, number>();
  let most_K = -Infinity;
  for (const place of inside.slice(Math.max(0, below))) {
    const [, margin_K] = yield* weighedAt(place);
    tried.set(place, margin_K);
    if (margin_K <= most_K) break;
    most_K = margin_K;
  }
  return tried;
}

/** By all corners of an axle at once, of which the worse counts; of equals the most open. Null: none keeps all of them in. */
export function fitBy(corners: readonly Tried[]): number | null {
  const [first, ...others] = corners;
  const places = [...(first?.keys() ?? [])].filter((place) => others.every((tried) => tried.has(place)));
  const worst_K = (place: number): number => Math.min(...corners.map((tried) => tried.get(place)!));
  return places.reduce<number | null>(
    (best, place) => (best !== null && worst_K(place) <= worst_K(best) ? best : place),
    null,
  );
}
