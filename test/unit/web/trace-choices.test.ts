import { describe, expect, it } from 'vitest';
import type { TraceColumn, UnderstoodTrace } from '../../../engine/index.ts';
import { changed, isCorrected, lasting, withRole } from '../../../web/state/trace-choices.ts';

const column = (name: string, role: TraceColumn['role']): TraceColumn => ({
  name,
  role,
  unit: '',
  units: [],
  unitReason: '',
  thumbnail: new Float64Array(),
  low: NaN,
  high: NaN,
});

const understood = {
  columns: [column('t', 'time'), column('v', 'speed'), column('w', null)],
} as unknown as UnderstoodTrace;

describe('what was said about a file', () => {
  it('keeps roles and units while the cells stay', () => {
    const said = changed({ roles: { 1: 'speed' }, units: { 1: 'mph' } }, { decimal: ',' });
    expect(said).toEqual({ roles: { 1: 'speed' }, units: { 1: 'mph' }, decimal: ',' });
  });

  it('lets roles and units go when other cells make other columns', () => {
    const said = changed({ roles: { 1: 'speed' }, units: { 1: 'mph' }, lap: 3 }, { delimiter: ';' });
    expect(said).toEqual({ delimiter: ';' });
  });

  it('adds one unit to the others', () => {
    expect(changed({ units: { 0: 'ms' } }, { units: { 1: 'mph' } }).units).toEqual({ 0: 'ms', 1: 'mph' });
  });

  it('lets a lap go when laps are cut in another way, and keeps it under another unit', () => {
    expect(changed({ lap: 3 }, { lapsBy: 'distance' })).toEqual({ lapsBy: 'distance' });
    expect(changed({ lap: 3 }, { units: { 1: 'mph' } })).toEqual({ lap: 3, units: { 1: 'mph' } });
    expect(changed({ lap: 3 }, { lap: 1 })).toEqual({ lap: 1 });
  });

  it('gives a role to one column alone and moves no other', () => {
    expect(withRole(understood, {}, 2, 'speed').roles).toEqual(['time', null, 'speed']);
    expect(withRole(understood, {}, 2, 'slope').roles).toEqual(['time', 'speed', 'slope']);
    expect(withRole(understood, {}, 1, null).roles).toEqual(['time', null, null]);
  });

  it('drops a unit that was said for another role', () => {
    const said = withRole(understood, { units: { 0: 'ms', 1: 'mph' } }, 2, 'speed');
    expect(said.units).toEqual({ 0: 'ms' });
  });

  it('lasts for the next file except the lap and the times of laps', () => {
    expect(lasting({ decimal: ',', lap: 2, lapStarts_s: [0, 90], lapsBy: 'times' })).toEqual({
      decimal: ',',
      lapsBy: 'times',
    });
  });

  it('is a correction only when something was said', () => {
    expect(isCorrected({})).toBe(false);
    expect(isCorrected({ units: {} })).toBe(false);
    expect(isCorrected({ units: { 1: 'mph' } })).toBe(true);
    expect(isCorrected({ decimal: ',' })).toBe(true);
  });
});
