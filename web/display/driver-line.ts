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
export function driverLine(result: StintResult): string {
  const told = driverFacts(result);
  const restart = told.restart ? restartWords(told.restart, told.isOneOfMany) : '';
  const held = told.isHeldHot ? 'Do not hold the brake on a hot disc.' : '';
  const isBrief = restart !== '' || held !== '';
  const start = told.start ? startWords(told.start) : '';
  const soak = told.standing ? soakWords(told.standing, isBrief) : '';
  return [restart || start, soak, held].filter(Boolean).join(' ');
}

/** A fact and the corner that it is of. */
export interface At<T> {
  corner: CornerResult;
  it: T;
}

/** Whom and what the line speaks of. */
export interface DriverFacts {
  /** The coldest that the discs come back, and whether they do on several laps. */
  restart: At<Restart> | undefined;
  isOneOfMany: boolean;
  /** The slowest to warm from the start. */
  start: At<Restart> | undefined;
  /** The standing car that comes nearest to a caution. */
  standing: At<Soak> | undefined;
  isHeldHot: boolean;
}

export function driverFacts({ corners }: StintResult): DriverFacts {
  const cold = coldStarts(corners);
  const again = cold.filter(({ it }) => it.after !== 'start');
  const standings = corners.flatMap(standingsOf);
  return {
    restart: worstBy(again, ({ it }) => it.underBite_K),
    isOneOfMany: new Set(again.map(({ it }) => it.lap)).size > 1,
    start: worstBy(cold, ({ it }) => it.brakesToWarm ?? Infinity),
    standing: worstBy(
      standings.filter(({ it }) => matters(it)),
      ({ it }) => -Math.min(it.caliperMargin_K, it.fluidMargin_K),
    ),
    isHeldHot: standings.some(({ it }) => isHeldHot(it)),
  };
}

/** Each time the discs start under bite, all corners together. */
const coldStarts = (corners: CornerResult[]): At<Restart>[] =>
  corners.flatMap((corner) =>
    corner.restarts.filter(({ underBite_K }) => underBite_K > 0).map((it) => ({ corner, it })),
  );

/** "From cold the front takes 20 corners to warm." */
function startWords({ corner, it }: At<Restart>): string {
  const takes =
    it.brakesToWarm === null ? 'never gets warm' : `takes ${cornersWord(it.brakesToWarm)} to warm`;
  return `From cold the ${cornerName(corner)} ${takes}.`;
}

/** "Restart on lap 14: front starts its first hard stop, turn 1, at 160 °C, 240 K under bite; 28 corners to warm." */
function restartWords({ corner, it }: At<Restart>, isOneOfMany: boolean): string {
  const what = it.after === 'stop' ? 'Back from the stop' : 'Restart';
  const which = isOneOfMany ? `${what}, coldest on` : `${what} on`;
  const where = `${unbroken(it.firstStopPlace)}${it.firstStopLap === it.lap ? '' : ` on lap${NBSP}${it.firstStopLap}`}`;
  const start = `${cornerName(corner)} starts its first hard stop, ${where}, at ${level(it.firstStop_K)}`;
  return `${which} lap${NBSP}${it.lap}: ${start}, ${kelvins(it.underBite_K)} under bite; ${toWarm(it)}.`;
}

const toWarm = ({ brakesToWarm }: Restart): string =>
  brakesToWarm === null ? 'it stays cold' : `${cornersWord(brakesToWarm)} to warm`;

/** "five corners" */
export const cornersWord = (n: number): string => `${countWord(n)} ${n === 1 ? 'corner' : 'corners'}`;

const standingsOf = (corner: CornerResult): At<Soak>[] =>
  [...(corner.soak ? [corner.soak] : []), ...corner.stopSoaks].map((it) => ({ corner, it }));

const isHeldHot = ({ brakeHeld, discStart_K, standing_s }: Soak): boolean =>
  brakeHeld && standing_s >= HOLD_S && celsius(discStart_K) > HOT_DISC_C;

const matters = ({ caliper, fluid, caliperMargin_K, fluidMargin_K }: Soak): boolean =>
  Math.max(caliper.rise_K, fluid.rise_K) >= RISE_K ||
  caliperMargin_K < NEAR_CAUTION_K ||
  fluidMargin_K < COMFORTABLE_K;

/** "Parked, front caliper peaks at 100 °C in 5 min, fluid at 100 °C in 6 min." In brief, comfort is not spoken of. */
function soakWords(standing: At<Soak>, isBrief: boolean): string {
  const { corner, it: soak } = standing;
  const when = soak === corner.soak ? 'Parked,' : `Standing after lap${NBSP}${soak.lap},`;
  const caliper = riseWords(soak.caliper, soak);
  const fluid = riseWords(soak.fluid, soak);
  const verb = caliper.verb === fluid.verb ? '' : `${fluid.verb} `;
  const first = `${cornerName(corner)} caliper ${caliper.verb} ${caliper.rest}${caution(soak)}`;
  return `${when} ${first}, fluid ${verb}${fluid.rest}${boiling(standing, isBrief)}.`;
}

/** Whether it is at its peak as the car goes on. */
export const isStillRising = ({ peakAfter_s }: SoakRise, { standing_s }: Soak): boolean =>
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
function boiling({ corner, it: soak }: At<Soak>, isBrief: boolean): string {
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
