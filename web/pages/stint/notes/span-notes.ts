/** Notes on the safe span, on what is proposed, and on what would help where nothing holds. */
import type { CornerResult, NoSpan, SafeSpan, Spare, SpanBound } from '../../../../engine/index.ts';
import { staysIn } from '../../../display/doubt-words.ts';
import { decimal, kelvins, NBSP, percent } from '../../../display/format.ts';
import { fittedName, remedyWords, spanOf, spanRange } from '../../../display/span-words.ts';
import { inUnit, unitFor, unitName } from '../../../display/units.ts';
import {
  bracketed,
  lessLine,
  marginLine,
  partLine,
  smallerLine,
  worked,
  type About,
  type Line,
  type Maker,
  type Note,
  type Told,
} from './note.ts';

const SEARCH =
  'whole runs of this stint at other blankings, by halving; nothing between two of them is guessed';
const MODEL = 'The window';

const found = ({ corner }: About, { spans }: Told): SafeSpan | undefined => spanOf(spans ?? [], corner);
/** Of the counted laps before a phase changes the blanking, where that is what is spoken of. */
const reachOf = (about: About, told: Told) => {
  const span = found(about, told);
  return span && !span.isIdle ? (span.before?.span_pct ? span.before : span) : undefined;
};

const LIMITS = {
  bite: 'bite',
  run: 'the lowest mean of a lap',
  'face peak': 'the face peak',
  bulk: 'the bulk',
};
const boundWords = (bound: SpanBound | null, side: string): string =>
  bound
    ? ` ${side} it fails by ${LIMITS[bound.limit]}${bound.place && ` at ${bound.place}`}, lap${NBSP}${bound.lap}.`
    : '';

/** Rounded inwards, so that what is printed is safe; as it is where less than a percent is between the ends. */
function endLine(end: 'low' | 'high', value: number, isWhole: boolean): Line {
  const digits = isWhole ? 2 : 3;
  const text = decimal(value, digits);
  const number = Number(value.toFixed(digits));
  const rounded = end === 'low' ? Math.ceil(number - 1e-9) : Math.floor(number + 1e-9);
  return isWhole
    ? {
        equation: end === 'low' ? 'least closed, rounded up' : 'most closed, rounded down',
        filled: `${end === 'low' ? 'up' : 'down'}(${text}) = ${decimal(rounded)}${NBSP}%`,
      }
    : {
        equation: `${end === 'low' ? 'least' : 'most'} closed`,
        filled: `${text} = ${decimal(value, 1)}${NBSP}%`,
      };
}

function rangeNote(
  about: About,
  told: Told,
  valueOf: (span_pct: readonly [number, number]) => string,
): Note | null {
  const reach = reachOf(about, told);
  if (!reach?.span_pct) return null;
  const [low, high] = reach.span_pct;
  const isWhole = Math.ceil(low - 1e-9) <= Math.floor(high + 1e-9);
  const ends: Line[] = [endLine('low', low, isWhole), endLine('high', high, isWhole)];
  return {
    name: 'safe span',
    value: valueOf(reach.span_pct),
    what: `Every blanking in it keeps all laps that count inside the window.${boundWords(reach.low, 'Below')}${boundWords(reach.high, 'Above')}`,
    lines: ends,
    source: SEARCH,
    model: MODEL,
  };
}

const span: Maker = (about, told) => rangeNote(about, told, spanRange);
/** In the clause of the other axle, which starts at fully open. */
const reach: Maker = (about, told) =>
  rangeNote(about, told, (span_pct) =>
    span_pct[0] > 0 ? spanRange(span_pct) : percent(Math.floor(span_pct[1])),
  );

const fit: Maker = (about, told) => {
  const reach = reachOf(about, told);
  if (!reach?.span_pct || !reach.proposal) return null;
  const [low, high] = reach.span_pct.map((end) => decimal(end, 1)) as [string, string];
  const { blanking_pct, panel } = reach.proposal;
  return {
    name: 'what to fit',
    value: fittedName(reach.proposal),
    fits_pct: blanking_pct,
    what: chosenFrom(reach),
    lines: [
      {
        equation: 'least closed ≤ B ≤ most closed',
        filled: `${low} ≤ ${decimal(blanking_pct, 1)} ≤ ${high}${NBSP}%`,
      },
    ],
    source: panel === null ? SEARCH : `the panel is one of the set entered; ${SEARCH}`,
    model: MODEL,
  };
};

