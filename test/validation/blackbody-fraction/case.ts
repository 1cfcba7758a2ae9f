import { blackbodyShare } from '../../../engine/evidence/infrared.ts';
import type { Compute } from '../gate.ts';

export const compute: Compute = (rows) =>
  rows.map(({ product = NaN }) => ({ fraction: blackbodyShare(product * 1e-6) }));
