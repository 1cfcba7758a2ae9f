import { describe, expect, it } from 'vitest';
import { movedBy, type Extent } from '../../../web/state/cursor-keys.ts';
import { lapAt } from '../../../web/state/moments.ts';
import { sampleResult } from '../../support/sample-result.ts';

const result = sampleResult();
const corner = result.corners[0]!;
const tenth = result.laps[9]!;
const at = tenth.start_s + 20;

const press = (key: string, from_s = at, extent: Extent = 'stint'): number | null => {
  const shiftKey = key.startsWith('Shift+');
  return movedBy({ key: key.replace('Shift+', ''), shiftKey }, from_s, { result, corner, extent });
};

describe('the keys of a drawing', () => {
  it('step by a sample, and by a lap to the same place with Shift or by pages', () => {
    const next = press('ArrowRight')!;
    expect(next).toBeGreaterThan(at);
    expect(next - at).toBeLessThan(0.3);
    expect(press('ArrowLeft', next)).toBeLessThanOrEqual(at);
    expect(press('Shift+ArrowRight')).toBeCloseTo(at + 95, 6);
    expect(press('PageDown')).toBeCloseTo(at - 95, 6);
  });

  it('stop at either end of the stint', () => {
    const end = result.clock.time_s.at(-1)!;
    expect(press('ArrowLeft', 0)).toBe(0);
    expect(press('ArrowRight', end)).toBe(end);
    expect(press('Shift+ArrowRight', end)).toBe(end);
    expect(press('Shift+ArrowLeft', 10)).toBe(0);
  });

  it('go from hard stop to hard stop, leaving out the light ones, and stay after the last', () => {
    const hard = corner.stops.filter((stop) => stop.hard && stop.lap === 10);
    const light = corner.stops.filter((stop) => !stop.hard && stop.lap === 10);
    expect(light.length).toBeGreaterThan(0);
    const visited = hard.map((_, i) =>
      hard.slice(0, i + 1).reduce((from_s) => press('m', from_s)!, tenth.start_s),
    );
    expect(visited).toEqual(hard.map(({ start_s }) => start_s));
    expect(press('Shift+M', hard[1]!.start_s)).toBe(hard[0]!.start_s);
    const end = result.clock.time_s.at(-1)!;
    expect(press('m', end)).toBe(end);
  });

  it('go to the ends of what is drawn: the lap stays the same lap', () => {
    expect(press('Home', at, 'lap')).toBe(tenth.start_s);
    expect(lapAt(result.laps, press('End', at, 'lap')!)).toBe(tenth);
    expect(press('End', at, 'lap')).toBeGreaterThan(tenth.end_s - 0.01);
    expect([press('Home'), press('End')]).toEqual([0, result.clock.time_s.at(-1)]);
  });

  it('leave all other keys alone', () => {
    for (const key of ['x', 'Tab', 'Enter', ' ', 'Escape']) expect(press(key)).toBeNull();
  });
});
