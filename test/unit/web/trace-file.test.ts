import { describe, expect, it } from 'vitest';
import { checkScenario } from '../../../engine/scenario/parse.ts';
import { defaultScenario } from '../../../engine/scenario/library.ts';
import { tracePart } from '../../../engine/scenario/trace-part.ts';

const speed_mps = new Float64Array(100).fill(20);
const ramp = (step: number): Float64Array => Float64Array.from({ length: 100 }, (_, i) => i * step);

describe('a lap from a file', () => {
  it('gets the distance that its time and speed make', () => {
    const trace = tracePart('log.csv', { speed_mps, time_s: ramp(0.1) });
    expect(trace.distance_m.at(-1)).toBeCloseTo(198);
    expect(trace.speed_kmh[0]).toBeCloseTo(72);
  });

  it('gets the time that its distance and speed make', () => {
    expect(tracePart('log.csv', { speed_mps, distance_m: ramp(2) }).time_s.at(-1)).toBeCloseTo(9.9);
  });

  it('is a trace that the scenario accepts', () => {
    const trace = tracePart('log.csv', { speed_mps, distance_m: ramp(2) });
    expect(checkScenario({ ...defaultScenario(), trace }).ok).toBe(true);
  });
});
