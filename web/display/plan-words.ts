/** The plan of an event in words, in the units chosen. Pure. */
import type {
  AxlePlan,
  ConditionsMap,
  LikelyCondition,
  MapCell,
  PlannedPanel,
  Regret,
  RuleCase,
  RuleLine,
  SessionFit,
  SessionPlan,
} from '../../engine/index.ts';
import { ALLOWED } from './allowed-words.ts';
import { kelvins, NBSP, numberIn, percent, withUnit } from './format.ts';

type Done = Pick<Regret, 'status' | 'hotMargin_K' | 'coldMargin_K'>;

/** "C", "open" */
export const fitName = (panels: readonly PlannedPanel[], place: number): string =>
  panels[place]?.letter || 'open';

/** "65 %"; "left 65 %, right 60 %" where the sides differ. */
function coverWords({ blanking_pct, sides_pct }: PlannedPanel): string {
  if (!sides_pct) return percent(blanking_pct);
  return Object.entries(sides_pct)
    .map(([side, pct]) => `${side} ${percent(pct)}`)
    .join(', ');
}

/** The same of a place in the set; nothing for an open mouth. */
export function coverAt(panels: readonly PlannedPanel[], place: number): string {
  const panel = panels[place];
  return panel && place > 0 ? coverWords(panel) : '';
}

/** "above 26 °C, or following" */
export const ruleWords = ({ when }: Pick<RuleLine, 'when'>): string => when.map(caseWords).join(', or ');

function caseWords({ above_C, below_C, isFollowing, isWet }: RuleCase): string {
  const parts = [
    ambientWords(above_C, below_C),
    isFollowing === null ? '' : isFollowing ? 'following' : 'in clear air',
    isWet === null ? '' : isWet ? 'wet' : 'dry',
  ];
  return parts.filter(Boolean).join(' and ') || 'always';
}

function ambientWords(above_C: number | null, below_C: number | null): string {
  if (above_C !== null && below_C !== null) return `${numberIn(above_C, '°C')} to ${withUnit(below_C, '°C')}`;
  if (above_C !== null) return `from ${withUnit(above_C, '°C')} up`;
  return below_C === null ? '' : `below ${withUnit(below_C, '°C')}`;
}

/** "12 to 14 °C, following at 25 m, wet" */
export const conditionWords = ({ from_C, to_C, gap_m, isWet }: LikelyCondition): string =>
  [
    `${numberIn(from_C, '°C')} to ${withUnit(to_C, '°C')}`,
    gap_m === null ? 'clear air' : `following at ${withUnit(gap_m, 'm')}`,
    isWet ? 'wet' : 'dry',
  ].join(', ');

/** The same of a place in a list of them. */
export function dayWords(conditions: readonly LikelyCondition[], place: number): string {
  const at = conditions[place];
  return at ? conditionWords(at) : '';
}

/** Past a limit by no more than the window forgives. */
const isJustIn = ({ status, hotMargin_K, coldMargin_K }: Done): boolean =>
  status === 'in' && Math.min(hotMargin_K, coldMargin_K) < 0;

/** "in, 12 K to spare", "58 K too hot" */
export function doneWords({ status, hotMargin_K, coldMargin_K }: Done): string {
  if (status === 'not judged') return 'not judged';
  if (isJustIn({ status, hotMargin_K, coldMargin_K })) return `in, ${ALLOWED}`;
  if (status === 'in') return `in, ${kelvins(Math.min(hotMargin_K, coldMargin_K))} to spare`;
  const hot = `${kelvins(hotMargin_K)} too hot`;
  const cold = `${kelvins(coldMargin_K)} too cold`;
  return status === 'both' ? `${hot} and ${cold}` : status === 'hot' ? hot : cold;
}

/** What fitting it cost on that day: how it did, and how much less it had to spare than the best of the set. */
export const regretWords = (regret: Regret): readonly [done: string, cost: string] => [
  isJustIn(regret) ? 'just in' : doneWords(regret),
  regret.isBest ? 'best of the set' : `${kelvins(regret.regret_K)} worse`,
];

/** Panels that neither the rule calls for nor any of the days that may come: places in the set. */
function idle({ panels, rule, best }: Pick<AxlePlan, 'panels' | 'rule' | 'best'>): number[] {
  const isUsed = (place: number): boolean =>
    rule.lines.some(({ panel }) => panel === place) || best.includes(place);
  return panels.flatMap((_, place) => (place > 0 && !isUsed(place) ? [place] : []));
}

/** Panels that the rule never calls for, although they are the best on some day. "A and D" */
export function unusedWords(axle: Pick<AxlePlan, 'panels' | 'rule' | 'best'>): string {
  const left = idle(axle);
  const isUnused = (place: number): boolean =>
    place > 0 && !left.includes(place) && !axle.rule.lines.some(({ panel }) => panel === place);
  return listWords(axle.panels.flatMap(({ letter }, place) => (isUnused(place) ? [letter] : [])));
}

