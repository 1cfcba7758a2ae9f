/** One corner's brake in SI, as the disc model takes it. */
import type { MaterialName } from './materials.ts';

export interface DiscSpec {
  vented: boolean;
  material: MaterialName;
  outer_m: number;
  inner_m: number;
  cheek_m: number;
  gap_m: number;
  vanes: number;
  vane_m: number;
  vaneShape: 'straight' | 'curved' | 'pillars' | 'none';
  /** Length of a vane's path over the radius it spans [-] */
  vaneStretch: number;
  /** Over a smooth still tube, at Re 10 000 [-] */
  vaneEnhancement: number;
  ringMass_kg: number;
  /** Rubbed by the pads, both faces: where the heat comes in [m²] */
  swept_m2: number;
  emissivityTrack: number;
  emissivityOther: number;
}

export interface CornerSpec {
  disc: DiscSpec;
  bell: {
    material: MaterialName;
    mass_kg: number;
    joint_WpK: number;
    area_m2: number;
    hub_WpK: number;
    emissivity: number;
  };
  pad: {
    /** One pad [m²] */
    area_m2: number;
    thickness_m: number;
    plate_m: number;
    material: 'organic' | 'semi-metallic' | 'sintered';
    conductivity: number;
    /** Titanium shim behind each plate; 0: none [m] */
    shim_m: number;
    /** Share of the friction heat made on the disc; null: by effusivity and area [-] */
    discShare: number | null;
    drag_N: number;
    runningGap_m: number;
  };
  caliper: {
    mass_kg: number;
    area_m2: number;
    piston_WpK: number;
    mount_WpK: number;
    emissivity: number;
    /** Share of its surface that the air behind the disc washes [-] */
    ductWash: number;
  };
  fluid: { volume_m3: number; coupling_WpK: number };
  wheel: {
    /** Speed of the air over the faces as a share of car speed [-] */
    crossflow: number;
    ductOnFace: number;
    still: number;
    covered: number;
    /** Open share of the wheel [-] */
    openShare: number;
    loadedRadius_m: number;
  };
  leakArea_m2: number;
}

/**
 * Radius at which the pads rub on the whole: the middle of the swept ring.
 *
 *     r = (D_o + D_i) / 4
 *
 * @remarks
 * For uniform wear. Source: Limpert, Brake Design and Safety, ch. 2 (from memory).
 *
 * @param disc - the disc
 * @returns effective radius [m]
 *
 * @example
 * effectiveRadius({ outer_m: 0.38, inner_m: 0.256 }) // => 0.159
 */
export const effectiveRadius = (disc: DiscSpec): number => (disc.outer_m + disc.inner_m) / 4;

/**
 * Whole face of one side of the ring, rubbed or not: where air and radiation take heat.
 *
 *     A = π/4 (D_o² − D_i²)
 *
 * @remarks
 * Source: geometry.
 *
 * @param disc - the disc
 * @returns area of one face [m²]
 *
 * @example
 * faceArea({ outer_m: 0.38, inner_m: 0.256 }) // => 0.06194
 */
export const faceArea = ({ outer_m, inner_m }: Pick<DiscSpec, 'outer_m' | 'inner_m'>): number =>
  (Math.PI / 4) * (outer_m ** 2 - inner_m ** 2);
