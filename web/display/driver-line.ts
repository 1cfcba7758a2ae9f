/** The third line of the sentence, for the driver and the garage: how cold the restart is, and what soaks after parking. */
import type { CornerResult, Restart, Soak, SoakRise, StintResult } from '../../engine/index.ts';
import { cornerName } from './corner.ts';
import { countWord, kelvins, level, minutes, NBSP } from './format.ts';
import { celsius } from './units.ts';

/** A soak that rises less than this and stays clear of the limits needs no words. Common practice, no source [K] */
const RISE_K = 10;
/** Nearer to its caution than this, a caliper is worth a word. Common practice, no source [K] */
const NEAR_CAUTION_K = 20;
/** Fluid below its wet boiling point: comfortable, act, do not run. Common practice, no source [K] */
const [AMPLE_K, COMFORTABLE_K, ACT_K, STOP_K] = [90, 60, 40, 20];
/** A disc hotter than this must not be held while the car stands. Common practice, no source [°C] */
const HOT_DISC_C = 300;
/** A brake held for less than this is only setting off. Common practice, no source [s] */
const HOLD_S = 10;

/** What matters of it, in words; empty where nothing does. The corner that is worse off speaks, named. */
export function driverLine({ corners }: StintResult): string {
  const restart = restartWords(corners);
  const standings = corners.flatMap(standingsOf);
  const held = standings.some(({ soak }) => isHeldHot(soak)) ? 'Do not hold the brake on a hot disc.' : '';
  const isBrief = restart !== '' || held !== '';
  return [restart || startWords(corners), soakWords(standings, isBrief), held].filter(Boolean).join(' ');
}

interface At<T> {
  corner: CornerResult;
  it: T;
}

/** Each time the discs start under bite, all corners together. */
const coldStarts = (corners: CornerResult[]): At<Restart>[] =>
  corners.flatMap((corner) =>
    corner.restarts.filter(({ underBite_K }) => underBite_K > 0).map((it) => ({ corner, it })),
  );

function restartWords(corners: CornerResult[]): string {
  const again = coldStarts(corners).filter(({ it }) => it.after !== 'start');
  const worst = worstBy(again, ({ it }) => it.underBite_K);
  return worst ? restart(worst, new Set(again.map(({ it }) => it.lap)).size > 1) : '';
}

/** "From cold the front takes 20 corners to warm." */
function startWords(corners: CornerResult[]): string {
  const worst = worstBy(coldStarts(corners), ({ it }) => it.brakesToWarm ?? Infinity);
  if (!worst) return '';
  const { corner, it } = worst;
  const takes =
    it.brakesToWarm === null ? 'never gets warm' : `takes ${cornersWord(it.brakesToWarm)} to warm`;
  return `From cold the ${cornerName(corner)} ${takes}.`;
}

/** "Restart on lap 14: front starts its first hard stop, turn 1, at 160 °C, 240 K under bite; 28 corners to warm." */
function restart({ corner, it }: At<Restart>, isOneOfMany: boolean): string {
  const what = it.after === 'stop' ? 'Back from the stop' : 'Restart';
  const which = isOneOfMany ? `${what}, coldest on` : `${what} on`;
  const where = `${unbroken(it.firstStopPlace)}${it.firstStopLap === it.lap ? '' : ` on lap${NBSP}${it.firstStopLap}`}`;
  const start = `${cornerName(corner)} starts its first hard stop, ${where}, at ${level(it.firstStop_K)}`;
  return `${which} lap${NBSP}${it.lap}: ${start}, ${kelvins(it.underBite_K)} under bite; ${toWarm(it)}.`;
}

const toWarm = ({ brakesToWarm }: Restart): string =>
  brakesToWarm === null ? 'it stays cold' : `${cornersWord(brakesToWarm)} to warm`;

const cornersWord = (n: number): string => `${countWord(n)} ${n === 1 ? 'corner' : 'corners'}`;

interface Standing {
  corner: CornerResult;
  soak: Soak;
}

