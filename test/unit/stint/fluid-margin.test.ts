import { describe, expect, it } from 'vitest';
import { FLUID_MINIMA } from '../../../engine/car/fluid-class.ts';
import { printed } from '../../../engine/said.ts';
import { fluidCall } from '../../../engine/stint/fluid-margin.ts';
import { kelvin } from '../../../engine/units.ts';
import { changed, corner, driven } from '../../support/stints.ts';

const soaking = (changes: Record<string, string | number> = {}) => driven(changed(changes));
const labels = (changes: Record<string, string | number>): string[] =>
  soaking(changes)
    .notices.filter(({ kind }) => kind === 'fluid label')
    .map(({ said }) => printed(said));

describe('the fluid', () => {
  // FMVSS 116 (49 CFR 571.116), as several publishers give it
  it('of a class boils no lower than the standard asks', () => {
    expect(FLUID_MINIMA).toEqual({
      'DOT 3': { dry_C: 205, wet_C: 140 },
      'DOT 4': { dry_C: 230, wet_C: 155 },
      'DOT 5': { dry_C: 260, wet_C: 180 },
      'DOT 5.1': { dry_C: 260, wet_C: 180 },
      other: null,
    });
  });

  it('has its margin from the peak of the whole stint, which comes while the car stands', () => {
    const result = soaking({ 'brakes.front.fluid.wet_boiling_C': 200 });
    const front = corner(result, 'front');
    const peak_K = Math.max(...front.columns!.fluid_K);
    expect(front.fluidPeakAt_s).toBeGreaterThan(result.laps.at(-1)!.end_s);
    expect(front.fluidMargin_K).toBeCloseTo(kelvin(200) - peak_K, 9);
    expect(front.fluidClassMargin_K).toBeCloseTo(kelvin(180) - peak_K, 9);
  });

  it('without a class has no margin to one', () => {
    const front = corner(soaking({ 'brakes.front.fluid.class': 'other' }), 'front');
    expect(front.fluidClassMargin_K).toBeNull();
  });

  // common practice, no source
  it.each([
    [95, 'comfortable'],
    [60, 'comfortable'],
    [59, 'nothing'],
    [40, 'nothing'],
    [39.9, 'act'],
    [20, 'act'],
    [19.9, 'do not run'],
    [-5, 'do not run'],
  ] as const)('at %s K from wet boiling calls for: %s', (margin_K, expected) => {
    expect(fluidCall(margin_K)).toBe(expected);
  });
});

describe('a label is doubted', () => {
  it('when the wet point is below the least of its class', () => {
    expect(labels({ 'brakes.front.fluid.class': 'DOT 4', 'brakes.front.fluid.wet_boiling_C': 150 })).toEqual([
      'front: fluid is labelled DOT 4, but its wet boiling point of 150 °C is below the least of that class, 155 °C',
    ]);
  });

  it('when the dry point is', () => {
    const dry = { 'brakes.rear.fluid.dry_boiling_C': 255, 'brakes.rear.fluid.wet_boiling_C': 180 };
    expect(labels({ 'brakes.rear.fluid.class': 'DOT 5.1', ...dry })).toEqual([
      'rear: fluid is labelled DOT 5.1, but its dry boiling point of 255 °C is below the least of that class, 260 °C',
    ]);
  });

  it('not at the least itself, nor without a class', () => {
    const low = { 'brakes.front.fluid.dry_boiling_C': 200, 'brakes.front.fluid.wet_boiling_C': 120 };
    expect(labels({ 'brakes.front.fluid.class': 'other', ...low })).toEqual([]);
    const least = { 'brakes.front.fluid.dry_boiling_C': 230, 'brakes.front.fluid.wet_boiling_C': 155 };
    expect(labels({ 'brakes.front.fluid.class': 'DOT 4', ...least })).toEqual([]);
  });
});
