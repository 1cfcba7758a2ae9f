/** One moment of one corner as a list: what each part has, what the air brings, and what of that is only nearly so. */
import type { AirRow, CornerColumns, CornerResult, Scenario, StintResult } from '../../engine/index.ts';
import { blankingOf, cornerName } from './corner.ts';
import { capital, kelvins, level, NBSP, percent, withUnit } from './format.ts';
import { celsius, kmh } from './units.ts';

export type PartKey = keyof CornerColumns;
export type AirKey = 'duct' | 'vanes' | 'leak' | 'ram' | 'plenum';

export interface Part {
  key: PartKey;
  name: string;
  temperature_K: number;
  value: string;
  isHot: boolean;
}

export interface AirPart {
  key: AirKey;
  name: string;
  value: string;
}

/** The air of a corner at one speed; each flow positive on its way through mouth, vanes and leak. */
export interface AirNow {
  speed_mps: number;
  duct_kgps: number;
  vane_kgps: number;
  leak_kgps: number;
  plenum_Pa: number;
  /** null without a duct */
  ram_Pa: number | null;
}

const names = (kind: 'vented' | 'solid'): [PartKey, string][] => [
  ['face_K', 'face'],
  ['cheek_K', 'core'],
  ['wall_K', kind === 'vented' ? 'vane wall' : 'mid-plane'],
  ['rim_K', 'rim'],
  ['bell_K', 'bell'],
  ['pad_K', 'pad'],
  ['caliper_K', 'caliper'],
  ['fluid_K', 'fluid'],
  ['wheelhouse_K', 'wheelhouse air'],
];

/** What each part has at a sample, from the rubbed face outward; empty where no columns were kept. */
export function partsAt({ columns, window }: CornerResult, sample: number, kind: 'vented' | 'solid'): Part[] {
  if (!columns) return [];
  return names(kind).map(([key, name]) => {
    const temperature_K = columns[key][sample] ?? 0;
    const isHot =
      (key === 'face_K' && temperature_K > window.facePeak_K) ||
      (key === 'cheek_K' && temperature_K > window.bulk_K);
    const value = key === 'wheelhouse_K' ? withUnit(celsius(temperature_K), '°C') : level(temperature_K);
    return { key, name, temperature_K, value, isHot };
  });
}

/** Flows grow with the speed and pressures with its square, so that between two rows nothing is guessed; beyond the last as well. */
export function airAt({ air, pressures }: CornerResult, speed_mps: number): AirNow | null {
  const after = air.find((row) => row.speed_mps > 0 && row.speed_mps >= speed_mps) ?? air.at(-1);
  if (!after || after.speed_mps === 0) return null;
  const share = speed_mps / after.speed_mps;
  const of = (key: keyof AirRow): number => share * after[key];
  return {
    speed_mps,
    duct_kgps: of('ductFlow_kgps'),
    vane_kgps: of('vaneFlow_kgps'),
    leak_kgps: of('leakFlow_kgps'),
    plenum_Pa: share * of('plenum_Pa'),
    ram_Pa: pressures ? pressures.ram_Pa * (speed_mps / pressures.speed_mps) ** 2 : null,
  };
}

export const flowText = (flow_kgps: number): string => {
  const grams = Math.abs(flow_kgps) * 1000;
  return withUnit(grams, 'g/s', grams >= 0.05 && grams < 10 ? 1 : 0);
};

const pressureText = (pressure_Pa: number): string => withUnit(pressure_Pa, 'Pa');

/** The air's way as rows; what is not there has none. */
export function airParts(air: AirNow, kind: 'vented' | 'solid'): AirPart[] {
  // nothing is led anywhere without a duct or vanes
  if (air.ram_Pa === null && kind === 'solid') return [];
  const rows: (AirPart | null)[] = [
    air.ram_Pa === null
      ? null
      : { key: 'ram', name: 'pressure of the air met', value: pressureText(air.ram_Pa) },
    air.ram_Pa === null ? null : { key: 'duct', name: 'mouth and hose', value: flowText(air.duct_kgps) },
    { key: 'plenum', name: 'pressure behind the disc', value: pressureText(air.plenum_Pa) },
    kind === 'solid' ? null : { key: 'vanes', name: 'vanes', value: flowText(air.vane_kgps) },
    {
      key: 'leak',
      name: air.leak_kgps < 0 ? 'leak, drawn in' : 'leak, lost',
      value: flowText(air.leak_kgps),
    },
  ];
  return rows.filter((row) => row !== null);
}

interface AirMoment {
  result: StintResult;
  scenario: Scenario;
  corner: CornerResult;
  air: AirNow;
  time_s: number;
}

/** Where the flows hold, and what they leave out at this moment. */
export function airNote({ result, scenario, corner, air, time_s }: AirMoment): string {
  if (air.speed_mps < 0.1)
    return 'The car stands: nothing drives air through. What rises by itself is not told here.';
  const phase = result.phases.findLast((each) => each.start_s <= time_s);
  const [started, now] = [
    blankingOf(scenario, corner),
    phase ? blankingOf({ ...scenario, blanking_pct: phase.blanking_pct }, corner) : null,
  ];
  const parts = [`Air of this corner at ${withUnit(kmh(air.speed_mps), 'km/h')}, in clear air.`];
  if (phase?.gap && phase.gap.share > 0) parts.push('Behind the car ahead less comes in.');
  if (started !== null && now !== null && Math.abs(started - now) > 0.05)
    parts.push(`It is that of ${percent(started)} blanked, as the stint starts; now it is ${percent(now)}.`);
  return parts.join(' ');
}

/** "Lap 9, turn 7: front face 667 °C, 17 K over its limit" */
export function momentTakeaway(title: string, corner: CornerResult, sample: number): string {
  const face_K = corner.columns?.face_K[sample];
  if (face_K === undefined) return title;
  const { bite_K, facePeak_K } = corner.window;
  const verdict =
    face_K > facePeak_K
      ? `${kelvins(face_K - facePeak_K)} over its limit`
      : face_K < bite_K
        ? `${kelvins(bite_K - face_K)} below bite`
        : `${kelvins(facePeak_K - face_K)} under its limit`;
  return `${title}: ${cornerName(corner)} face ${level(face_K)}, ${verdict}`;
}

/** All of it as one paragraph. */
export function momentSummary(corner: CornerResult, parts: readonly Part[], air: readonly AirPart[]): string {
  const list = (rows: readonly { name: string; value: string }[]): string =>
    rows.map(({ name, value }) => `${name}${NBSP}${value}`).join(', ');
  return `${capital(cornerName(corner))}: ${list(parts)}.${air.length > 0 ? ` Air: ${list(air)}.` : ''}`;
}
