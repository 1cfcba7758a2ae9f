import { lossBendRennels } from '../../../engine/duct/loss-bend.ts';
import { radians } from '../../../engine/units.ts';
import type { Compute } from '../gate.ts';

export const compute: Compute = (rows) =>
  rows.map(({ angle_deg = NaN, radiusRatio = NaN, friction = NaN }) => ({
    loss: lossBendRennels(radians(angle_deg), radiusRatio, friction),
  }));
