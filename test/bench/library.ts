/** Against the JavaScript library that is fastest on these equations, at the engine's own error. */
import { apart } from './apart.ts';
import type { LibraryTimes } from './library-in-node.ts';
import { ratios, rowOf, type Row } from './rows.ts';

export async function library(): Promise<Row[]> {
  const { theirs_ms, ours_ms, found } = await apart<LibraryTimes>('library-in-node.ts');
  const { error, tolerance, apart_K } = found;
  return [
    rowOf(`dopri, tolerance ${tolerance}, Node`, theirs_ms, { unit: 'ms', error }),
    rowOf('dopri over the kernel in Node', ratios(theirs_ms, ours_ms), {
      unit: 'x',
      wanted: 'aim 30',
      error,
    }),
    rowOf('dopri, furthest from the engine', [apart_K], { unit: 'K' }),
  ];
}
