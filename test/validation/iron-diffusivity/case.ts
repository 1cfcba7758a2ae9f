import { materials } from '../../../engine/disc/materials.ts';
import { diffusivityOf } from '../../../engine/disc/materials/material.ts';
import { kelvin } from '../../../engine/units.ts';
import type { Compute } from '../gate.ts';

export const compute: Compute = (rows) =>
  rows.map(({ temperature_C = NaN }) => ({
    diffusivity: diffusivityOf(materials['grey iron'], kelvin(temperature_C)),
  }));
