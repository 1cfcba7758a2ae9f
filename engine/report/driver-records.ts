/** Restarts and soaks in the trade's units, as `--json` prints them. Their keys are part of the contract. */
import { celsius } from '../units.ts';
import type { Restart, Soak, SoakRise } from '../stint/result.ts';

export interface RestartRecord {
  lap: number;
  after: Restart['after'];
  firstStop_C: number;
  firstStopPlace: string;
  firstStopLap: number;
  underBite_K: number;
  brakesToWarm: number | null;
  lapsToWarm: number | null;
  warmLap: number | null;
  warmPlace: string | null;
}

interface RiseRecord {
  start_C: number;
  peak_C: number;
  rise_K: number;
  peakAfter_s: number;
}

export interface SoakRecord {
  lap: number;
  standing_s: number;
  brakeHeld: boolean;
  caliper: RiseRecord;
  fluid: RiseRecord;
  caliperMargin_K: number;
  fluidMargin_K: number;
  discStart_C: number;
  discEnd_C: number;
  discFirstMinute_K: number | null;
}

export function restartRecord({ firstStop_K, ...restart }: Restart): RestartRecord {
  const { lap, after, ...rest } = restart;
  return { lap, after, firstStop_C: celsius(firstStop_K), ...rest };
}

export function soakRecord({ caliper, fluid, discStart_K, discEnd_K, ...soak }: Soak): SoakRecord {
  return {
    ...soak,
    caliper: riseRecord(caliper),
    fluid: riseRecord(fluid),
    discStart_C: celsius(discStart_K),
    discEnd_C: celsius(discEnd_K),
  };
}

const riseRecord = ({ start_K, peak_K, ...rise }: SoakRise): RiseRecord => ({
  start_C: celsius(start_K),
  peak_C: celsius(peak_K),
  ...rise,
});
