/** One moment of one corner as a list: what each part has, and all of it as a paragraph. */
import type { CornerColumns, CornerResult } from '../../engine/index.ts';
import type { AirPart } from './air-words.ts';
import { cornerName } from './corner.ts';
import { capital, kelvins, level, NBSP, withUnit } from './format.ts';
import { celsius } from './units.ts';

export type PartKey = keyof CornerColumns;

export interface Part {
  key: PartKey;
  name: string;
  temperature_K: number;
  value: string;
  isHot: boolean;
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
  const list = (rows: readonly { name: string; value: string; change?: string }[]): string =>
    rows
      .map(
        ({ name, value, change }) =>
          `${name}${NBSP}${value}${change ? ` (${change} than in clear air)` : ''}`,
      )
      .join(', ');
  return `${capital(cornerName(corner))}: ${list(parts)}.${air.length > 0 ? ` Air: ${list(air)}.` : ''}`;
}
