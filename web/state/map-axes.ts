/** What the conditions map of an event is drawn over: ambient across, and down what a person chooses. Pure. */
import type { Value } from '../../engine/scenario/changes.ts';
import type { Session } from '../../engine/scenario/event-schema.ts';
import { NBSP, withUnit } from '../display/format.ts';

export type DownAxis = 'gap' | 'altitude' | 'track' | 'pace';

/** For the doubt that margins are weighed by: enough for a weight. */
export const WEIGHING = { draws: 32, seed: 1 };

const COLUMNS = 12;
const GAPS_M: readonly (number | null)[] = [null, 100, 50, 30, 20, 15, 10, 6];
const ALTITUDES_M = [0, 300, 600, 900, 1200, 1500, 1800, 2100];
/** How a driver goes easier on the brakes: off the throttle before them. Less grip alone slows the corners more than the straights. */
const COASTS_S = [0, 0.25, 0.5, 0.75, 1, 1.25, 1.5, 1.75];

const DOWN: Record<DownAxis, { key: string; values: readonly Value[] }> = {
  gap: { key: 'traffic.gap_m', values: GAPS_M },
  altitude: { key: 'conditions.altitude_m', values: ALTITUDES_M },
  track: { key: 'conditions.wet', values: [false, true] },
  pace: { key: 'driver.coast_s', values: COASTS_S },
};

/** Twelve ambients from the lowest forecast to the highest, whole degrees apart. */
function ambients(sessions: readonly Session[]): number[] {
  const low = Math.min(...sessions.map(({ ambient_C }) => ambient_C.low));
  const high = Math.max(low + COLUMNS - 1, ...sessions.map(({ ambient_C }) => ambient_C.high));
  const start = Math.min(Math.round(low), 55 - (COLUMNS - 1));
  const step = (Math.min(55, high) - start) / (COLUMNS - 1);
  return Array.from({ length: COLUMNS }, (_, i) => Math.round(start + i * step));
}

export const mapAsked = (sessions: readonly Session[], axis: DownAxis) => ({
  across: { key: 'conditions.ambient_C', values: ambients(sessions) },
  down: DOWN[axis],
});

/** "22 °C", "clear air", "gap 20 m", "900 m up", "coast 0.50 s", "wet" */
export function valueText(key: string, value: Value): string {
  if (key === 'conditions.ambient_C') return withUnit(Number(value), '°C');
  if (key === 'traffic.gap_m') return value === null ? 'clear air' : `gap ${withUnit(Number(value), 'm')}`;
  if (key === 'conditions.altitude_m') return `${withUnit(Number(value), 'm')}${NBSP}up`;
  if (key === 'driver.coast_s') return `coast ${withUnit(Number(value), 's', 2)}`;
  return value === true ? 'wet' : 'dry';
}