const standingsOf = (corner: CornerResult): Standing[] =>
  [...(corner.soak ? [corner.soak] : []), ...corner.stopSoaks].map((soak) => ({ corner, soak }));

const isHeldHot = ({ brakeHeld, discStart_K, standing_s }: Soak): boolean =>
  brakeHeld && standing_s >= HOLD_S && celsius(discStart_K) > HOT_DISC_C;

const matters = ({ caliper, fluid, caliperMargin_K, fluidMargin_K }: Soak): boolean =>
  Math.max(caliper.rise_K, fluid.rise_K) >= RISE_K ||
  caliperMargin_K < NEAR_CAUTION_K ||
  fluidMargin_K < COMFORTABLE_K;

/** "Parked, front caliper peaks at 100 °C in 5 min, fluid at 100 °C in 6 min." In brief, comfort is not spoken of. */
function soakWords(standings: Standing[], isBrief: boolean): string {
  const worth = standings.filter(({ soak }) => matters(soak));
  const worst = worstBy(worth, ({ soak }) => -Math.min(soak.caliperMargin_K, soak.fluidMargin_K));
  if (!worst) return '';
  const { corner, soak } = worst;
  const when = soak === corner.soak ? 'Parked,' : `Standing after lap${NBSP}${soak.lap},`;
  const caliper = riseWords(soak.caliper, soak);
  const fluid = riseWords(soak.fluid, soak);
  const verb = caliper.verb === fluid.verb ? '' : `${fluid.verb} `;
  const first = `${cornerName(corner)} caliper ${caliper.verb} ${caliper.rest}${caution(soak)}`;
  return `${when} ${first}, fluid ${verb}${fluid.rest}${boiling(worst, isBrief)}.`;
}

const isStillRising = ({ peakAfter_s }: SoakRise, { standing_s }: Soak): boolean =>
  peakAfter_s >= standing_s - 1;

function riseWords(rise: SoakRise, soak: Soak): { verb: string; rest: string } {
  const { start_K, peak_K, rise_K, peakAfter_s } = rise;
  if (rise_K < 0.5) return { verb: 'cools', rest: `from ${level(start_K)}` };
  if (isStillRising(rise, soak))
    return { verb: 'still rises', rest: `past ${level(peak_K)} after ${minutes(soak.standing_s)}` };
  return { verb: 'peaks', rest: `at ${level(peak_K)} in ${minutes(peakAfter_s)}` };
}

const caution = ({ caliperMargin_K }: Soak): string =>
  caliperMargin_K < 0
    ? ` (${kelvins(caliperMargin_K)} above its caution)`
    : caliperMargin_K < NEAR_CAUTION_K
      ? ` (${kelvins(caliperMargin_K)} from its caution)`
      : '';

/** How far the fluid stays from its wet boiling point, and what that asks for. */
function boiling({ corner, soak }: Standing, isBrief: boolean): string {
  const { fluidMargin_K } = soak;
  if (fluidMargin_K < 0) return `, ${kelvins(fluidMargin_K)} above wet boiling: do not run`;
  const from = `, ${kelvins(fluidMargin_K)} from wet boiling`;
  if (fluidMargin_K < STOP_K) return `${from}: do not run`;
  if (fluidMargin_K < ACT_K) return `${from}: act`;
  if (fluidMargin_K < COMFORTABLE_K) return from;
  // a fluid that was hotter on the way, or is not yet at its peak, is no comfort
  const isPeak = corner.fluidPeak_K <= soak.fluid.peak_K && !isStillRising(soak.fluid, soak);
  return fluidMargin_K <= AMPLE_K && isPeak && !isBrief ? `${from}, comfortable` : '';
}

function worstBy<T>(all: T[], badness: (one: T) => number): T | undefined {
  return all.reduce<T | undefined>(
    (worst, one) => (worst && badness(worst) >= badness(one) ? worst : one),
    undefined,
  );
}

const unbroken = (place: string): string => place.replace(/ (?=\S{1,4}$)/, NBSP);
