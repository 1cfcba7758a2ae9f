import { describe, expect, it } from 'vitest';
import { withEmissivity } from '../../../engine/disc/emissivity.ts';
import { coefficientBridge, radiatingSurfaces } from '../../../engine/disc/radiation.ts';
import { createStepper } from '../../../engine/disc/stepper.ts';
import { STEFAN_BOLTZMANN } from '../../../engine/disc/view-factor.ts';
import { compile } from '../../../engine/stint/compile.ts';
import { changed, corner, driven } from '../../support/stints.ts';

const corrected = (factor: number, track = 0.45) =>
  compile(changed({ 'correction.emissivity.factor': factor, 'brakes.front.disc.emissivity_track': track }))
    .corners[0]!;

describe('a corrected emissivity', () => {
  it('is that of each surface times the factor, and of none above 1', () => {
    const { disc, bell, caliper } = corrected(1).spec;
    const twice = corrected(2).spec;
    expect(twice.disc.emissivityTrack).toBe(0.9);
    expect(twice.disc.emissivityOther).toBe(1);
    expect(twice.bell.emissivity).toBe(Math.min(1, 2 * bell.emissivity));
    expect(twice.caliper.emissivity).toBe(Math.min(1, 2 * caliper.emissivity));
    const less = corrected(0.8).spec;
    expect(less.disc.emissivityTrack / disc.emissivityTrack).toBeCloseTo(0.8, 12);
    expect(less.caliper.emissivity / caliper.emissivity).toBeCloseTo(0.8, 12);
  });

  it('lets nothing radiate more than a black surface, whatever the factor', () => {
    const { spec, start } = corrected(2, 0.9);
    const black = radiatingSurfaces(withEmissivity(spec, 1e9));
    for (const [name, area_m2] of Object.entries(radiatingSurfaces(spec)))
      expect(area_m2, name).toBeLessThanOrEqual(black[name as keyof typeof black]);
    const stepper = createStepper(spec, start);
    const face_m2 = (Math.PI / 4) * (spec.disc.outer_m ** 2 - spec.disc.inner_m ** 2);
    expect(stepper.radiation[0]).toBeLessThan(2 * face_m2 * (1 - spec.wheel.covered) * STEFAN_BOLTZMANN);
    expect(stepper.bridge_WpK4).toBeLessThanOrEqual(coefficientBridge(withEmissivity(spec, 1e9)));
  });

  it('is what is compared with the emissivities that were measured', () => {
    const used = (factor: number) =>
      corner(driven(changed({ 'correction.emissivity.factor': factor })), 'front').ranges.find(
        ({ quantity }) => quantity === 'emissivity',
      )!;
    expect(used(1)).toMatchObject({ left: false });
    expect(used(2)).toMatchObject({ to: 1, left: true });
  });
});
