/** A note: where a printed number comes from. Its equation holds with the figures that it prints. */
import type {
  BlankingMap,
  CornerResult,
  Limit,
  SafeSpan,
  Scenario,
  Spread,
  StintResult,
  WindowLimits,
} from '../../../../engine/index.ts';
import { decimal, digitsOf, NBSP } from '../../../display/format.ts';
import { degrees, inUnit, unitFor, unitName } from '../../../display/units.ts';
import type { NumberKey } from '../../../display/whence.ts';

/** An equation in letters, and the same with today's values; a law that is followed moment by moment stands alone. */
export interface Line {
  equation: string;
  filled: string;
}

export interface Note {
  /** What the number is called. */
  name: string;
  /** As it is printed on the sheet; empty where that is not known here. */
  value: string;
  /** What it is, in a sentence. */
  what: string;
  lines: Line[];
  /** Whom the values come from. */
  source: string;
  /** The chapter of the notes on the model. */
  model: string;
  /** A number of the moment: the calculation by hand comes near it. */
  byHand?: NumberKey;
  /** A proposal: the share that can be fitted from here [percent] */
  fits_pct?: number;
}

interface Run {
  scenario: Scenario;
  result: StintResult;
}

/** What notes are made of; each but the run null while it is searched, or where there is none. */
export interface Told {
  run: Run;
  /** The pinned run that it is compared with. */
  pinned: Run | null;
  spans: readonly SafeSpan[] | null;
  spread: Spread | null;
  maps: readonly BlankingMap[] | null;
}

/** What a key names beyond the quantity: a corner and, of some quantities, more. */
export interface About {
  corner: CornerResult;
  more: readonly string[];
}

/** null where there is no such number. */
export type Maker = (about: About, told: Told) => Note | null;

interface Working {
  equation: string;
  /** What is put in, in the units shown. */
  values: readonly number[];
  /** The right side of the equation, written with those. */
  write: (texts: readonly string[]) => string;
  of: (values: readonly number[]) => number;
  unit?: string;
  /** What the printed figure is rounded to. */
  step?: number;
}

const MOST_DIGITS = 5;

/** With as many decimals, one at least where there are any, as it takes for what is printed to give what is shown. */
export function worked({ equation, values, write, of, unit = '', step = 1 }: Working): Line {
  const shown = Math.round(of(values) / step);
  const finest = Math.ceil(-Math.log10(step));
  for (let digits = 1; ; digits++) {
    const texts = values.map((value) => decimal(value, digitsOf(value, digits)));
    const found = of(values.map((value) => Number(value.toFixed(digits))));
    if (Math.round(found / step) === shown || digits === MOST_DIGITS) {
      const result = decimal(found, digitsOf(found, Math.max(digits, finest)));
      return { equation, filled: `${write(texts)} = ${result}${unit && `${NBSP}${unit}`}` };
    }
  }
}

/** What is left of one temperature above another, or of one difference. */
export const lessLine = (equation: string, from_K: number, less_K: number): Line =>
  worked({
    equation,
    values: [degrees(from_K), degrees(less_K)],
    write: ([from, less]) => `${from} − ${less}`,
    of: ([from = 0, less = 0]) => from - less,
    unit: unitName('K'),
  });

/** The same of two differences. */
export const partLine = (equation: string, from_K: number, less_K: number): Line =>
  worked({
    equation,
    values: [from_K, less_K].map((value) => inUnit(value, unitFor('K'))),
    write: ([from, less]) => `${from} − ${less}`,
    of: ([from = 0, less = 0]) => from - less,
    unit: unitName('K'),
  });

/** In brackets where it is below zero. */
export const bracketed = (text = ''): string => (text.startsWith('\u2212') ? `(${text})` : text);

/** The smaller of two margins; one that nothing meets is left out. */
export const smallerLine = (margins: { hotMargin_K: number; coldMargin_K: number }): Line =>
  worked({
    equation: 'min(from too hot, from too cold)',
    values: [margins.hotMargin_K, margins.coldMargin_K]
      .filter(Number.isFinite)
      .map((value) => inUnit(value, unitFor('K'))),
    write: (texts) => `min(${texts.join('; ')})`,
    of: (values) => Math.min(...values),
    unit: unitName('K'),
  });

/** From the limit, and the temperature that leaves this margin to it. */
export const marginLine = (limit: Limit, window: WindowLimits, margin_K: number): Line | null => {
  switch (limit) {
    case 'face peak':
      return lessLine('T face peak − T face', window.facePeak_K, window.facePeak_K - margin_K);
    case 'bulk':
      return lessLine('T bulk limit − T bulk', window.bulk_K, window.bulk_K - margin_K);
    case 'bite':
      return lessLine('T start − T bite', window.bite_K + margin_K, window.bite_K);
    default:
      return window.run_K === null ? null : lessLine('T mean − T run', window.run_K + margin_K, window.run_K);
  }
};

/** A count less others. */
export const countLine = (equation: string, counts: readonly number[]): Line =>
  worked({
    equation,
    values: counts,
    write: (texts) => texts.join(' − '),
    of: ([all = 0, ...less]) => less.reduce((rest, count) => rest - count, all),
  });

type Extreme = 'max' | 'min';

/** The largest or smallest of temperatures. */
export const extremeLine = (
  equation: string,
  which: Extreme,
  values_K: readonly number[],
  step: number,
): Line =>
  worked({
    equation,
    values: values_K.map(degrees),
    write: (texts) => `${which}(${texts.join('; ')})`,
    of: (values) => Math[which](...values),
    unit: unitName('°C'),
    step,
  });

export const SUPPLIER = 'the limit is the one entered as the supplier’s';
export const RUN = 'the temperatures are those of the run shown';
