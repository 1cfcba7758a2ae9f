import { describe, expect, it } from 'vitest';
import { cheekGaps, cheekRange, cheekShares } from '../../../engine/disc/cheek-mesh.ts';
import type { MaterialName } from '../../../engine/disc/materials.ts';
import { kelvin } from '../../../engine/units.ts';
import { drivenSlab, evenSteps, propertiesAt, slabAt, stillMap } from '../../support/bare-slab.ts';
import {
  peakUnderFallingFlux,
  surfaceUnderConstantFlux,
  surfaceUnderFallingFlux,
} from '../../support/exact-slab.ts';

const STOP_S = 4;
const EARLY_S = 0.1;
const STEPS = 800;
/** Small heat keeps the properties where they are [W/m²] */
const FLUX = 2000;

/** Face of a cheek in one stop: the kernel's over the exact slab's, at 0.1 s and at the peak. */
function faceOverExact(material: MaterialName, { start_C, cheek_mm }: { start_C: number; cheek_mm: number }) {
  const thickness_m = cheek_mm / 1000;
  const area_m2 = 0.1;
  const start_K = kelvin(start_C);
  const { k, density, c } = propertiesAt(material, start_K);
  const fourier = (t: number): number => (k * t) / (density * c * thickness_m ** 2);
  const scale_K = (FLUX * thickness_m) / k;
  const power = {
    at: (t: number) => FLUX * area_m2 * (1 - t / STOP_S),
    sum: (t: number) => FLUX * area_m2 * (t - t ** 2 / (2 * STOP_S)),
  };
  const slab = slabAt({ thickness_m, area_m2, material }, start_K);
  const { face_K } = drivenSlab(slab, evenSteps(STOP_S, STEPS, power), stillMap());
  const rise = face_K.map((T) => (T - start_K) / scale_K);
  return {
    early: rise[(STEPS * EARLY_S) / STOP_S - 1]! / surfaceUnderFallingFlux(fourier(EARLY_S), fourier(STOP_S)),
    peak: Math.max(...rise) / peakUnderFallingFlux(fourier(STOP_S)),
  };
}

describe('the exact slab', () => {
  // Carslaw & Jaeger 1959, 3.8, as summed for test/validation/slab-constant-flux and slab-falling-flux
  it.each([
    [0.05, 0.252313],
    [0.2, 0.505165],
    [1, 1.333323],
  ])('has its published surface under a constant flux at Fo %s', (Fo, rise) => {
    expect(surfaceUnderConstantFlux(Fo)).toBeCloseTo(rise, 5);
  });

  it('peaks in a stop where its series says', () => {
    expect(peakUnderFallingFlux(0.8680555625)).toBeCloseTo(0.522524, 5);
  });
});

describe('the face of a cheek in one stop', () => {
  const cheeks = [5, 6, 8, 10, 12];
  const hot = (['grey iron', 'carbon-ceramic'] as const).flatMap((material) => [
    [material, 400] as const,
    [material, 600] as const,
  ]);
  const all = [['grey iron', 20] as const, ...hot].flatMap(([material, start_C]) =>
    cheeks.map((cheek_mm) => [material, start_C, cheek_mm] as const),
  );

  it.each(all)(
    'is within 5 %% at 0.1 s and 0.5 %% at its peak: %s at %s °C, %s mm',
    (material, start_C, cheek_mm) => {
      const { early, peak } = faceOverExact(material, { start_C, cheek_mm });
      expect(Math.abs(early - 1)).toBeLessThanOrEqual(0.05);
      expect(Math.abs(peak - 1)).toBeLessThanOrEqual(0.005);
    },
  );

  it.each([cheekRange.low, cheekRange.high])('is so still at the end of the range, %s mm', (cheek_mm) => {
    const { early, peak } = faceOverExact('grey iron', { start_C: 600, cheek_mm });
    expect(Math.abs(early - 1)).toBeLessThanOrEqual(0.05);
    expect(Math.abs(peak - 1)).toBeLessThanOrEqual(0.005);
  });
});

describe('the nodes through a cheek', () => {
  const gaps = cheekGaps(0.009, 7);

  it('stand over its whole thickness', () => {
    expect(gaps.reduce((sum, gap) => sum + gap, 0)).toBeCloseTo(0.009, 12);
  });

  it('each hold some of it, and all of it together', () => {
    const shares = cheekShares(gaps);
    expect(Math.min(...shares)).toBeGreaterThan(0);
    expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12);
  });

  it('find the heat of a straight profile exactly and half the trapezoid’s error of a hollow one', () => {
    const at = gaps.reduce<number[]>((places, gap) => [...places, places.at(-1)! + gap], [0]);
    const shares = cheekShares(gaps);
    const mean = (profile: (x: number) => number): number =>
      shares.reduce((sum, share, i) => sum + share * profile(at[i]! / 0.009), 0);
    expect(mean((x) => 1 - x)).toBeCloseTo(0.5, 12);
    const trapezoid = gaps.reduce((sum, gap) => sum + (gap / 0.009) ** 3 / 6, 0);
    expect(mean((x) => (1 - x) ** 2) - 1 / 3).toBeCloseTo(trapezoid / 2, 12);
  });
});
