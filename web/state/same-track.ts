/** A track that is driven again stays the same object, so that what is drawn of it alone is not drawn anew in every frame. */
import type { StintResult } from '../../engine/index.ts';

type Track = StintResult['track'];

/** The result with the track of the one before it, where that has the same outline and corners. */
export const onSameTrack = (result: StintResult, before: StintResult | undefined): StintResult =>
  before && isSame(before.track, result.track) ? { ...result, track: before.track } : result;

function isSame(a: Track, b: Track): boolean {
  const [had, has] = [a.outline, b.outline];
  const isSameOutline =
    had && has
      ? isSameColumn(had.distance_m, has.distance_m) &&
        isSameColumn(had.x_m, has.x_m) &&
        isSameColumn(had.y_m, has.y_m)
      : had === has;
  return (
    isSameOutline &&
    a.length_m === b.length_m &&
    a.corners.length === b.corners.length &&
    a.corners.every(({ name, at_m }, i) => name === b.corners[i]?.name && at_m === b.corners[i].at_m)
  );
}

const isSameColumn = (a: Float64Array, b: Float64Array): boolean =>
  a.length === b.length && a.every((value, i) => value === b[i]);
