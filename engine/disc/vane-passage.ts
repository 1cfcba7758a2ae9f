/** The passages between the vanes of a vented disc, as ducts. */
import type { DiscSpec } from './corner-spec.ts';

export interface VanePassage {
  /** Length along a vane [m] */
  length_m: number;
  /** All passages together at the middle radius [m²] */
  flowArea_m2: number;
  /** All passages together at the inner radius, the narrowest place [m²] */
  entryArea_m2: number;
  hydraulicDiameter_m: number;
  /** Cheek walls inside the passages [m²] */
  wallArea_m2: number;
  /** Both flanks of all vanes [m²] */
  vaneArea_m2: number;
  vaneMass_kg: number;
}

/** Areas and lengths of the passages; null for a solid disc. */
export function vanePassage(disc: DiscSpec, density_kgpm3: number): VanePassage | null {
  if (!disc.vented) return null;
  const span_m = (disc.outer_m - disc.inner_m) / 2;
  const length_m = span_m * disc.vaneStretch;
  const middle_m = (disc.outer_m + disc.inner_m) / 4;
  const solid_m = disc.vanes * disc.vane_m;
  const width = (radius_m: number): number => Math.max(2 * Math.PI * radius_m - solid_m, 0.05 * radius_m);
  const passage_m = width(middle_m) / disc.vanes;
  return {
    length_m,
    flowArea_m2: width(middle_m) * disc.gap_m,
    entryArea_m2: width(disc.inner_m / 2) * disc.gap_m,
    hydraulicDiameter_m: (2 * passage_m * disc.gap_m) / (passage_m + disc.gap_m),
    wallArea_m2: 2 * width(middle_m) * span_m,
    vaneArea_m2: 2 * disc.vanes * disc.gap_m * length_m,
    vaneMass_kg: Math.min(solid_m * disc.gap_m * length_m * density_kgpm3, 0.45 * disc.ringMass_kg),
  };
}
