/**
 * Tables from specific enthalpy to temperature and to the conduction potential, evenly spaced in enthalpy so that a
 * look-up is one multiplication.
 *
 * State in the stepper is enthalpy: whatever c(T) does, no heat is lost from the books. The conduction potential is
 * Kirchhoff's transform θ = ∫k dT, so that the flux between two nodes of one material, G·(θ₁ − θ₂), is exact for k(T).
 * Source of the transform: Carslaw & Jaeger, Conduction of Heat in Solids, 2nd edition (1959), section 1.6.
 */
import { materials, type MaterialName } from './materials.ts';
import { valueAtTemperature, type Material } from './materials/material.ts';

/** Cells of each table; 600 are 2 to 4 K each for iron. */
export const CELLS = 600;
const LOW_K = 220;
const HIGH_K = 1700;

export interface EnthalpyTable {
  /** Enthalpy of the first entry [J/kg]; zero is at LOW_K */
  step_Jpkg: number;
  /** Temperature at entry i, enthalpy i·step [K] */
  temperature_K: Float64Array;
  /** Conduction potential at entry i [W/m] */
  potential: Float64Array;
}

const built = new Map<MaterialName, EnthalpyTable>();

/** The table of a material; made once. */
export function enthalpyTable(name: MaterialName): EnthalpyTable {
  const found = built.get(name) ?? build(materials[name]);
  built.set(name, found);
  return found;
}

/**
 * Specific enthalpy of a material above the table's zero.
 *
 *     h(T) by the piecewise linear table, the exact inverse of what the stepper uses
 *
 * @remarks
 * Source: definition of enthalpy, ∫c dT from 220 K.
 *
 * @param table - the material's table
 * @param temperature_K - temperature [K]
 * @returns specific enthalpy [J/kg]
 *
 * @example
 * enthalpyAt(enthalpyTable('steel'), 320) // => 41930.2
 */
export function enthalpyAt(table: EnthalpyTable, temperature_K: number): number {
  const T = table.temperature_K;
  let low = 0;
  let high = CELLS;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (T[middle]! <= temperature_K) low = middle;
    else high = middle;
  }
  return (low + (temperature_K - T[low]!) / (T[low + 1]! - T[low]!)) * table.step_Jpkg;
}

function build(material: Material): EnthalpyTable {
  // integrate on a fine even grid of temperature, then read off at even enthalpies
  const n = 8 * (HIGH_K - LOW_K);
  const dT = (HIGH_K - LOW_K) / n;
  const enthalpy = new Float64Array(n + 1);
  const theta = new Float64Array(n + 1);
  for (let i = 0; i < n; i++) {
    const middle = LOW_K + (i + 0.5) * dT;
    enthalpy[i + 1] = enthalpy[i]! + dT * valueAtTemperature(material, material.heatCapacity, middle);
    theta[i + 1] = theta[i]! + dT * valueAtTemperature(material, material.conductivity, middle);
  }
  const step_Jpkg = enthalpy[n]! / CELLS;
  const temperature_K = new Float64Array(CELLS + 1);
  const potential = new Float64Array(CELLS + 1);
  let i = 0;
  for (let cell = 0; cell <= CELLS; cell++) {
    while (i < n - 1 && enthalpy[i + 1]! < cell * step_Jpkg) i++;
    const share = (cell * step_Jpkg - enthalpy[i]!) / (enthalpy[i + 1]! - enthalpy[i]!);
    temperature_K[cell] = LOW_K + (i + share) * dT;
    potential[cell] = theta[i]! + share * (theta[i + 1]! - theta[i]!);
  }
  return { step_Jpkg, temperature_K, potential };
}
