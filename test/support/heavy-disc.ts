/** The heavy front disc with straight vanes, in SI, for tests that go below the scenario. */
import type { DiscSpec } from '../../engine/disc/corner-spec.ts';

export const heavyDisc: DiscSpec = {
  vented: true,
  material: 'grey iron',
  outer_m: 0.38,
  inner_m: 0.256,
  cheek_m: 0.0092,
  gap_m: 0.0171,
  vanes: 60,
  vane_m: 0.0045,
  vaneShape: 'straight',
  vaneStretch: 1,
  vaneEnhancement: 1.75,
  ringMass_kg: 10.2,
  swept_m2: 0.124,
  emissivityTrack: 0.45,
  emissivityOther: 0.75,
};
