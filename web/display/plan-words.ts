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
  Uncovered,
} from '../../engine/index.ts';
import { capital, kelvins, percent, withUnit } from './format.ts';

type Done = Pick<Regret, 'status' | 'hotMargin_K' | 'coldMargin_K'>;

/** "C", "open" */
export const fitName = (panels: readonly PlannedPanel[], place: number): string =>
  panels[place]?.letter || 'open';

/** "65 %"; "left 65 %, right 60 %" where the sides differ. */
export function coverWords({ blanking_pct, sides_pct }: PlannedPanel): string {
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
  if (above_C !== null && below_C !== null) return `${withUnit(above_C, '°C')} to ${withUnit(below_C, '°C')}`;
  if (above_C !== null) return `from ${withUnit(above_C, '°C')} up`;
  return below_C === null ? '' : `below ${withUnit(below_C, '°C')}`;
}

/** "12 to 14 °C, following at 25 m, wet" */
export const conditionWords = ({ from_C, to_C, gap_m, isWet }: LikelyCondition): string =>
  [
    `${withUnit(from_C, '°C')} to ${withUnit(to_C, '°C')}`,
    gap_m === null ? 'clear air' : `following at ${withUnit(gap_m, 'm')}`,
    isWet ? 'wet' : 'dry',
  ].join(', ');

/** The same of a place in a list of them. */
export function dayWords(conditions: readonly LikelyCondition[], place: number): string {
  const at = conditions[place];
  return at ? conditionWords(at) : '';
}

/** "in, 12 K to spare", "58 K too hot" */
export function doneWords({ status, hotMargin_K, coldMargin_K }: Done): string {
  if (status === 'not judged') return 'not judged';
  if (status === 'in') {
    const spare = Math.min(hotMargin_K, coldMargin_K);
    return spare >= 0 ? `in, ${kelvins(spare)} to spare` : 'in, within the short excess allowed';
  }
  const hot = `${kelvins(hotMargin_K)} too hot`;
  const cold = `${kelvins(coldMargin_K)} too cold`;
  return status === 'both' ? `${hot} and ${cold}` : status === 'hot' ? hot : cold;
}

/** "open: 20 K too hot; C would give 12 K more": what fitting it cost on that day. */
export function regretWords(regret: Regret): string {
  const cost = regret.isBest ? 'the best of the set' : `gives away ${kelvins(regret.regret_K)}`;
  return `${doneWords(regret)}; ${cost}`;
}

export function uncoveredWords(
  { condition, panel, ...done }: Uncovered,
  conditions: readonly LikelyCondition[],
  panels: readonly PlannedPanel[],
): string {
  const likely = chance(conditions[condition]?.weight ?? 0);
  const fit = fitName(panels, panel);
  return `${capital(dayWords(conditions, condition))} (chance ${likely}): the least bad is ${fit}, ${doneWords(done)}.`;
}

export const chance = (share: number): string =>
  share > 0 && share < 0.005 ? `less than ${percent(1)}` : percent(Math.round(100 * share));

/** What to bring, in a sentence. */
export function bringWords({ panels, covered, worst_K }: AxlePlan): string {
  const list = panels.slice(1).map((panel) => `${panel.letter} (${coverWords(panel)})`);
  const spare =
    worst_K === null
      ? ''
      : `; where it is nearest to a limit it has ${kelvins(worst_K)} to spare, weighed by doubt`;
  return `Bring ${list.join(', ')}. With an open mouth they keep ${chance(covered)} of what is likely in the window${spare}.`;
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

/** "C on 60 % of the days, B on 40 %" */
export const fitsWords = ({ fits }: SessionPlan, panels: readonly PlannedPanel[]): string =>
  fits.map(({ panel, chance: share }) => `${fitName(panels, panel)} ${chance(share)}`).join(', ');

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

/** How much of the map stays in with some blanking. */
export function mapSummary({ rows }: ConditionsMap['corners'][number]): string {
  const cells = rows.flat();
  const inside = cells.filter(({ span_pct }) => span_pct).length;
  return `Some blanking stays in the window in ${inside} of ${cells.length} conditions.`;
}
