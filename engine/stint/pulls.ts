/**
 * How far left and right of an axle part: unequal discs brake unequally and pull the car to one side.
 *
 * Over the counted laps (all laps where none counts), the larger of two differences: the face at the start of the same hard
 * stop, taken at the stop that starts coldest on either side of the lap, and the face peak of the lap.
 * Common practice, no source.
 */
import type { CornerResult, Pull, Stop } from './result.ts';

/** Left and right differ by less than the first in practice, and from the second on it is a fault. Common practice, no source [K] */
const CAUTION_K = 40;
export const FAULT_K = 80;

/** One pull an axle whose sides differ. */
export function pullsOf(corners: readonly CornerResult[]): Pull[] {
  return (['front', 'rear'] as const).flatMap((axle) => {
    const at = (side: 'left' | 'right') => corners.find((one) => one.axle === axle && one.side === side);
    const [left, right] = [at('left'), at('right')];
    return left && right ? (largest(left, right) ?? []) : [];
  });
}

interface Difference {
  lap: number;
  at: Pull['at'];
  place: string;
  /** Left over right [K] */
  left_K: number;
}

function largest(left: CornerResult, right: CornerResult): Pull | null {
  const counted = left.laps.filter((lap, i) => lap.in !== null && right.laps[i]!.in !== null);
  const laps = new Set((counted.length > 0 ? counted : left.laps).map(({ lap }) => lap));
  const all = [...peakDifferences(left, right), ...stopDifferences(left, right)].filter(({ lap }) =>
    laps.has(lap),
  );
  const [first] = all.sort((a, b) => Math.abs(b.left_K) - Math.abs(a.left_K));
  if (!first) return null;
  const { lap, at, place, left_K } = first;
  const by_K = Math.abs(left_K);
  const calls = by_K > FAULT_K ? 'fault' : by_K > CAUTION_K ? 'caution' : 'nothing';
  return { axle: left.axle, lap, at, place, hotter: left_K >= 0 ? 'left' : 'right', by_K, calls };
}

const peakDifferences = (left: CornerResult, right: CornerResult): Difference[] =>
  left.laps.map((lap, i) => ({
    lap: lap.lap,
    at: 'face peak',
    place: lap.facePeakPlace,
    left_K: lap.faceMax_K - right.laps[i]!.faceMax_K,
  }));

/** Both sides brake at the same places, so their stops stand in the same order. */
function stopDifferences(left: CornerResult, right: CornerResult): Difference[] {
  const pairs = left.stops.map((stop, i) => ({ left: stop, right: right.stops[i]! }));
  const colder = (pair: { left: Stop; right: Stop }): number =>
    Math.min(pair.left.startFace_K, pair.right.startFace_K);
  return left.laps.flatMap(({ lap }) => {
    const hard = pairs.filter((pair) => pair.left.lap === lap && pair.left.hard && pair.right.hard);
    const [coldest] = hard.sort((a, b) => colder(a) - colder(b));
    if (!coldest) return [];
    const left_K = coldest.left.startFace_K - coldest.right.startFace_K;
    return [{ lap, at: 'stop start', place: coldest.left.place, left_K }];
  });
}
