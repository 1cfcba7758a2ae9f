import { frictionChurchill, frictionColebrook, frictionHaaland } from '../../../engine/duct/friction.ts';
import type { Compute } from '../gate.ts';

export const compute: Compute = (rows) =>
  rows.map(({ Re = NaN, relativeRoughness = NaN }) => ({
    colebrook: frictionColebrook(Re, relativeRoughness),
    haaland: frictionHaaland(Re, relativeRoughness),
    churchill: frictionChurchill(Re, relativeRoughness),
  }));
