/**
 * Three kinds of friction material. All from memory: every maker mixes his own. Heat capacity and density decide how much
 * heat a pad holds; conductivity here is a default, a scenario gives its own.
 */
import { kelvin } from '../../units.ts';
import { tableRange, type Material } from './material.ts';

interface Mix {
  density_kgpm3: number;
  /** At the temperatures below [J/(kg K)] */
  heatCapacity: number[];
  conductivity: number;
  /** Above this the binder is gone and the table speaks of another material [°C] */
  until_C: number;
}

const ENTRIES_C = [-60, 20, 200, 400, 600, 900];

const mixed = (name: string, { density_kgpm3, heatCapacity, conductivity, until_C }: Mix): Material => ({
  density_kgpm3,
  temperature_K: ENTRIES_C.map(kelvin),
  heatCapacity,
  conductivity: ENTRIES_C.map(() => conductivity),
  range: tableRange(`${name} pads`, [kelvin(-60), kelvin(until_C)], 'from memory'),
});

/** Resin, fibres and fillers without much metal: ρ 2000 to 2600, c 900 to 1200, k 0.5 to 2. */
export const organic = mixed('organic', {
  density_kgpm3: 2300,
  heatCapacity: [820, 900, 1050, 1130, 1180, 1200],
  conductivity: 1.2,
  until_C: 500,
});

/** Resin, steel wool, iron powder and carbon, as most race pads: ρ 2500 to 3500, c 700 to 1000, k 2 to 12. */
export const semiMetallic = mixed('semi-metallic', {
  density_kgpm3: 2700,
  heatCapacity: [680, 750, 870, 950, 1000, 1030],
  conductivity: 3,
  until_C: 800,
});

/** Copper or iron powder pressed and sintered with graphite: ρ 4500 to 6000, c 420 to 600, k 8 to 30. */
export const sintered = mixed('sintered', {
  density_kgpm3: 5200,
  heatCapacity: [420, 450, 495, 530, 560, 590],
  conductivity: 15,
  until_C: 900,
});
