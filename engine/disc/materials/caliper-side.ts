/** What sits behind the pads: aluminium of caliper and bell, brake fluid, titanium of shims. */
import { kelvin } from '../../units.ts';
import { tableRange, type Material } from './material.ts';

/**
 * Alloys of calipers and bells; c = 903 + 0.41 θ and k = 140 + 0.1 θ, θ in °C.
 *
 * Source: EN 1999-1-2:2007, 3.3.1, alloys of the 5xxx and 7xxx kind (from memory).
 */
export const aluminium: Material = {
  density_kgpm3: 2700,
  temperature_K: [-60, 500].map(kelvin),
  heatCapacity: [878.4, 1108],
  conductivity: [134, 190],
  range: tableRange('aluminium', [kelvin(-60), kelvin(500)], 'EN 1999-1-2, from memory'),
};

/** Brake fluid on the base of glycol ethers. From memory. */
export const brakeFluid: Material = {
  density_kgpm3: 1050,
  temperature_K: [-60, 20, 100, 260].map(kelvin),
  heatCapacity: [1800, 2000, 2200, 2550],
  conductivity: [0.16, 0.16, 0.15, 0.14],
  range: tableRange('brake fluid', [kelvin(-60), kelvin(260)], 'from memory'),
};

/** Conductivity of the titanium alloy of shims at 200 to 300 °C. From memory; pure titanium has about 20 [W/(m K)] */
export const SHIM_CONDUCTIVITY = 9;
