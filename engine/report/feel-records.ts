/** Damage, pedal and fluid in the trade's units, as `--json` prints them. Their keys are part of the contract. */
import { celsius } from '../units.ts';
import type { CornerResult, Damage, FluidCall, PedalRange } from '../stint/result.ts';

export interface FeelRecord {
  damage: Damage;
  /** Efforts over that in the middle of the window; null where no lap that counts has a hard stop. */
  pedal: (Omit<PedalRange, 'middle_K'> & { middle_C: number }) | null;
  fluidMargin_K: number;
  fluidClassMargin_K: number | null;
  fluidCall: FluidCall;
}

export function feelRecord({ damage, pedal, ...fluid }: CornerResult): FeelRecord {
  const { fluidMargin_K, fluidClassMargin_K, fluidCall } = fluid;
  return { damage, pedal: pedal && pedalRecord(pedal), fluidMargin_K, fluidClassMargin_K, fluidCall };
}

const pedalRecord = ({ middle_K, ...range }: PedalRange): FeelRecord['pedal'] => ({
  middle_C: celsius(middle_K),
  ...range,
});
