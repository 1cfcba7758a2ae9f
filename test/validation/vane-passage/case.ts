import { nusseltVanePassage } from '../../../engine/disc/nusselt-vane.ts';
import type { Compute } from '../gate.ts';

export const compute: Compute = (rows) =>
  rows.map(({ Re = NaN, diameterOverLength = NaN }) => ({
    nusselt: nusseltVanePassage(Re, 0.7, diameterOverLength),
  }));