const listWords = (all: readonly string[]): string =>
  all.length < 2 ? (all[0] ?? '') : `${all.slice(0, -1).join(', ')} and ${all.at(-1)}`;

/** A share of what the forecasts call likely, as days of a hundred. Never all or none where it is not. */
function daysOfHundred(share: number): string {
  const whole = Math.round(100 * share);
  if (whole === 0 && share > 0) return 'fewer than 1';
  return whole === 100 && share < 1 - SLIP ? 'more than 99' : String(whole);
}

/** "74 of 100 days" */
export const days = (share: number): string => `${daysOfHundred(share)} of 100${NBSP}days`;

/** What sums of chances are off by. */
const SLIP = 1e-9;

/** What to bring, in a sentence; what is the best on no day that may come stays at home. */
export function bringWords(axle: Pick<AxlePlan, 'panels' | 'rule' | 'best'>): string {
  const home = idle(axle);
  const named = (is: (place: number) => boolean): string =>
    listWords(
      axle.panels.flatMap((panel, place) =>
        place > 0 && is(place) ? [`${panel.letter}${NBSP}(${coverWords(panel)})`] : [],
      ),
    );
  const bring = named((place) => !home.includes(place));
  if (!bring) return 'Bring no panel: an open mouth is the best on every day that may come.';
  const rest = named((place) => home.includes(place));
  return `Bring ${bring}.${rest && ` Leave ${rest} at home: the best on no day that may come.`}`;
}

/** How much of the weather and traffic they are good for, and how near it is. */
export function coveredWords({ covered, worst_K }: Pick<AxlePlan, 'covered' | 'worst_K'>): string {
  const nearest =
    worst_K === null
      ? ''
      : `; on the tightest ${kelvins(worst_K)} to spare, the less sure side counting for less`;
  return `Weather and traffic: on ${days(covered)} like the forecast one of these, or an open mouth, stays in the window${nearest}.`;
}

/** What a session starts with where a stop is planned. */
export function startWords(
  { panel, start, closerTooHot_K }: SessionFit,
  panels: readonly PlannedPanel[],
): string {
  const name = fitName(panels, panel);
  if (start !== panel)
    return `start with ${fitName(panels, start)}, one more closed, and go to ${name} at the stop`;
  if (closerTooHot_K === null) return `start with ${name}: the set has nothing more closed`;
  return `start with ${name}: one more closed would be ${kelvins(closerTooHot_K)} too hot before the stop`;
}

/** "C on 60 and B on 40 of 100 days" */
export const fitsWords = ({ fits }: Pick<SessionPlan, 'fits'>, panels: readonly PlannedPanel[]): string =>
  `${listWords(fits.map(({ panel, chance }) => `${fitName(panels, panel)} on ${daysOfHundred(chance)}`))} of 100${NBSP}days`;

/** A text in parts: its temperatures and percents, which are printed large, and what stands between them. */
export const figuresIn = (text: string): readonly { part: string; isFigure: boolean }[] =>
  text
    .split(/(\u2212?[\d.]+(?: to \u2212?[\d.]+)?\u00a0(?:°[CF]|%))/)
    .map((part, i) => ({ part, isFigure: i % 2 === 1 }))
    .filter(({ part }) => part !== '');

const WHY = {
  'hot when open': 'too hot even with an open mouth',
  'cold when closed': 'too cold even closed',
  swing: 'no blanking stays in: it swings too far',
  'not judged': 'not judged: no counted lap with a hard stop',
} as const;

/** What is known of one cell of the map of conditions. */
export function cellWords(
  cell: MapCell | undefined,
  fit: { place: number | null; panels: readonly PlannedPanel[] },
): string {
  if (!cell?.span_pct) return WHY[cell?.why ?? 'not judged'];
  const [low, high] = cell.span_pct;
  const safe = `safe from ${percent(low)} to ${percent(high)}`;
  const best = cell.best ? `, best ${percent(cell.best.blanking_pct)}` : '';
  const { place, panels } = fit;
  const panel =
    place === null
      ? 'no panel of the set stays in'
      : place === 0
        ? 'leave it open'
        : `fit ${fitName(panels, place)} (${coverAt(panels, place)})`;
  return `${safe}${best}; ${panel}`;
}

/** How much of the map stays in with some blanking, and how its regions came about. */
export function mapSummary({ rows }: ConditionsMap['corners'][number]): string {
  const cells = rows.flat();
  const inside = cells.filter(({ span_pct }) => span_pct).length;
  return `Some blanking stays in the window in ${inside} of ${cells.length} conditions. Each takes the panel with most to spare, each side against its doubt; the rule above is coarser.`;
}
