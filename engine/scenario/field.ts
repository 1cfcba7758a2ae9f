/** The building blocks of the scenario's schema: every field carries its label, its one-line meaning and its range. */
import * as v from 'valibot';

/** What the page, the command and the documents need to know about one field. */
export interface FieldInfo {
  label: string;
  meaning: string;
  min?: number;
  max?: number;
  step?: number;
  /** Only whole numbers. */
  whole?: true;
}

type Range = readonly [min: number, max: number, step?: number];

/** A finite number within a range, both ends included; its unit is the suffix of its key. */
export const quantity = (label: string, range: Range, meaning: string) =>
  v.pipe(
    v.number(`${range[0]} to ${range[1]}`),
    v.minValue(range[0], `${range[0]} to ${range[1]}`),
    v.maxValue(range[1], `${range[0]} to ${range[1]}`),
    v.metadata({ ...info(label, meaning, range) }),
  );

/** A whole number within a range, both ends included. */
export const count = (label: string, range: Range, meaning: string) =>
  v.pipe(
    v.number(`a whole number, ${range[0]} to ${range[1]}`),
    v.integer(`a whole number, ${range[0]} to ${range[1]}`),
    v.minValue(range[0], `a whole number, ${range[0]} to ${range[1]}`),
    v.maxValue(range[1], `a whole number, ${range[0]} to ${range[1]}`),
    v.metadata({ ...info(label, meaning, range), whole: true }),
  );

export const flag = (label: string, meaning: string) =>
  v.pipe(v.boolean('true or false'), v.metadata({ label, meaning }));

export const choice = <const T extends readonly string[]>(label: string, options: T, meaning: string) =>
  v.pipe(v.picklist(options, options.join(' or ')), v.metadata({ label, meaning }));

export const text = (label: string, meaning: string) =>
  v.pipe(
    v.string('text'),
    v.maxLength(400, 'text of at most 400 characters'),
    v.metadata({ label, meaning }),
  );

function info(label: string, meaning: string, [min, max, step]: Range): FieldInfo {
  return step === undefined ? { label, meaning, min, max } : { label, meaning, min, max, step };
}

/** The unit that a key names, as printed after a number; empty for a pure number. */
export function unitOf(key: string): string {
  const last = key.split('.').at(-1) ?? '';
  const owner = key.startsWith('blanking_pct.') ? 'blanking_pct' : last;
  const found = UNITS.find(([suffix]) => owner.endsWith(suffix));
  return found ? found[1] : '';
}

const UNITS: readonly (readonly [suffix: string, printed: string])[] = [
  ['_kg_per_100km', 'kg/100 km'],
  ['_W_per_m2K', 'W/m²K'],
  ['_W_per_mK', 'W/mK'],
  ['_ml', 'ml'],
  ['_W_per_K', 'W/K'],
  ['_g_per_m3', 'g/m³'],
  ['_kmh', 'km/h'],
  ['_cm2', 'cm²'],
  ['_m2', 'm²'],
  ['_mm', 'mm'],
  ['_pct', '%'],
  ['_deg', '°'],
  ['_kW', 'kW'],
  ['_kg', 'kg'],
  ['_km', 'km'],
  ['_C', '°C'],
  ['_K', 'K'],
  ['_N', 'N'],
  ['_m', 'm'],
  ['_s', 's'],
];
