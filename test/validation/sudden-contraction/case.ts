import { lossContraction } from '../../../engine/duct/loss-area-change.ts';
import type { Compute } from '../gate.ts';

export const compute: Compute = (rows) =>
  rows.map(({ areaRatio = NaN }) => {
    const loss = lossContraction(areaRatio);
    return { rennels: loss, entrance: loss };
  });
