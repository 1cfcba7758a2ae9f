/** What the stint does to disc, pedal and fluid, in words: the list under the lap table. */
import type { CornerResult, Damage, FluidCall, LapSummary, PedalRange } from '../../engine/index.ts';
import { decimal, kelvins, level, limit, minutes, NBSP, percent } from './format.ts';

export interface FeelRow {
  name: string;
  text: string;
}

export function feelRows(corner: CornerResult): FeelRow[] {
  return [
    { name: 'Face over core', text: differenceWords(corner.damage) },
    { name: 'Past the window', text: pastWords(corner.damage, corner.laps) },
    { name: 'Pedal', text: pedalWords(corner.pedal) },
    { name: 'Caliper and fluid', text: fluidWords(corner) },
  ];
}

/** "At most 206 K, turn 11 on lap 2; above 200 K in 18 of all 161 brakings, hard or not." */
function differenceWords({ largestDifference_K, place, lap, stopsAbove200, stops }: Damage): string {
  const harsh = `above ${kelvins(200)} in ${stopsAbove200 === 0 ? 'none' : stopsAbove200} of all ${stops} brakings, hard or not`;
  return `At most ${kelvins(largestDifference_K)}, ${at(place, lap)}; ${harsh}.`;
}

/** "On counted laps 6.3 s above face peak, none above bulk, no braking below bite." */
function pastWords({ aboveFacePeak_s, aboveBulk_s, belowBite_s }: Damage, laps: LapSummary[]): string {
  const which = laps.some((lap) => lap.in !== null) ? 'On counted laps' : 'On all laps, for none counts,';
  if (aboveFacePeak_s + aboveBulk_s + belowBite_s < LEAST_S) return `${which} never.`;
  const bite = belowBite_s < LEAST_S ? 'no braking' : `${seconds(belowBite_s)} of braking`;
  return `${which} ${seconds(aboveFacePeak_s)} above face peak, ${seconds(aboveBulk_s)} above bulk, ${bite} below bite.`;
}

/** Less than this is nothing [s] */
const LEAST_S = 0.05;

function seconds(time_s: number): string {
  if (time_s < LEAST_S) return 'none';
  return time_s < 9.95 ? `${decimal(time_s, 1)}${NBSP}s` : minutes(time_s);
}

/** "12 % heavier at turn 7 on lap 10 than in the middle of the window, 525 °C; 2 % lighter at turn 1 on lap 5." */
function pedalWords(pedal: PedalRange | null): string {
  if (!pedal) return 'No hard stop counts, so nothing is said of the pedal.';
  const { middle_K, highest, place, lap, lowest, lowestPlace, lowestLap } = pedal;
  const middle = `in the middle of the window, ${limit(middle_K)}`;
  if (effort(highest) === 'as heavy' && effort(lowest) === 'as heavy')
    return `As ${middle}, in all hard stops.`;
  const most = effort(highest) === 'as heavy' ? 'As heavy' : effort(highest);
  const than = effort(highest) === 'as heavy' ? 'as' : 'than';
  return `${most} ${at(place, lap)} ${than} ${middle}; ${effort(lowest)} ${at(lowestPlace, lowestLap)}.`;
}

function effort(ratio: number): string {
  const share = Math.round(100 * (ratio - 1));
  return share === 0 ? 'as heavy' : `${percent(Math.abs(share))} ${share > 0 ? 'heavier' : 'lighter'}`;
}

/** "Caliper peaks at 105 °C, fluid at 105 °C after 40 min, 75 K below its wet boiling point: comfortable." */
function fluidWords(corner: CornerResult): string {
  const { caliperPeak_K, fluidPeak_K, fluidPeakAt_s, fluidMargin_K, fluidClassMargin_K, fluidCall } = corner;
  const peaks = `Caliper peaks at ${level(caliperPeak_K)}, fluid at ${level(fluidPeak_K)} after ${minutes(fluidPeakAt_s)}`;
  const differs = fluidClassMargin_K !== null && Math.abs(fluidClassMargin_K - fluidMargin_K) >= 0.5;
  const least = differs ? `, ${apart(fluidClassMargin_K)} the least of its class` : '';
  return `${peaks}, ${apart(fluidMargin_K)} its wet boiling point${least}${CALLS[fluidCall]}.`;
}

const CALLS: Record<FluidCall, string> = {
  comfortable: ': comfortable',
  nothing: '',
  act: ': act',
  'do not run': ': do not run',
};

const apart = (margin_K: number): string => `${kelvins(margin_K)} ${margin_K < 0 ? 'above' : 'below'}`;

const at = (place: string, lap: number): string =>
  `${place === '' ? '' : `at ${place.replace(/ (?=\S{1,4}$)/, NBSP)} `}on lap${NBSP}${lap}`;
