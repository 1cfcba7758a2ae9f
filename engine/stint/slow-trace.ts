/** What a reader must know of a measured lap that was logged too slowly to show how hard the car brakes. */
import { sampleInterval, slowSentence } from '../circuit/sample-interval.ts';
import type { Scenario } from '../scenario/schema.ts';
import { mpsFromKmh } from '../units.ts';
import type { Notice } from './result.ts';

export function slowTrace({ trace }: Pick<Scenario, 'trace'>): Notice[] {
  if (!trace) return [];
  const span_s = trace.time_s.at(-1)! - trace.time_s[0]!;
  const text = slowSentence(sampleInterval(Float64Array.from(trace.speed_kmh, mpsFromKmh), span_s));
  return text ? [{ kind: 'trace', said: [`trace: ${text}`] }] : [];
}
