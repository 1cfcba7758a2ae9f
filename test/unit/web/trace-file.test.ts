import { describe, expect, it } from 'vitest';
import { checkScenario } from '../../../engine/scenario/parse.ts';
import { defaultScenario } from '../../../engine/scenario/library.ts';
import type { TraceBytes } from '../../../engine/index.ts';
import { readTrace } from '../../../engine/trace-file/read-trace.ts';
import { TraceReader } from '../../../web/state/trace-reader.svelte.ts';
import { tracePart } from '../../../engine/scenario/trace-part.ts';

const speed_mps = new Float64Array(100).fill(20);
const ramp = (step: number): Float64Array => Float64Array.from({ length: 100 }, (_, i) => i * step);
const file = (name: string, text: string) => ({
  name,
  size: text.length,
  arrayBuffer: () => Promise.resolve(new TextEncoder().encode(text).buffer),
});
const rows = Array.from({ length: 240 }, (_, i) => `${(i / 10).toFixed(1)},${(100 + i / 2).toFixed(1)}`);
const good = ['Time,Speed', 's,km/h', ...rows].join('\n');

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

describe('the reader of trace files', () => {
  const open = () => ({
    readTrace: async (bytes: TraceBytes) => readTrace(new TextDecoder().decode(await bytes.arrayBuffer())),
    close: () => undefined,
  });

  it('shows what it understood', async () => {
    const reader = new TraceReader(open);
    await reader.open(file('log.csv', good));
    expect(reader.problems).toEqual([]);
    expect(reader.reading?.understood.rows).toBe(240);
    expect(reader.isBusy).toBe(false);
  });

  it('names row and column of what it cannot read', async () => {
    const reader = new TraceReader(open);
    await reader.open(file('log.csv', good.replace('\n2.0,110.0', '\n2.0,fast')));
    expect(reader.reading).toBeNull();
    expect(reader.problems[0]).toMatch(/row 23.*Speed.*fast/);
  });

  it('refuses a file above 50 MB before reading it', async () => {
    const reader = new TraceReader(open);
    await reader.open({
      name: 'huge.csv',
      size: 60e6,
      arrayBuffer: () => Promise.reject(new Error('was read')),
    });
    expect(reader.problems).toEqual(['file: expected at most 50 MB, got 60 MB']);
  });

  it('says so when the worker breaks', async () => {
    const broken = () => ({ readTrace: () => Promise.reject(new Error('gone')), close: () => undefined });
    const reader = new TraceReader(broken);
    await reader.open(file('log.csv', good));
    expect(reader.problems[0]).toContain('could not be read');
  });

  it('keeps nothing of a file that was put away', async () => {
    const reader = new TraceReader(open);
    const reading = reader.open(file('log.csv', good));
    reader.close();
    await reading;
    expect(reader.reading).toBeNull();
  });
});
