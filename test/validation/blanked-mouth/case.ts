import { conductanceBlankedMouth, lossBlankedMouth } from '../../../engine/duct/loss-mouth.ts';
import type { Compute } from '../gate.ts';

export const compute: Compute = (rows) =>
  rows.map(({ openFraction: f = NaN }) => ({
    loss: lossBlankedMouth(f),
    onOpening: (f / conductanceBlankedMouth(f)) ** 2,
  }));
