import { conductanceWarmingAir } from '../../../engine/disc/nusselt-vane.ts';
import type { Compute } from '../gate.ts';

export const compute: Compute = (rows) =>
  rows.map(({ flow = NaN, wall = NaN }) => ({ conductance: conductanceWarmingAir(flow, wall) }));
