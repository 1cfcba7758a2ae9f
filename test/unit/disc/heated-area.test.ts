import { describe, expect, it } from 'vitest';
import { buildNetwork, CHEEK, NODE } from '../../../engine/disc/network.ts';
import { defaultScenario } from '../../../engine/scenario/library.ts';
import { cornersOf, specOf } from '../../../engine/stint/corners.ts';
import type { Changes } from '../../../engine/scenario/override.ts';
import { changed, corner, driven } from '../../support/stints.ts';

const front = specOf(cornersOf(defaultScenario())[0]!.brake, defaultScenario().car.loaded_radius_m);

/** Front face's rise in the hottest stop of a short stint, and its peak [K] */
function hottest(changes: Changes): { rise_K: number; peak_K: number } {
  const stops = corner(driven(changed({ 'stint.laps': 6, ...changes })), 'front').stops;
  const top = stops.reduce((a, b) => (b.peakFace_K > a.peakFace_K ? b : a));
  return { rise_K: top.peakFace_K - top.startFace_K, peak_K: top.peakFace_K };
}

describe('the rubbed area carries the flux', () => {
  const usual = hottest({});

  it('half of it doubles the flash of the face, or a little more where half of the cheeks’ mass moves to the vanes', () => {
    const half = hottest({ 'brakes.front.disc.swept_cm2': 555 });
    expect(half.rise_K / usual.rise_K).toBeGreaterThan(1.6);
    expect(half.rise_K / usual.rise_K).toBeLessThan(2.2);
  });

  it('a cheek worn by 1.5 mm, with the mass that went with it, runs hotter', () => {
    const worn = { 'brakes.front.disc.cheek_mm': 7.7, 'brakes.front.disc.thickness_mm': 32.5 };
    const lost_kg = 7.2 * 1.11 * 0.15;
    const lighter = hottest({ ...worn, 'brakes.front.disc.ring_mass_kg': 10.2 - lost_kg });
    expect(lighter.peak_K).toBeGreaterThan(usual.peak_K + 3);
  });
});

describe('the mass of the ring', () => {
  const total = (spec: typeof front): number => {
    const { mass_kg } = buildNetwork(spec);
    return CHEEK.reduce((sum, node) => sum + mass_kg[node]!, mass_kg[NODE.rim]!);
  };

  it.each([10.2, 14, 5, 1])('is all there, whatever the sizes say: %d kg', (ringMass_kg) => {
    const spec = { ...front, disc: { ...front.disc, ringMass_kg } };
    expect(total(spec)).toBeCloseTo(ringMass_kg, 9);
    for (const mass of buildNetwork(spec).mass_kg) expect(mass).toBeGreaterThan(0);
  });
});
