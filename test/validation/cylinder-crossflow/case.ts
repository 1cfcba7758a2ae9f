import { nusseltCylinder } from '../../../engine/disc/nusselt-cylinder.ts';
import type { Compute } from '../gate.ts';

export const compute: Compute = (rows) =>
  rows.map(({ Re = NaN, Pr = NaN }) => {
    const nusselt = nusseltCylinder(Re, Pr);
    return { churchillBernstein: nusselt, others: nusselt };
  });
