import { heatCapacityCarbonSteel } from '../../../engine/disc/materials/carbon-steel.ts';
import type { Compute } from '../gate.ts';

export const compute: Compute = (rows) =>
  rows.map(({ steel_K = NaN }) => ({ capacity: heatCapacityCarbonSteel(steel_K) }));
