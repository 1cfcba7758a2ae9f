import { emissivityTowards } from '../../../engine/disc/radiation.ts';
import type { Compute } from '../gate.ts';

export const compute: Compute = (rows) =>
  rows.map(({ emissivity = NaN, wheel = NaN, barrel = NaN, view = NaN, barrelRatio = NaN }) => ({
    effective: emissivityTowards(emissivity, [
      { view, keeps: wheel, areaRatio: 1 },
      { view: 1 - view, keeps: barrel, areaRatio: barrelRatio },
    ]),
  }));
