/** The air of a corner at one moment: what flows where, and what of it the car ahead takes. */
import type { AirColumns, CornerResult, PhaseSpan, StintResult } from '../../engine/index.ts';
import { decimal, NBSP, percent, withUnit } from './format.ts';
import { kmh } from './units.ts';

export type AirKey = 'duct' | 'vanes' | 'leak' | 'ram' | 'plenum';

export interface AirPart {
  key: AirKey;
  name: string;
  value: string;
  /** "14 % less" than in clear air; empty where that is the same. */
  change: string;
}

/** Each flow positive on its way through mouth, vanes and leak. */
export interface Air {
  duct_kgps: number;
  vane_kgps: number;
  leak_kgps: number;
  plenum_Pa: number;
  /** null without a duct */
  ram_Pa: number | null;
}

export interface AirNow extends Air {
  speed_mps: number;
  /** What there would be without the car ahead; null where there is none. */
  clear: Air | null;
}

export const phaseAt = ({ phases }: Pick<StintResult, 'phases'>, time_s: number): PhaseSpan | undefined =>
  phases.findLast(({ start_s }) => start_s <= time_s) ?? phases[0];

/** Whether there is a car ahead in any phase of the stint. */
export const isBehind = ({ phaseAir }: CornerResult): boolean =>
  phaseAir.some(({ traffic }) => traffic !== null);

/** Null where no run has told it. */
export function airAt(
  { phaseAir, pressures }: CornerResult,
  phase: Pick<PhaseSpan, 'index'> | undefined,
  speed_mps: number,
): AirNow | null {
  const told = phase && phaseAir[phase.index];
  if (!told) return null;
  const of = (columns: AirColumns): Air => ({
    ...readAt(columns, speed_mps),
    ...(pressures ? {} : { ram_Pa: null }),
  });
  return {
    ...of(told.traffic ?? told.clear),
    speed_mps,
    clear: told.traffic && of(told.clear),
  };
}

/** Flows as the run has them between two speeds; pressures by the square from the speed above. */
function readAt(columns: AirColumns, speed_mps: number): Air {
  const at = speed_mps / columns.speedStep_mps;
  const most = columns.ram_Pa.length - 1;
  const low = Math.min(Math.floor(at), most - 1);
  const above = Math.min(Math.max(1, Math.ceil(at)), most);
  const flow = (column: Float64Array): number => {
    const [from = 0, to = 0] = [column[low], column[low + 1]];
    return from + (at - low) * (to - from);
  };
  const pressure = (column: Float64Array): number => (column[above] ?? 0) * (at / above) ** 2;
  return {
    duct_kgps: flow(columns.duct_kgps),
    vane_kgps: flow(columns.vane_kgps),
    leak_kgps: flow(columns.leak_kgps),
    plenum_Pa: pressure(columns.plenum_Pa),
    ram_Pa: pressure(columns.ram_Pa),
  };
}

export const flowText = (flow_kgps: number): string => {
  const grams = Math.abs(flow_kgps) * 1000;
  return withUnit(grams, 'g/s', grams >= 0.05 && grams < 10 ? 1 : 0);
};

const pressureText = (pressure_Pa: number): string => withUnit(pressure_Pa, 'Pa');

/** "14 % less"; empty where a whole percent does not tell it, or where it goes the other way. */
export function changeFrom(clear: number | null | undefined, now: number | null): string {
  if (!clear || !now || clear * now < 0) return '';
  const less = Math.round(100 * (1 - now / clear));
  return less === 0 ? '' : `${decimal(Math.abs(less))}${NBSP}% ${less > 0 ? 'less' : 'more'}`;
}

/** The air's way as rows; what is not there has none. */
export function airParts(air: AirNow, kind: 'vented' | 'solid'): AirPart[] {
  const { ram_Pa, clear } = air;
  // nothing is led anywhere without a duct or vanes
  if (ram_Pa === null && kind === 'solid') return [];
  const row = (key: AirKey, name: string, of: keyof Air, text: (value: number) => string): AirPart => ({
    key,
    name,
    value: text(air[of] ?? 0),
    change: changeFrom(clear?.[of], air[of]),
  });
  return [
    ...(ram_Pa === null
      ? []
      : [
          row('ram', 'pressure of the air met', 'ram_Pa', pressureText),
          row('duct', 'mouth and hose', 'duct_kgps', flowText),
        ]),
    row('plenum', 'pressure behind the disc', 'plenum_Pa', pressureText),
    ...(kind === 'solid' ? [] : [row('vanes', 'vanes', 'vane_kgps', flowText)]),
    row('leak', air.leak_kgps < 0 ? 'leak, drawn in' : 'leak, lost', 'leak_kgps', flowText),
  ];
}

/** Where the flows hold, and beside the car ahead both figures of what comes in. */
export function airNote(air: AirNow, phase: Pick<PhaseSpan, 'gap'> | undefined): string {
  if (air.speed_mps < 0.1)
    return 'The car stands: nothing drives air through. What rises by itself is not told here.';
  const at = `Air of this corner at ${withUnit(kmh(air.speed_mps), 'km/h')}`;
  const { clear } = air;
  if (!clear) return `${at}, in clear air.`;
  const [key, way] =
    air.ram_Pa === null ? (['vane_kgps', 'the vanes'] as const) : (['duct_kgps', 'mouth and hose'] as const);
  const change = changeFrom(clear[key], air[key]);
  const { share = 1 } = phase?.gap ?? {};
  const mean = share < 1 ? `, the mean of ${percent(100 * share)} of the lap behind it` : '';
  if (change === '') return `${at}, as in clear air: the car ahead takes nothing of it here.`;
  return `${at} behind the car ahead${mean}: ${flowText(air[key])} through ${way}, ${change} than in clear air (${flowText(clear[key])}).`;
}