/** Why it and no other: the rule of `fittest`. */
function chosenFrom({ candidates, proposal }: Pick<SafeSpan, 'candidates' | 'proposal'>): string {
  const start = 'Of what can be fitted inside the safe span, the one';
  if (!proposal?.count) return `${start} with most to spare towards the limit that is nearer.`;
  const { runs, of } = staysIn({ count: proposal.count });
  const most = Math.max(...candidates.map(({ count }) => count?.in ?? 0));
  const beaten = most > runs ? ` Another keeps ${most} in, by no more than chance gives.` : '';
  return `${start} that most of the same ${of} runs keep in; of those that are equal but for chance, the one with most to spare.${beaten}`;
}

const spare: Maker = (about, told) => {
  const reach = reachOf(about, told);
  if (!reach?.span_pct || !reach.proposal) return null;
  const { proposal } = reach;
  const least_K = Math.min(proposal.hotMargin_K, proposal.coldMargin_K);
  return {
    name: 'its margin',
    value: kelvins(least_K),
    what: `With ${percent(proposal.blanking_pct)} blanked: the smaller of the two margins over the laps that count.`,
    lines: [smallerLine(proposal)],
    source: 'a whole run of this stint at that blanking',
    model: MODEL,
  };
};

/** Where no blanking holds. */
const without =
  (make: (none: NoSpan, best: Spare, corner: CornerResult) => Note | null): Maker =>
  (about, told) => {
    const span = found(about, told);
    return span?.none && span.best ? make(span.none, span.best, about.corner) : null;
  };

const missed = (way: 'hot' | 'cold') =>
  without((none, best, { window }) => {
    const margin_K = way === 'hot' ? best.hotMargin_K : best.coldMargin_K;
    return {
      name: `too ${way} at the least bad blanking`,
      value: kelvins(margin_K),
      what: `What ${percent(best.blanking_pct)} blanked, where the smaller margin is largest, leaves to the limit; below zero it is past it.`,
      lines: [
        marginLine(way === 'hot' ? none.hotLimit : none.coldLimit, window, margin_K) ?? smallerLine(best),
      ],
      source: 'a whole run of this stint at that blanking',
      model: MODEL,
    };
  });

const leastBad = without((_none, best) => ({
  name: 'least bad blanking',
  value: percent(best.blanking_pct),
  what: 'No blanking keeps every lap that counts inside; at this one the smaller margin is largest.',
  lines: [smallerLine(best)],
  source: SEARCH,
  model: MODEL,
}));

const noneSwing = without(({ swing_K, width_K }, best) =>
  swing_K === null
    ? null
    : {
        name: 'swing at the least bad blanking',
        value: kelvins(swing_K),
        what: `From the coldest start of a hard stop to the hottest face with ${percent(best.blanking_pct)} blanked: the window’s width less both margins.`,
        lines: [
          worked({
            equation: 'width − from too hot − from too cold',
            values: [width_K, best.hotMargin_K, best.coldMargin_K].map((value) =>
              inUnit(value, unitFor('K')),
            ),
            write: ([all, ...rest]) => `${all}${rest.map((text) => ` − ${bracketed(text)}`).join('')}`,
            of: ([all = 0, hot = 0, cold = 0]) => all - hot - cold,
            unit: unitName('K'),
          }),
        ],
        source: 'a whole run of this stint at that blanking',
        model: MODEL,
      },
);

const noneWidth = without((_none, _best, { window }) => ({
  name: 'width of the window',
  value: kelvins(window.facePeak_K - window.bite_K),
  what: 'From bite to face peak: no swing wider than this fits.',
  lines: [lessLine('T face peak − T bite', window.facePeak_K, window.bite_K)],
  source: 'the limits are those entered as the supplier’s',
  model: MODEL,
}));

const gain = without(({ remedies }, best) => {
  const [first] = remedies;
  if (!first) return null;
  const least_K = Math.min(best.hotMargin_K, best.coldMargin_K);
  return {
    name: 'what would be gained',
    value: kelvins(first.gain_K),
    what: `What ${remedyWords(first)} adds to the smaller margin, each at its own best blanking.`,
    lines: [partLine('margin with − margin without', least_K + first.gain_K, least_K)],
    source: 'whole runs of this stint with only that changed',
    model: MODEL,
  };
});

export const spanNotes = {
  span,
  reach,
  fit,
  spare,
  leastBad,
  missedHot: missed('hot'),
  missedCold: missed('cold'),
  noneSwing,
  noneWidth,
  gain,
};
