import { efficiencyVane } from '../../../engine/disc/nusselt-vane.ts';
import type { Compute } from '../gate.ts';

export const compute: Compute = (rows) =>
  rows.map(({ h = NaN, k = NaN, thickness = NaN, gap = NaN }) => ({
    efficiency: efficiencyVane(h, k * thickness, gap / 2),
  }));
