/** The passages between the vanes or pillars of a vented disc, as ducts. */
import type { DiscSpec } from './corner-spec.ts';

export interface VanePassage {
  /** Length of the air's path [m] */
  length_m: number;
  /** All passages together at the middle radius, across the air's path [m²] */
  flowArea_m2: number;
  /** All passages together at the inner radius, the narrowest place [m²] */
  entryArea_m2: number;
  hydraulicDiameter_m: number;
  /** Cheek walls inside the passages [m²] */
  wallArea_m2: number;
  /** Both flanks of all vanes, or the sides of all pillars [m²] */
  vaneArea_m2: number;
  /** Diameter of a pillar; null: vanes [m] */
  pillar_m: number | null;
  vaneMass_kg: number;
}

/** Path of a curved vane over the radius it spans. From memory, 1.1 to 1.3 [-] */
export const CURVED_STRETCH = 1.15;
/** Least share of a circle that stays open, whatever the scenario asks for [-] */
const LEAST_OPEN = 0.01;
/** Most of the ring's mass that its vanes may take: the rest is cheeks [-] */
const MOST_MASS = 0.45;

/** Areas and lengths of the passages; null for a solid disc. */
export function vanePassage(disc: DiscSpec, density_kgpm3: number): VanePassage | null {
  if (!disc.vented) return null;
  const { volume_m3, ...passage } = disc.vaneShape === 'pillars' ? betweenPillars(disc) : betweenVanes(disc);
  return { ...passage, vaneMass_kg: Math.min(volume_m3 * density_kgpm3, MOST_MASS * disc.ringMass_kg) };
}

type Shape = Omit<VanePassage, 'vaneMass_kg'> & { volume_m3: number };

/** A curved vane leans: its path is longer than the radius it spans, and the width across it is smaller by the same ratio. */
function betweenVanes(disc: DiscSpec): Shape {
  const { vanes, vane_m, gap_m, vaneStretch } = disc;
  const { span_m, middle_m } = ring(disc);
  const length_m = span_m * vaneStretch;
  const width = (radius_m: number): number => {
    const across_m = (2 * Math.PI * radius_m) / vaneStretch;
    return Math.max(across_m - vanes * vane_m, LEAST_OPEN * across_m);
  };
  const passage_m = width(middle_m) / vanes;
  return {
    length_m,
    flowArea_m2: width(middle_m) * gap_m,
    entryArea_m2: width(disc.inner_m / 2) * gap_m,
    hydraulicDiameter_m: (2 * passage_m * gap_m) / (passage_m + gap_m),
    wallArea_m2: 2 * width(middle_m) * length_m,
    vaneArea_m2: 2 * vanes * gap_m * length_m,
    pillar_m: null,
    volume_m3: vanes * vane_m * gap_m * length_m,
  };
}

/** Pillars stand at one pitch in both directions, so that rows and pillars in a row follow from the ring's area. */
function betweenPillars(disc: DiscSpec): Shape {
  const { vanes, vane_m, gap_m } = disc;
  const { span_m, middle_m } = ring(disc);
  const ring_m2 = 2 * Math.PI * middle_m * span_m;
  const pitch_m = pillarPitch(disc);
  const open = Math.max(1 - vane_m / pitch_m, LEAST_OPEN);
  const foot_m2 = Math.min((vanes * Math.PI * vane_m ** 2) / 4, (1 - LEAST_OPEN) * ring_m2);
  const wallArea_m2 = 2 * (ring_m2 - foot_m2);
  const vaneArea_m2 = vanes * Math.PI * vane_m * gap_m;
  return {
    length_m: span_m,
    flowArea_m2: 2 * Math.PI * middle_m * open * gap_m,
    entryArea_m2: Math.PI * disc.inner_m * open * gap_m,
    hydraulicDiameter_m: (2 * wallArea_m2 * gap_m) / (wallArea_m2 + vaneArea_m2),
    wallArea_m2,
    vaneArea_m2,
    pillar_m: vane_m,
    volume_m3: foot_m2 * gap_m,
  };
}

const ring = ({ outer_m, inner_m }: DiscSpec): { span_m: number; middle_m: number } => ({
  span_m: (outer_m - inner_m) / 2,
  middle_m: (outer_m + inner_m) / 4,
});

/** Distance between the middles of pillars that stand evenly over the ring [m] */
const pillarPitch = (disc: DiscSpec): number => disc.vane_m * Math.sqrt(pillarsThatFit(disc) / disc.vanes);

/**
 * Number of pillars at which they would touch, their pitch being their diameter.
 *
 *     N = π (Rₒ² − Rᵢ²) / D²
 *
 * @remarks
 * Their pitch √(π (Rₒ² − Rᵢ²)/N) is the same along a row and from row to row; a casting may have another pattern.
 * Source: geometry.
 *
 * @param disc - outer and inner diameter and diameter of a pillar, in one unit of length
 * @returns number of pillars [-]
 *
 * @example
 * pillarsThatFit({ outer_m: 0.3, inner_m: 0.2, vane_m: 0.01 }) // => 392.7
 */
export function pillarsThatFit(disc: Pick<DiscSpec, 'outer_m' | 'inner_m' | 'vane_m'>): number {
  return (Math.PI * (disc.outer_m ** 2 - disc.inner_m ** 2)) / (4 * disc.vane_m ** 2);
}
