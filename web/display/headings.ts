/** Take-away titles of the charts and words for the table, from the same numbers as the sentence. */
import type { CornerResult, Lap, LapKind, LapSummary, Scenario, StintResult } from '../../engine/index.ts';
import { excessWords } from './allowed-words.ts';
import { cornerName } from './corner.ts';
import { capital, countWord, decimal, kelvins, level, limit, NBSP, numberIn, withUnit } from './format.ts';
import { celsius, kmh } from './units.ts';

export function stintTitle(corner: CornerResult): string {
  const { verdict, window, laps } = corner;
  const name = capital(cornerName(corner));
  const counted = laps.filter((lap) => lap.in !== null).length;
  const out = laps.filter((lap) => lap.in === false).length;
  const hotLaps = laps.filter((lap) => lap.in === false && lap.tooHot).length;
  const coldLaps = laps.filter((lap) => lap.in === false && lap.tooCold).length;
  const onLaps = `on ${countedLaps(out, counted)}`;
  switch (verdict.status) {
    case 'hot':
      return verdict.hotLimit === 'bulk'
        ? `${name} bulk passes its ${limit(window.bulk_K)} limit ${onLaps}`
        : `${name} face passes its ${limit(window.facePeak_K)} limit ${onLaps}`;
    case 'cold':
      return verdict.coldLimit === 'run'
        ? `${name} runs below its lap mean ${onLaps}`
        : `${name} starts hard stops below its ${limit(window.bite_K)} bite ${onLaps}`;
    case 'both':
      return counted === 1
        ? `${name} is too hot and too cold on its one counted lap`
        : `${name} is too hot on ${countWord(hotLaps)} and too cold on ${countWord(coldLaps)} of ${countWord(counted)} counted laps`;
    case 'in':
      return `${name} stays between ${limit(window.bite_K)} and ${limit(window.facePeak_K)} on ${counted === 1 ? 'its one counted lap' : 'all counted laps'}`;
    case 'not judged':
      return `${name} face over the stint, not judged`;
  }
}

function countedLaps(out: number, counted: number): string {
  if (counted === 1) return 'its one counted lap';
  return `${out === counted ? `all ${countWord(out)}` : `${countWord(out)} of ${countWord(counted)}`} counted laps`;
}

export function lapTitle(corner: CornerResult, lap: number): string {
  const summary = corner.laps.find((each) => each.lap === lap);
  if (!summary) return `Lap${NBSP}${lap}`;
  const stops =
    summary.coldestStop_K === null
      ? 'no hard stop'
      : `its coldest hard stop starts at ${level(summary.coldestStop_K)}`;
  return `Lap${NBSP}${lap}, ${kindWord(summary.kind)}: ${cornerName(corner)} face up to ${level(summary.faceMax_K)}${atPlace(summary)}, ${stops}`;
}

const atPlace = ({ facePeakPlace }: LapSummary): string => (facePeakPlace ? ` at ${facePeakPlace}` : '');

const KINDS: Record<LapKind, string> = { out: 'out-lap', push: 'push', safety: 'safety car', in: 'in-lap' };
export const kindWord = (kind: LapKind): string => KINDS[kind];

/** What stands over the moment: "Lap 10, turn 7" in a stop, "Lap 10", or that the car stands. */
export function momentTitle({ stops }: CornerResult, lap: Lap, time_s: number): string {
  if (time_s > lap.end_s) return `Standing after lap${NBSP}${lap.lap}`;
  const stop = stops.find((each) => each.start_s <= time_s && time_s <= each.end_s + AFTER_STOP_S);
  return `Lap${NBSP}${lap.lap}${stop ? `, ${stop.place}` : ''}`;
}

/** A moment this soon after a stop still belongs to it. */
const AFTER_STOP_S = 1;

/** "0:48.5 after the line, 212 km/h" */
export function momentWords({ clock }: StintResult, lap: Lap, sample: number, sinceLine: string): string {
  const speed = withUnit(kmh(clock.speed_mps[sample] ?? 0), 'km/h');
  return `${sinceLine} after the line, ${(clock.time_s[sample] ?? 0) < lap.end_s ? speed : 'standing'}`;
}

/** "dry, wet from lap 12, 26 °C, 210 m, clear air" */
export function conditionsLine({ conditions, traffic }: Scenario, laps: readonly Lap[]): string {
  const gap =
    typeof traffic.gap_m === 'number'
      ? `${withUnit(traffic.gap_m, 'm')} behind`
      : typeof traffic.gap_s === 'number'
        ? `${decimal(traffic.gap_s, 1)}${NBSP}s behind`
        : 'clear air';
  const turned = laps.find((lap) => lap.wet !== conditions.wet);
  const cooled = laps.find((lap) => Math.abs(celsius(lap.ambient_K) - conditions.ambient_C) > 0.01);
  const track = `${conditions.wet ? 'wet' : 'dry'}${turned ? `, ${turned.wet ? 'wet' : 'dry'} from lap${NBSP}${turned.lap}` : ''}`;
  const later = cooled ? `, ${withUnit(celsius(cooled.ambient_K), '°C')} from lap${NBSP}${cooled.lap}` : '';
  return `${track}, ${withUnit(conditions.ambient_C, '°C')}${later}, ${withUnit(conditions.altitude_m, 'm')}, ${gap}`;
}

/** "110 × 100 mm" */
export const mouthSize = (width_mm: number, height_mm: number): string =>
  `${numberIn(width_mm, 'mm')} × ${withUnit(height_mm, 'mm', height_mm % 1 === 0 ? 0 : 1)}`;

/** What a blanking means, for a screen reader. */
export function blankingValueText(
  blanking_pct: number,
  corner: CornerResult | undefined,
  fitted = '',
): string {
  const open = `${decimal(100 - blanking_pct)} percent open`;
  const share = [`${decimal(blanking_pct)} percent blanked`, fitted, open].filter(Boolean).join(', ');
  const laps = corner?.laps.filter((lap) => lap.in !== null) ?? [];
  if (!corner || laps.length === 0) return share;
  const low = Math.min(...laps.map((lap) => lap.faceMin_K));
  const high = Math.max(...laps.map((lap) => lap.faceMax_K));
  const verdict = {
    in: 'inside the window',
    hot: 'too hot',
    cold: 'too cold',
    both: 'too hot and too cold',
    'not judged': 'not judged',
  };
  return `${share}; ${cornerName(corner)} ${level(low)} to ${level(high)}, ${verdict[corner.verdict.status]}`;
}

/** A lap may pass a limit briefly and still be in. */
const inside = (verdict: CornerResult['verdict']): string => {
  const margin_K = Math.min(verdict.hotMargin_K, verdict.coldMargin_K);
  return margin_K < 0
    ? `inside, briefly ${excessWords(verdict, 'peak')}`
    : `inside, ${kelvins(margin_K)} to spare`;
};

/** The line under a row of lap cells' name: "12 to 32 K over, swing 225 K". */
export function marginWords({ verdict }: CornerResult): string {
  const swing = verdict.swing_K === null ? '' : `, swing ${kelvins(verdict.swing_K)}`;
  switch (verdict.status) {
    case 'hot':
      return `${kelvins(verdict.hotMargin_K)} too hot${swing}`;
    case 'cold':
      return `${kelvins(verdict.coldMargin_K)} too cold${swing}`;
    case 'both':
      return `${kelvins(verdict.hotMargin_K)} too hot, ${kelvins(verdict.coldMargin_K)} too cold${swing}`;
    case 'in':
      return `${inside(verdict)}${swing}`;
    case 'not judged':
      return 'not judged';
  }
}
