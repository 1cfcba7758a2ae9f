import { nusseltRotatingDisc } from '../../../engine/disc/nusselt-face.ts';
import type { Compute } from '../gate.ts';

export const compute: Compute = (rows) =>
  rows.map(({ Re = NaN }) => ({ laminar: nusseltRotatingDisc(Re), turbulent: nusseltRotatingDisc(Re) }));
