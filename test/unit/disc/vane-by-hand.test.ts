import { describe, expect, it } from 'vitest';
import { conductivityAir, heatCapacityAir, prandtlAir, viscosityAir } from '../../../engine/air/dry-air.ts';
import type { DiscSpec } from '../../../engine/disc/corner-spec.ts';
import { efficiencyVane, nusseltVanePassage } from '../../../engine/disc/nusselt-vane.ts';
import { vaneConductance } from '../../../engine/disc/vane-convection.ts';
import { vanePassage, type VanePassage } from '../../../engine/disc/vane-passage.ts';
import { heavyDisc } from '../../support/heavy-disc.ts';

const IRON = 7200;
const straight = heavyDisc;
const curved: DiscSpec = { ...straight, vaneShape: 'curved', vaneStretch: 1.15 };
const pillars: DiscSpec = { ...straight, vaneShape: 'pillars', vanes: 150, vane_m: 0.009 };

type Worked = Omit<VanePassage, 'pillar_m'> & { conductance_WpK: number };

// Written anew in Python from the geometry and the laws by name: 0.1 kg/s of air at 300 K and 1.17 kg/m³ through walls of
// 700 K at 150 rad/s, 4 W/(m² K) at rest; air of 500 K with the properties below, iron of 41 W/(m K).
const worked: [shape: string, disc: DiscSpec, numbers: Worked][] = [
  [
    'straight vanes',
    straight,
    {
      length_m: 0.062,
      flowArea_m2: 0.01246635,
      entryArea_m2: 0.009135636,
      hydraulicDiameter_m: 0.01420646,
      wallArea_m2: 0.09039928,
      vaneArea_m2: 0.127224,
      vaneMass_kg: 2.061029,
      conductance_WpK: 22.48243,
    },
  ],
  [
    'curved vanes',
    curved,
    {
      length_m: 0.0713,
      flowArea_m2: 0.01023809,
      entryArea_m2: 0.007341814,
      hydraulicDiameter_m: 0.01260291,
      wallArea_m2: 0.08537728,
      vaneArea_m2: 0.1463076,
      vaneMass_kg: 2.370183,
      conductance_WpK: 25.61158,
    },
  ],
  [
    'pillars',
    pillars,
    {
      length_m: 0.062,
      flowArea_m2: 0.009517168,
      entryArea_m2: 0.00766162,
      hydraulicDiameter_m: 0.02021207,
      wallArea_m2: 0.1047941,
      vaneArea_m2: 0.07252367,
      vaneMass_kg: 1.174883,
      conductance_WpK: 23.56452,
    },
  ],
];

describe.each(worked)('%s worked out by hand', (_, disc, { conductance_WpK, ...areas }) => {
  const passage = vanePassage(disc, IRON)!;

  it.each(Object.entries(areas))('have %s of %d', (key, expected) => {
    expect(passage[key as keyof VanePassage]! / expected).toBeCloseTo(1, 6);
  });

  it('give air the heat that the laws give, named one by one', () => {
    const at = { vane_kgps: 0.1, wall_K: 700, air_K: 300, density_kgpm3: 1.17, wheel_radps: 150, still: 4 };
    expect(vaneConductance(disc, passage, at) / conductance_WpK).toBeCloseTo(1, 6);
  });
});

it('the air of that work has the properties it was done with', () => {
  expect(conductivityAir(500)).toBeCloseTo(0.04040858, 8);
  expect(heatCapacityAir(500)).toBeCloseTo(1030, 8);
  expect(prandtlAir(500)).toBeCloseTo(0.6807093, 7);
  expect(viscosityAir(500)).toBeCloseTo(2.6705333e-5, 12);
});

describe('at their limits', () => {
  it('vanes too heavy for their ring leave its cheeks 55 percent of the mass', () => {
    const heavy = { ...straight, vane_m: 0.012 };
    expect(vanePassage(heavy, IRON)!.vaneMass_kg).toBeCloseTo(0.45 * 10.2, 12);
  });

  it('a fin that gives off nothing is all at one temperature', () => {
    expect(efficiencyVane(0, 0.18, 0.0085)).toBe(1);
  });

  it('a smooth tube between laminar and turbulent goes from one to the other in proportion', () => {
    const at = (Re: number): number => nusseltVanePassage(Re, 0.7, 0.2);
    for (const share of [0.1, 0.5, 0.9]) {
      expect(at(2300 + 1700 * share)).toBeCloseTo((1 - share) * at(2300) + share * at(4000), 10);
    }
  });
});
