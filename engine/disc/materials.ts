/** All that a brake corner is made of, by the names that the scenario and the network use. */
import type { ValidRange } from '../valid-range.ts';
import { aluminium, brakeFluid } from './materials/caliper-side.ts';
import { carbonCeramic } from './materials/carbon-ceramic.ts';
import { carbonSteel } from './materials/carbon-steel.ts';
import { organic, semiMetallic, sintered } from './materials/friction.ts';
import { greyIron } from './materials/grey-iron.ts';
import type { Material } from './materials/material.ts';

export const materials = {
  'grey iron': greyIron,
  'carbon-ceramic': carbonCeramic,
  aluminium,
  steel: carbonSteel,
  organic,
  'semi-metallic': semiMetallic,
  sintered,
  fluid: brakeFluid,
} as const satisfies Record<string, Material>;

export type MaterialName = keyof typeof materials;

/** Temperatures for which each table speaks, to compare with the hottest and the coldest node made of it. */
export const materialRanges: Record<MaterialName, ValidRange> = {
  'grey iron': greyIron.range,
  'carbon-ceramic': carbonCeramic.range,
  aluminium: aluminium.range,
  steel: carbonSteel.range,
  organic: organic.range,
  'semi-metallic': semiMetallic.range,
  sintered: sintered.range,
  fluid: brakeFluid.range,
};
