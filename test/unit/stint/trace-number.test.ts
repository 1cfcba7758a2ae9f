import { expect, it } from 'vitest';
import { traceNumber } from '../../../engine/stint/trace-number.ts';

const trace = (last_kmh: number) => {
  const column = Array.from({ length: 60 }, (_, i) => i);
  return { name: 'a', time_s: column, distance_m: column, speed_kmh: [...column.slice(0, -1), last_kmh] };
};

it('traces have one number when they say the same, whoever holds them, and another when they differ', () => {
  expect(traceNumber(trace(100))).toBe(traceNumber(trace(100)));
  expect(traceNumber(trace(101))).not.toBe(traceNumber(trace(100)));
  expect(traceNumber({ ...trace(100), accel_g: trace(1).time_s })).not.toBe(traceNumber(trace(100)));
});

it('a trace that was forgotten is numbered anew, not taken for another', () => {
  const first = traceNumber(trace(200));
  const others = Array.from({ length: 20 }, (_, i) => traceNumber(trace(201 + i)));
  expect(others).not.toContain(first);
  expect(others).not.toContain(traceNumber(trace(200)));
});
