import { frictionColebrook } from '../../../engine/duct/friction.ts';
import { lossBendRennels } from '../../../engine/duct/loss-bend.ts';
import type { Compute } from '../gate.ts';

export const compute: Compute = (rows) =>
  rows.map(({ radiusRatio = NaN }) => {
    const loss = lossBendRennels(Math.PI / 2, radiusRatio, frictionColebrook(1e5, 0));
    return { crane: loss, miller: loss, ito: loss };
  });
