/**
 * What may come in an event: weather and traffic cut into cells, each with the chance that it comes. Ambient, traffic and rain
 * of a session are taken as independent of each other; every session counts as much as the others.
 */
import type { Changes } from '../scenario/changes.ts';
import type { Session } from '../scenario/event-schema.ts';
import { meanBelow, meanOf, shareBelow } from './triangular.ts';

/** One likely condition. */
export interface Condition {
  name: string;
  /** Chance that it comes, over all sessions; those of an event add up to 1 [-] */
  weight: number;
  /** What the stint is changed by. */
  changes: Changes;
}

export interface LikelyCondition extends Condition {
  /** Mean of the forecasts within the cell, and its borders [°C] */
  ambient_C: number;
  from_C: number;
  to_C: number;
  /** Place of its cell among those of the event. */
  cell: number;
  /** To the car ahead; null in clear air [m] */
  gap_m: number | null;
  isWet: boolean;
  /** Chance in each session, of which those of one session add up to 1 [-] */
  inSession: number[];
}

/** Ambient is cut into at most so many cells, with borders at whole degrees that a rule can name. */
const MOST_CELLS = 10;

/** Borders of the cells, in even steps of whole degrees, the lowest at or below the least forecast [°C] */
export function cellBorders(sessions: readonly Session[]): number[] {
  const low = Math.min(...sessions.map(({ ambient_C }) => ambient_C.low));
  const high = Math.max(...sessions.map(({ ambient_C }) => ambient_C.high));
  const width = Math.max(1, Math.ceil((high - low) / MOST_CELLS));
  const first = Math.floor(low / width);
  const cells = Math.max(1, Math.ceil(high / width) - first);
  return Array.from({ length: cells + 1 }, (_, i) => width * (first + i));
}

/** All conditions that have a chance: dry before wet, clear air before traffic, cold before hot. */
export function likelyConditions(sessions: readonly Session[]): LikelyCondition[] {
  const borders = cellBorders(sessions);
  const cells = borders.slice(1).map((to_C, cell) => ({ cell, from_C: borders[cell]!, to_C }));
  const gaps = [null, ...[...new Set(sessions.map(({ gap_m }) => gap_m))].sort((a, b) => a - b)];
  return [false, true].flatMap((isWet) =>
    gaps.flatMap((gap_m) =>
      cells.flatMap((cell) => {
        const masses = sessions.map(({ ambient_C }) => massIn(ambient_C, cell, borders.length - 2));
        const inSession = sessions.map(
          (session, i) => masses[i]!.share * trafficShare(session, gap_m) * wetShare(session, isWet),
        );
        const weight = sum(inSession) / sessions.length;
        if (weight <= 0) return [];
        const there = masses.filter((_, i) => inSession[i]! > 0);
        const ambient_C = tenths(
          sum(there.map(({ moment }) => moment)) / sum(there.map(({ share }) => share)),
        );
        const changes = {
          'conditions.ambient_C': ambient_C,
          'conditions.wet': isWet,
          'traffic.gap_m': gap_m,
          'traffic.gap_s': null,
        };
        return [
          {
            name: nameOf(cell, gap_m, isWet),
            weight,
            changes,
            ambient_C,
            ...cell,
            gap_m,
            isWet,
            inSession,
          },
        ];
      }),
    ),
  );
}

/** Chance of a cell, and its part of the mean; the first and the last cell hold all that is below and above. */
function massIn(
  forecast: Session['ambient_C'],
  { cell, from_C, to_C }: Pick<LikelyCondition, 'cell' | 'from_C' | 'to_C'>,
  last: number,
): { share: number; moment: number } {
  const [from, to] = [cell === 0 ? -Infinity : from_C, cell === last ? Infinity : to_C];
  return {
    share: shareBelow(to, forecast) - shareBelow(from, forecast),
    moment: meanBelow(to, forecast) - meanBelow(from, forecast),
  };
}

/** Of the laps: the mean of the forecast share behind a car, or what that leaves. */
function trafficShare({ traffic_pct, gap_m }: Session, gap: number | null): number {
  const behind = meanOf(traffic_pct) / 100;
  if (gap === null) return 1 - behind;
  return gap === gap_m ? behind : 0;
}

const wetShare = ({ wet_pct }: Session, isWet: boolean): number => (isWet ? wet_pct : 100 - wet_pct) / 100;

const nameOf = (
  { from_C, to_C }: Pick<LikelyCondition, 'from_C' | 'to_C'>,
  gap_m: number | null,
  isWet: boolean,
): string =>
  `${from_C} to ${to_C} °C, ${gap_m === null ? 'clear air' : `following at ${gap_m} m`}, ${isWet ? 'wet' : 'dry'}`;

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
const tenths = (value: number): number => Math.round(10 * value) / 10;
