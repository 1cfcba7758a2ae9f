import { describe, expect, it } from 'vitest';
import { effusivity } from '../../../engine/car/partition.ts';
import { enthalpyAt, enthalpyTable } from '../../../engine/disc/enthalpy-table.ts';
import { materialRanges, materials, type MaterialName } from '../../../engine/disc/materials.ts';
import {
  conductivityCarbonSteel,
  heatCapacityCarbonSteel,
} from '../../../engine/disc/materials/carbon-steel.ts';
import { heatCapacityCarbonCeramic } from '../../../engine/disc/materials/carbon-ceramic.ts';
import { heatCapacityGraphite } from '../../../engine/disc/materials/constituents.ts';
import { heatCapacityGreyIron } from '../../../engine/disc/materials/grey-iron.ts';
import { diffusivityOf } from '../../../engine/disc/materials/material.ts';
import { nodeTemperatures, storedHeat } from '../../../engine/disc/stepper.ts';
import { kelvin } from '../../../engine/units.ts';
import { drivenSlab, evenSteps, propertiesAt, slabAt, stillMap } from '../../support/bare-slab.ts';

const names = Object.keys(materials) as MaterialName[];
const at = (name: MaterialName, celsius: number) => propertiesAt(name, kelvin(celsius));
const effusivityAt = (name: MaterialName, celsius: number): number => {
  const { k, density, c } = at(name, celsius);
  return effusivity(k, density, c);
};

describe('grey iron', () => {
  const iron = materials['grey iron'];

  // Hecht, Dinwiddie & Wang, J. Mater. Sci. 34 (1999) 4775, abstract: commercial rotors at room temperature
  it('conducts temperature at 20 °C as measured rotors do', () => {
    const α = diffusivityOf(iron, kelvin(20));
    expect(α).toBeGreaterThanOrEqual(1.56e-5);
    expect(α).toBeLessThanOrEqual(2.0e-5);
  });

  // the same: diffusivity falls with temperature for all grades
  it('conducts temperature ever more slowly up to its transformation', () => {
    for (let celsius = 20; celsius < 720; celsius += 5) {
      expect(diffusivityOf(iron, kelvin(celsius + 5))).toBeLessThan(diffusivityOf(iron, kelvin(celsius)));
    }
  });

  // ξ = ρ c √α with Hecht's diffusivities, ρ 7100 to 7300 kg/m³ and c 440 to 500 J/(kg K)
  it('has the effusivity that measured diffusivities give', () => {
    expect(effusivityAt('grey iron', 20)).toBeGreaterThan(7100 * 440 * Math.sqrt(1.56e-5));
    expect(effusivityAt('grey iron', 20)).toBeLessThan(7300 * 500 * Math.sqrt(2.0e-5));
  });

  it('keeps its effusivity within 6 % from 20 to 600 °C', () => {
    for (let celsius = 20; celsius <= 600; celsius += 20) {
      expect(Math.abs(effusivityAt('grey iron', celsius) / 13_850 - 1)).toBeLessThanOrEqual(0.06);
    }
  });

  // Hagel, Pound & Mehl, Acta Metall. 4 (1956) 37, abstract: 19.6 cal/g ± 5 % for pearlite, of which 2.6 % less is here
  it('takes the heat of pearlite becoming austenite', () => {
    const table = enthalpyTable('grey iron');
    const taken = enthalpyAt(table, kelvin(840)) - enthalpyAt(table, kelvin(720));
    const without = 7 * at('grey iron', 720).c + 113 * at('grey iron', 840).c;
    expect((taken - without) / (0.974 * 19.6 * 4184)).toBeGreaterThan(0.95);
    expect((taken - without) / (0.974 * 19.6 * 4184)).toBeLessThan(1.05);
  });

  // steel by EN 1993-1-2 and graphite by Butland & Maddison, J. Nucl. Mater. 49 (1973) 45, transformation included
  it('holds as much from 20 to 1000 °C as the steel and the graphite it is mixed of', () => {
    const table = enthalpyTable('grey iron');
    const held = enthalpyAt(table, kelvin(1000)) - enthalpyAt(table, kelvin(20));
    let mixed = 0;
    for (let T = kelvin(20) + 0.05; T < kelvin(1000); T += 0.1) {
      mixed += 0.1 * (0.026 * heatCapacityGraphite(T) + 0.974 * heatCapacityCarbonSteel(T));
    }
    expect(Math.abs(held / mixed - 1)).toBeLessThan(0.01);
  });
});

describe('steel of the backing plate', () => {
  // EN 1993-1-2:2005, figures 3.4 and 3.6 as printed beside its formulas
  it.each([
    [20, 440, 53.3],
    [600, 760, 34.0],
    [735, 5000, 29.5],
    [1000, 650, 27.3],
  ])('has at %s °C the %s J/(kg K) and %s W/(m K) of the standard', (celsius, c, k) => {
    expect(heatCapacityCarbonSteel(kelvin(celsius))).toBeCloseTo(c, -0.5);
    expect(conductivityCarbonSteel(kelvin(celsius))).toBeCloseTo(k, 1);
  });
});

