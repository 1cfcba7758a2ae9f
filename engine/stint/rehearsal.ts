/**
 * Where the steps of a lap end: found by rehearsing the lap in a slab of iron with constant properties, under the lap's own
 * power and by the kernel's own method, once for each kind of lap.
 *
 * A step is taken as one and as two halves; where their faces differ by more than the tolerance it is shortened, where by
 * less the next is longer. So the steps are short where the brake builds up, long on the straight, and each errs alike.
 * Source of step doubling: Press et al., Numerical Recipes, 3rd edition (2007), section 17.2 (from memory).
 */
import { makeSlab } from './slab.ts';
import { joinHalves, parabolaOver, type HeatCurve } from './step-powers.ts';

/** Most that one step may err in the face [K] */
const TOLERANCE_K = 0.2;
/** Most that the face bends over a step that its top lies in, and an end this far to either side of the top: it is read off by a parabola [K], [s] */
const BEND_K = 1.2;
const TOP_S = 0.1;
/** First step tried after a mark, shortest, and longest: speed and so the air change within it [s] */
const FIRST_S = 0.06;
const SHORTEST_S = 0.004;
const LONGEST_S = 4;
/** Most that a step grows over the one before it, and least that it is cut to [-] */
const GROWTH = 3;
const CUT = 0.3;

const slab = makeSlab();
const parabola = (): Float64Array => new Float64Array(3);
const [first, second, whole] = [parabola(), parabola(), parabola()];

/** Ends of all steps of a lap. In each braking the times at which it begins, peaks, starts to end and ends are among them. */
export function stepEnds(curve: HeatCurve, brakings_s: number[][], duration_s: number): number[] {
  const { setStep, advance, farthest, column } = slab;
  const [one, half] = [column(), column()];
  let [T, two] = [column(), column()];
  const ends: number[] = [];
  let now = 0;
  for (const marks of [...brakings_s, [duration_s]]) {
    const before = ends.length;
    let top = { at_s: 0, face_K: -Infinity };
    for (const mark of marks) {
      let next = FIRST_S;
      while (now < mark) {
        const left = mark - now;
        const tried = left < 3 * next ? left / Math.ceil(left / next - 1e-9) : next;
        const end = left - tried < 1e-9 ? mark : now + tried;
        const middle = now + tried / 2;
        parabolaOver(curve, now, middle, first);
        parabolaOver(curve, middle, end, second);
        joinHalves(first, second, whole);
        setStep(tried);
        advance(whole, tried, T, one);
        setStep(tried / 2);
        advance(first, tried / 2, T, half);
        advance(second, tried / 2, half, two);
        const isTop = half[0]! > T[0]! && half[0]! > two[0]!;
        const bend_K = 2 * half[0]! - T[0]! - two[0]!;
        const error_K = Math.max(farthest(one, two), isTop ? (bend_K / BEND_K) * TOLERANCE_K : 0);
        const fits = 0.9 * tried * Math.cbrt(TOLERANCE_K / Math.max(error_K, 1e-9));
        if (error_K > TOLERANCE_K && tried > SHORTEST_S) {
          next = Math.max(fits, CUT * tried);
          continue;
        }
        if (isTop && half[0]! > top.face_K)
          top = { at_s: middle + ((tried / 4) * (two[0]! - T[0]!)) / bend_K, face_K: half[0]! };
        if (two[0]! > top.face_K) top = { at_s: end, face_K: two[0]! };
        ends.push(end);
        [T, two] = [two, T];
        now = end;
        next = Math.min(fits, GROWTH * tried, LONGEST_S);
      }
    }
    if (marks.length > 1) ends.push(...seeTop(ends.splice(before), top.at_s, marks));
  }
  return ends;
}

/** The ends of a braking, and more at and around the face's top in it, so that it can be read off. */
function seeTop(ends: number[], top_s: number, marks: number[]): number[] {
  const [from, to] = [marks[0]!, marks.at(-1)!];
  for (const t of [top_s - TOP_S, top_s, top_s + TOP_S]) {
    const isNear = ends.some((end) => Math.abs(end - t) < TOP_S / 3);
    if (t > from + TOP_S / 3 && t < to && !isNear) ends.push(t);
  }
  return ends.sort((a, b) => a - b);
}
