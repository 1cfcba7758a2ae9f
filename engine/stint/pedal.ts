/** What the driver's leg feels: the pedal at each stop, against that in the middle of the window. */
import { effortBetween, pedalEffort, type FrictionPoint } from '../car/pedal-effort.ts';
import { said, type Said } from '../said.ts';
import type { Brake } from '../scenario/schema.ts';
import { celsius, kelvin } from '../units.ts';
import { countedOf } from './judge.ts';
import type { CornerResult, LapSummary, PedalRange, Stop, StopPedal, WindowLimits } from './result.ts';

/** A pad's friction in kelvin, and the temperature that its effort is compared with. */
export interface Friction {
  curve: readonly FrictionPoint[];
  middle_K: number;
}

export const frictionOf = ({ pad }: Brake, { bite_K, facePeak_K }: WindowLimits): Friction => ({
  curve: pad.friction.map(({ face_C, coefficient }) => ({ face_K: kelvin(face_C), coefficient })),
  middle_K: (bite_K + facePeak_K) / 2,
});

/** Effort as a stop begins, and its extremes while the face goes from its coldest to its hottest. */
export function stopPedal(
  { curve, middle_K }: Friction,
  face: { start_K: number; least_K: number; most_K: number },
): StopPedal {
  const range = effortBetween(curve, [face.least_K, face.most_K], middle_K);
  return { start: pedalEffort(curve, face.start_K, middle_K), ...range };
}

/** The extremes over the hard stops of the laps that are judged; null where none of them has a hard stop. */
export function pedalOf(laps: LapSummary[], stops: Stop[], { middle_K }: Friction): PedalRange | null {
  const judged = new Set(countedOf(laps).map(({ lap }) => lap));
  const hard = stops.filter((stop) => stop.hard && judged.has(stop.lap));
  const [first, ...others] = hard;
  if (!first) return null;
  const most = others.reduce((top, stop) => (stop.pedal.highest > top.pedal.highest ? stop : top), first);
  const least = others.reduce((low, stop) => (stop.pedal.lowest < low.pedal.lowest ? stop : low), first);
  return {
    middle_K,
    highest: most.pedal.highest,
    place: most.place,
    lap: most.lap,
    lowest: least.pedal.lowest,
    lowestPlace: least.place,
    lowestLap: least.lap,
  };
}

/** What is said where hard stops leave the temperatures that the pad's friction is known for; null where they do not. */
export function beyondFriction({ stops }: Pick<CornerResult, 'stops'>, { pad }: Brake): Said | null {
  const hard = stops.filter((stop) => stop.hard);
  const [first, last] = [pad.friction[0]!.face_C, pad.friction.at(-1)!.face_C];
  const coldest_C = Math.round(celsius(Math.min(...hard.map((stop) => stop.startFace_K))));
  const hottest_C = Math.round(celsius(Math.max(...hard.map((stop) => stop.peakFace_K))));
  const told = (met_C: number, from: 'up to' | 'from', known_C: number): Said =>
    said`the face is at ${{ value: met_C, unit: '°C' }} in hard stops, friction is given ${from} ${{ value: known_C, unit: '°C' }} only; the pedal beyond that is a guess`;
  if (hottest_C > last) return told(hottest_C, 'up to', last);
  return coldest_C < first ? told(coldest_C, 'from', first) : null;
}