describe('the tables stay inside what handbooks give', () => {
  it.each([
    // [kind, °C, low and high of ρ, of c, of k]; ranges from memory except for the names in their files
    ['carbon-ceramic', 20, [2250, 2450], [600, 900], [20, 40]],
    ['carbon-ceramic', 800, [2250, 2450], [1200, 1500], [20, 40]],
    ['organic', 20, [2000, 2600], [900, 1200], [0.5, 2]],
    ['organic', 400, [2000, 2600], [900, 1200], [0.5, 2]],
    ['semi-metallic', 20, [2500, 3500], [700, 1000], [2, 12]],
    ['semi-metallic', 600, [2500, 3500], [700, 1000], [2, 12]],
    ['sintered', 400, [4500, 6000], [420, 600], [8, 30]],
  ] as const)('%s at %s °C', (name, celsius, ofDensity, ofCapacity, ofConductivity) => {
    const { density, c, k } = at(name, celsius);
    const bands = [ofDensity, ofCapacity, ofConductivity] as const;
    [density, c, k].forEach((value, i) => {
      const [low, high] = bands[i]!;
      expect(value).toBeGreaterThanOrEqual(low);
      expect(value).toBeLessThanOrEqual(high);
    });
  });

  it.each(names)('%s holds ever more heat the hotter it is', (name) => {
    const { temperature_K, potential } = enthalpyTable(name);
    for (let i = 1; i < temperature_K.length; i++) {
      expect(temperature_K[i]!).toBeGreaterThan(temperature_K[i - 1]!);
      expect(potential[i]!).toBeGreaterThan(potential[i - 1]!);
    }
  });

  it.each(names)('%s says for which temperatures it speaks, and its table covers them', (name) => {
    const { low, high } = materialRanges[name];
    const { temperature_K } = materials[name];
    expect(temperature_K[0]).toBeLessThanOrEqual(low);
    expect(temperature_K.at(-1)).toBeGreaterThanOrEqual(high);
    expect(low).toBeLessThan(kelvin(-25));
  });
});

describe('a slab of iron taken through its transformation and back', () => {
  const slab = { thickness_m: 0.008, area_m2: 0.1 };
  const start_K = kelvin(650);
  const stepper = slabAt(slab, start_K);
  const before_J = storedHeat(stepper, nodeTemperatures(stepper));
  const span_s = 75;
  // a constant power in, then the same out, then rest
  const power_W = 60e3;
  const wave = {
    at: (t: number) => (t < 30 ? power_W : t < 60 ? -power_W : 0),
    sum: (t: number) => power_W * Math.max(0, Math.min(t, 60 - t)),
  };
  const steps = 1500;
  const { face_K, wall_K, cheek_K } = drivenSlab(stepper, evenSteps(span_s, steps, wave), stillMap());

  it('passes 750 °C at face and wall and comes near 1000 °C', () => {
    expect(Math.max(...wall_K)).toBeGreaterThan(kelvin(800));
    expect(Math.max(...face_K)).toBeGreaterThan(kelvin(950));
    expect(Math.max(...face_K)).toBeLessThan(kelvin(1100));
  });

  it('never jumps: no step moves the face more than its heat could without a peak in c', () => {
    const each = span_s / steps;
    const firstNode_kg = 0.01 * 0.1 * 0.008 * 7200;
    const most_K = (power_W * each) / (firstNode_kg * 600);
    for (let i = 1; i < steps; i++) expect(Math.abs(face_K[i]! - face_K[i - 1]!)).toBeLessThan(most_K);
  });

  it('lags on the plateau: the bulk spends longer there than on as many kelvin above', () => {
    const rising = cheek_K.slice(0, (30 / span_s) * steps);
    const between = (low: number, high: number): number =>
      rising.filter((T) => T >= kelvin(low) && T < kelvin(high)).length;
    expect(between(720, 840)).toBeGreaterThan(1.5 * between(840, 960));
  });

  it('has all its heat back in the end', () => {
    const after_J = storedHeat(stepper, nodeTemperatures(stepper));
    expect(Math.abs(after_J - before_J)).toBeLessThan(1e-9 * before_J);
    expect(cheek_K.at(-1)!).toBeCloseTo(start_K, 0);
    expect(face_K.at(-1)! - wall_K.at(-1)!).toBeCloseTo(0, 0);
  });
});

describe('a mixture’s heat capacity', () => {
  it.each([
    ['grey iron', heatCapacityGreyIron, [20, 400, 600]],
    ['carbon-ceramic', heatCapacityCarbonCeramic, [20, 400, 1000]],
  ] as const)('of %s is what its table holds', (name, law, temperatures_C) => {
    const { temperature_K, heatCapacity } = materials[name];
    for (const at_C of temperatures_C) {
      const entry = temperature_K.findIndex((T) => Math.abs(T - kelvin(at_C)) < 1e-9);
      expect(heatCapacity[entry]).toBeCloseTo(law(kelvin(at_C)), 9);
    }
  });
});
