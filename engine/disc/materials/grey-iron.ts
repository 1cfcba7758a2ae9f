/** Grey cast iron of brake discs: flakes of graphite in a matrix of pearlite. */
import { kelvin } from '../../units.ts';
import { heatCapacityCarbonSteel } from './carbon-steel.ts';
import { heatCapacityGraphite } from './constituents.ts';
import { tableRange, type Material } from './material.ts';

/** Free graphite by mass: 3.4 % of carbon, of which pearlite binds 0.8 %. From memory; 2.4 to 3.0 % [-] */
const GRAPHITE = 0.026;
/** Heat that pearlite takes to become austenite, and where. Source: Hagel, Pound & Mehl, Acta Metall. 4 (1956) 37, abstract: 19.6 cal/g ± 5 % at 727 °C [J/kg, °C] */
const PEARLITE_TO_AUSTENITE = 19.6 * 4184;
const EUTECTOID_C = 727;
/**
 * Where it begins, is strongest and ends. Silicon lifts it above the 727 °C of plain steel, and at the 50 to 300 K/s of a
 * rubbed face it runs late and over a wide span. From memory [°C]
 */
const BEGINS_C = 720;
const STRONGEST_C = 770;
const ENDS_C = 840;

/**
 * Specific heat capacity of grey iron below its transformation, by the rule of mixtures.
 *
 *     c = w c_graphite + (1 − w) c_steel,   w = 0.026
 *
 * @remarks
 * For 20 to 650 °C. One percent of graphite more adds 1 to 2 %. The standard's round mean of 535 J/(kg K) from 20 to
 * 600 °C (EN 1561, from memory) lies 9 % below this, and below pure iron; alloys of solids do not.
 * Source: rule of mixtures (Kopp), with EN 1993-1-2:2005, 3.4.1.2 and Butland & Maddison (1973).
 *
 * @param temperature_K - temperature [K]
 * @returns specific heat capacity [J/(kg K)]
 *
 * @example
 * heatCapacityGreyIron(kelvin(20)) // => 446.4
 * heatCapacityGreyIron(kelvin(400)) // => 628.8
 * heatCapacityGreyIron(kelvin(600)) // => 784.1
 */
export function heatCapacityGreyIron(temperature_K: number): number {
  return (
    GRAPHITE * heatCapacityGraphite(temperature_K) + (1 - GRAPHITE) * heatCapacityCarbonSteel(temperature_K)
  );
}

const MIXED_C = [-60, 20, 100, 200, 300, 400, 500, 550, 600, 650];
/** Above: the magnetic rise of iron to its Curie point, then austenite. From memory. [°C, J/(kg K)] */
const BEFORE = { at_C: 700, c: 930 };
const START = { at_C: BEGINS_C, c: 980 };
const END = { at_C: ENDS_C, c: 655 };
const AUSTENITE = [
  [900, 660],
  [1000, 670],
  [1300, 695],
] as const;

/**
 * Heat from begin to end: pearlite to its equilibrium with austenite, the transformation there, then austenite. Spread as a
 * triangle over the whole span, whose top follows.
 */
const held =
  START.c * (EUTECTOID_C - BEGINS_C) +
  (1 - GRAPHITE) * PEARLITE_TO_AUSTENITE +
  END.c * (ENDS_C - EUTECTOID_C);
const peak =
  (2 * held - START.c * (STRONGEST_C - BEGINS_C) - END.c * (ENDS_C - STRONGEST_C)) / (ENDS_C - BEGINS_C);

const capacities: (readonly [at_C: number, c: number])[] = [
  ...MIXED_C.map((at_C) => [at_C, heatCapacityGreyIron(kelvin(at_C))] as const),
  [BEFORE.at_C, BEFORE.c],
  [START.at_C, START.c],
  [STRONGEST_C, peak],
  [END.at_C, END.c],
  ...AUSTENITE,
];

/** From memory: 45 to 72 at 20 °C by grade, the longer the flakes the more. [°C, W/(m K)] */
const CONDUCTIVITY = [
  [-60, 53],
  [20, 53],
  [100, 52],
  [200, 50],
  [300, 47],
  [400, 44],
  [500, 41],
  [600, 38],
  [700, 35],
  [800, 32],
  [900, 31],
  [1000, 30],
  [1300, 30],
] as const;

/**
 * At 20 °C it gives a diffusivity of 1.65e-5 m²/s, inside the 1.56 to 2.00e-5 m²/s that Hecht, Dinwiddie & Wang, J. Mater.
 * Sci. 34 (1999) 4775 (abstract), measured on commercial rotors. The heat of transformation is given back on the way down
 * at the same temperatures; real iron is some 50 K late, and martensite gives back less.
 */
export const greyIron: Material = {
  density_kgpm3: 7200,
  temperature_K: capacities.map(([at_C]) => kelvin(at_C)),
  heatCapacity: capacities.map(([, c]) => c),
  conductivity: capacities.map(([at_C]) => between(CONDUCTIVITY, at_C)),
  range: tableRange(
    'grey iron',
    [kelvin(-60), kelvin(1000)],
    'EN 1993-1-2, Butland & Maddison 1973; k from memory',
  ),
};

function between(table: readonly (readonly [number, number])[], at: number): number {
  const next = Math.max(
    1,
    table.findIndex(([x]) => x >= at),
  );
  const [[x0, y0], [x1, y1]] = [table[next - 1]!, table[next]!];
  return y0 + ((y1 - y0) * (at - x0)) / (x1 - x0);
}
