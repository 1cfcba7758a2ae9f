/** The spread as lines of the terminal's table, one a corner and one for all. */
import type { CornerSpreadRecord, MeasureFirstRecord, SpreadRecord } from './doubt-record.ts';

export function doubtLines(
  { draws, seed, unknowns, calibrated, corners }: SpreadRecord,
  measure: readonly MeasureFirstRecord[],
): string[] {
  const all = `${draws} runs with ${unknowns} unsure values varied, seed ${seed}${calibrated ? '' : '; not calibrated'}`;
  return [...corners.map((corner) => cornerLine(corner, draws, measure)), all];
}

function cornerLine(
  { axle, side, count, hottest_C }: CornerSpreadRecord,
  draws: number,
  measure: readonly MeasureFirstRecord[],
): string {
  const name = side === 'both' ? axle : `${axle} ${side}`;
  const range = `${hottest_C.p5.toFixed(0)} to ${hottest_C.p95.toFixed(0)} °C (5 to 95 %)`;
  const first = measure.find((each) => each.axle === axle && each.side === side)?.first;
  const advice = first ? `; measure first: ${first.name} (±${first.moves_K.toFixed(0)} K)` : '';
  return `${name}: ${countWords(count, draws)}; hottest lap ${range}${advice}`;
}

function countWords(
  { in: stay, hot, cold, both, notJudged }: CornerSpreadRecord['count'],
  draws: number,
): string {
  if (notJudged === draws) return 'no run is judged';
  const others = [
    [hot, 'too hot'],
    [cold, 'too cold'],
    [both, 'both'],
    [notJudged, 'not judged'],
  ] as const;
  const rest = others.filter(([n]) => n > 0).map(([n, what]) => `${n} ${what}`);
  return [`${stay} of ${draws} runs stay in`, ...rest].join(', ');
}
