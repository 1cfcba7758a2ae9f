/** The three numbers of a forecast while they are typed: they may stand in no order until all are right. Pure. */
import type { Forecast } from '../../engine/scenario/event-schema.ts';
import { digitsOf, withUnit } from './format.ts';

export const ENDS = ['low', 'likely', 'high'] as const;
export type End = (typeof ENDS)[number];

/** What of them stands in the wrong order; empty where nothing does. "low 35 °C is above likely 26 °C" */
export function disorder(draft: Forecast, unit: string): string {
  const at = (end: End): string => `${end} ${typedWords(draft[end], unit)}`;
  const [lower, upper] = ENDS.flatMap((end, i): [End, End][] => {
    const next = ENDS[i + 1];
    return next && draft[end] > draft[next] ? [[end, next]] : [];
  })[0] ?? [null, null];
  return lower && upper ? `${at(lower)} is above ${at(upper)}` : '';
}

/** As it was typed: with a decimal where it has one. */
export const typedWords = (value: number, unit: string): string => withUnit(value, unit, digitsOf(value, 1));
