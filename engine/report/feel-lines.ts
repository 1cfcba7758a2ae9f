/** Damage, pedal and fluid of a corner as lines of a terminal's table. */
import type { CornerRecord } from './summary.ts';

export function feelLines(name: string, corner: CornerRecord): string[] {
  return [`${name}: ${damageLine(corner)}`, `${name}: ${pedalLine(corner)}`];
}

function damageLine({ damage, laps }: CornerRecord): string {
  const { largestDifference_K, place, lap, stopsAbove200, stops } = damage;
  const where = `${place && `${place}, `}lap ${lap}`;
  const most = `face at most ${largestDifference_K.toFixed(0)} K above its core (${where})`;
  const counted = laps.some((one) => one.in !== null) ? 'counted laps' : 'all laps';
  const times = [
    `${damage.aboveFacePeak_s.toFixed(1)} s above face peak`,
    `${damage.aboveBulk_s.toFixed(1)} s above bulk`,
    `${damage.belowBite_s.toFixed(1)} s of braking below bite`,
  ];
  return `${most}, above 200 K in ${stopsAbove200} of ${stops} brakings; ${counted}: ${times.join(', ')}`;
}

function pedalLine({ pedal }: CornerRecord): string {
  if (!pedal) return 'pedal not told, no hard stop counts';
  const { highest, place, lap, lowest, lowestPlace, lowestLap, middle_C } = pedal;
  const middle = `than in the middle of the window (${middle_C.toFixed(0)} °C)`;
  return `pedal ${effort(highest)} at ${place} on lap ${lap} ${middle}, ${effort(lowest)} at ${lowestPlace} on lap ${lowestLap}`;
}

function effort(ratio: number): string {
  const percent = Math.round(100 * Math.abs(ratio - 1));
  if (percent === 0) return 'no heavier';
  return `${percent} % ${ratio > 1 ? 'heavier' : 'lighter'}`;
}

/** "75 K below wet boiling (comfortable)", and below the least of its class where that differs. */
export function fluidWords({ fluidMargin_K, fluidClassMargin_K, fluidCall }: CornerRecord): string {
  const calls = fluidCall === 'nothing' ? '' : ` (${fluidCall})`;
  const own = `${below(fluidMargin_K)} wet boiling${calls}`;
  const differs = fluidClassMargin_K !== null && Math.abs(fluidClassMargin_K - fluidMargin_K) >= 0.5;
  return differs ? `${own}, ${below(fluidClassMargin_K)} the least of its class` : own;
}

const below = (margin_K: number): string =>
  `${Math.abs(margin_K).toFixed(0)} K ${margin_K < 0 ? 'above' : 'below'}`;
