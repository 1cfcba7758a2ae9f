/** Units that a column may have by its role, what they are in SI, and how loggers spell them. */
import type { TraceRole } from '../circuit/understood.ts';
import {
  FOOT_M,
  GRAVITY_MPS2,
  KMH_PER_MPS,
  KNOT_MPS,
  MILE_M,
  PA_PER_BAR,
  PSI_PA,
  radians,
} from '../units.ts';

const HOUR_S = 3600;

interface Unit {
  /** One of it in SI. */
  size: number;
  spelled: readonly string[];
}

const unit = (size: number, ...spelled: string[]): Unit => ({ size, spelled });

const PRESSURES = {
  bar: unit(PA_PER_BAR, 'bars'),
  kPa: unit(1e3),
  MPa: unit(1e6),
  psi: unit(PSI_PA, 'psig', 'lbfin2'),
  mbar: unit(100, 'hpa'),
  Pa: unit(1, 'pascal'),
};

/** The first is assumed where none is stated and nothing speaks against it; a speed is never assumed. */
const UNITS: Record<TraceRole, Record<string, Unit>> = {
  time: {
    s: unit(
      1,
      'sec',
      'secs',
      'second',
      'seconds',
      'sek',
      'sekunden',
      'seg',
      'secondes',
      'segundos',
      'secondi',
    ),
    ms: unit(1e-3, 'msec', 'millisec', 'millis', 'millisecond', 'milliseconds'),
    µs: unit(1e-6, 'us', 'usec', 'micros', 'microsec', 'microsecond', 'microseconds'),
    min: unit(60, 'mins', 'minute', 'minutes', 'minuten'),
    h: unit(HOUR_S, 'hr', 'hour', 'hours'),
    d: unit(24 * HOUR_S, 'day', 'days'),
    ns: unit(1e-9, 'nsec', 'nanos', 'nanosec', 'nanosecond', 'nanoseconds'),
  },
  distance: {
    m: unit(1, 'metre', 'metres', 'meter', 'meters', 'mtr'),
    km: unit(1000, 'kilometre', 'kilometres', 'kilometer', 'kilometers', 'kms'),
    ft: unit(FOOT_M, 'feet', 'foot'),
    mi: unit(MILE_M, 'mile', 'miles'),
  },
  speed: {
    'km/h': unit(1 / KMH_PER_MPS, 'kmh', 'kph', 'kmph', 'kmhr', 'kmhour', 'kmh1'),
    mph: unit(MILE_M / HOUR_S, 'mih', 'mileh', 'milesh', 'mihr'),
    'm/s': unit(1, 'ms', 'mps', 'msec', 'ms1'),
    kn: unit(KNOT_MPS, 'kt', 'kts', 'knot', 'knots'),
    'ft/s': unit(FOOT_M, 'fts', 'fps'),
  },
  lap: { '': unit(1) },
  slope: {
    '%': unit(0.01, 'pct', 'percent', 'prozent'),
    '°': unit(radians(1), 'deg', 'degree', 'degrees', 'grad'),
    'm/m': unit(1, 'ratio', 'mm'),
    '‰': unit(1e-3, 'mmm', 'permil', 'permille', 'promille'),
    rad: unit(1, 'rads', 'radian', 'radians'),
    mrad: unit(1e-3, 'millirad', 'milliradians'),
  },
  altitude: {
    m: unit(1, 'metre', 'metres', 'meter', 'meters', 'masl'),
    ft: unit(FOOT_M, 'feet', 'foot'),
    km: unit(1000, 'kilometre', 'kilometres', 'kilometer', 'kilometers'),
    mm: unit(1e-3, 'millimetre', 'millimetres', 'millimeter', 'millimeters'),
  },
  acceleration: {
    g: unit(GRAVITY_MPS2, 'gs', 'gn', 'g0'),
    'm/s²': unit(1, 'ms2', 'mps2', 'msec2', 'mss', 'ms22'),
  },
  'front brake pressure': PRESSURES,
  'rear brake pressure': PRESSURES,
};

/** Letters and digits only: '(km/h)', 'km·h⁻¹' and 'KMH' are spelled alike. */
const spelling = (text: string): string =>
  text
    .normalize('NFKC')
    .replace(/μ/g, 'µ')
    .toLowerCase()
    .replace(/[^a-z0-9µ%‰°∞]/g, '');

export const unitsOf = (role: TraceRole): string[] => Object.keys(UNITS[role]).filter((name) => name !== '');

export const sizeOf = (role: TraceRole, name: string): number => UNITS[role][name]?.size ?? NaN;

/** The unit of a role that a text spells; nothing where it spells none. */
export function unitNamed(role: TraceRole, text: string): string | undefined {
  const wanted = spelling(text);
  if (wanted === '') return undefined;
  return Object.entries(UNITS[role]).find(
    ([name, { spelled }]) => spelling(name) === wanted || spelled.includes(wanted),
  )?.[0];
}

const ROLES = Object.keys(UNITS) as TraceRole[];

/** Other units that loggers write, so that a row of units is seen as one. */
const OTHERS = new Set(
  'rpm 1min umin c degc °c f °f k nm v mv a hz kw w % l lh kg kgs deg degs rads rad nomo raw bool none lat lon count'.split(
    ' ',
  ),
);

/** Whether a text is a unit of anything. */
export const isUnit = (text: string): boolean =>
  OTHERS.has(spelling(text)) || ROLES.some((role) => unitNamed(role, text) !== undefined);
