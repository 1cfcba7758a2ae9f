/** What measured runs say of the radiation, put on each surface before it sees anything. */
import type { CornerSpec } from './corner-spec.ts';

/** The corner with the emissivity of every surface times a factor; none radiates more than a black one. */
export function withEmissivity(spec: CornerSpec, factor: number): CornerSpec {
  const { disc, bell, caliper } = spec;
  const times = (emissivity: number): number => Math.min(1, emissivity * factor);
  return {
    ...spec,
    disc: {
      ...disc,
      emissivityTrack: times(disc.emissivityTrack),
      emissivityOther: times(disc.emissivityOther),
    },
    bell: { ...bell, emissivity: times(bell.emissivity) },
    caliper: { ...caliper, emissivity: times(caliper.emissivity) },
  };
}
