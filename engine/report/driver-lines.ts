/** Restarts and soaks as lines of the terminal's table. */
import type { RestartRecord, SoakRecord } from './driver-records.ts';
import type { CornerRecord } from './summary.ts';

export function driverLines(name: string, { restarts, soak, stopSoaks }: CornerRecord): string[] {
  const standing = [...stopSoaks, ...(soak ? [soak] : [])];
  return [
    ...restarts.map((restart) => `${name}: ${restartLine(restart)}`),
    ...standing.map((each) => `${name}: ${soakLine(each)}`),
  ];
}

function restartLine(restart: RestartRecord): string {
  const { lap, after, firstStop_C, firstStopPlace, firstStopLap, underBite_K } = restart;
  const from = after === 'start' ? 'start' : `restart on lap ${lap} after a ${after}`;
  const where = `${firstStopPlace}${firstStopLap === lap ? '' : ` on lap ${firstStopLap}`}`;
  const under = underBite_K > 0 ? `, ${underBite_K.toFixed(0)} K under bite` : '';
  return `${from}: first hard stop (${where}) at ${firstStop_C.toFixed(0)} °C${under}; ${warmth(restart)}`;
}

const warmth = ({ brakesToWarm, warmLap, warmPlace }: RestartRecord): string =>
  brakesToWarm === null
    ? 'never warm'
    : `warm from ${warmPlace} on lap ${warmLap}, after ${brakesToWarm} ${brakesToWarm === 1 ? 'braking' : 'brakings'}`;

function soakLine({ lap, standing_s, caliper, fluid, discFirstMinute_K }: SoakRecord): string {
  const part = (title: string, { start_C, peak_C, peakAfter_s }: SoakRecord['caliper']): string =>
    `${title} ${start_C.toFixed(0)} to ${peak_C.toFixed(0)} °C in ${(peakAfter_s / 60).toFixed(1)} min`;
  const disc =
    discFirstMinute_K === null ? '' : `, disc loses ${discFirstMinute_K.toFixed(0)} K in the first minute`;
  const stood = `standing ${(standing_s / 60).toFixed(1)} min after lap ${lap}`;
  return `${stood}: ${part('caliper', caliper)}, ${part('fluid', fluid)}${disc}`;
}
