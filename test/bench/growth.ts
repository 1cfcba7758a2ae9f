/** Whether work grows with the stint and nothing with the session: laps, runs, memory. */
import { apart } from './apart.ts';
import type { Growth } from './growth-in-node.ts';
import { ratios, rowOf, type Row } from './rows.ts';

export async function growth(): Promise<Row[]> {
  const { laps20_ms, laps80_ms, early_ms, late_ms, heap_MB, resident_MB } = await apart<Growth>(
    'growth-in-node.ts',
    ['--expose-gc'],
  );
  const times = { unit: 'x' };
  return [
    rowOf('80 laps over 20 laps', ratios(laps80_ms, laps20_ms), { ...times, wanted: 'at most 4.2' }),
    rowOf('runs 991 to 1000 over runs 11 to 20', ratios(late_ms, early_ms), { ...times, wanted: '1' }),
    rowOf('heap after 10,000 runs over after 100', ratios(heap_MB.late, heap_MB.early), {
      ...times,
      wanted: '1',
    }),
    rowOf('heap after 10,000 runs', heap_MB.late, { unit: 'MB' }),
    rowOf('resident after 10,000 runs over after 100', ratios(resident_MB.late, resident_MB.early), {
      ...times,
      wanted: '1',
    }),
  ];
}
