/** One step of a calculation by hand: what it finds, by which equation, from which numbers, on whose word. */

/** What kind of number it is, so that a reader's units and digits can be chosen where it is shown; SI and kelvin here. */
export type HandKind =
  | 'speed'
  | 'temperature'
  | 'difference'
  | 'energy'
  | 'power'
  | 'flux'
  | 'pressure'
  | 'flow'
  | 'conductance'
  | 'coefficient'
  | 'conductivity'
  | 'viscosity'
  | 'effusivity'
  | 'diffusivity'
  | 'heat capacity'
  | 'area'
  | 'mass'
  | 'density'
  | 'time'
  | 'length'
  | 'share'
  | 'radiation constant'
  | 'number';

export interface HandValue {
  symbol: string;
  kind: HandKind;
  value: number;
  /** What the symbol stands for, where it is first used. */
  name?: string;
}

export interface HandLine {
  what: string;
  equation: string;
  given: HandValue[];
  found: HandValue;
  /** What the model has for it, where the line only comes near it. */
  model: HandValue | null;
  source: string;
  /** Folder of the validation case that checks the equation, or null. */
  check: string | null;
}

export interface HandPart {
  title: string;
  lines: HandLine[];
}

/** A value with its symbol, and what that stands for. */
export const of = (symbol: string, kind: HandKind, value: number, name?: string): HandValue =>
  name === undefined ? { symbol, kind, value } : { symbol, kind, value, name };
