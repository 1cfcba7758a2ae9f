import { nusseltPlate } from '../../../engine/disc/nusselt-plate.ts';
import type { Compute } from '../gate.ts';

export const compute: Compute = (rows) =>
  rows.map(({ Re = NaN, Pr = NaN }) => ({ nusselt: nusseltPlate(Re, Pr) }));
