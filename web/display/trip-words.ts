/** The card of the pit wall: what to do when a sensor reads past a limit, in its own reading. Pure. */
import type { Axle, CornerReading, Plan, PlannedPanel, Scenario } from '../../engine/index.ts';
import { cornerName } from './corner.ts';
import { capital, decimal, levelStep, NBSP } from './format.ts';
import { fitName } from './plan-words.ts';
import type { Predicted } from './predicted-words.ts';
import { degrees, unitName } from './units.ts';

export interface TripLine {
  corner: string;
  /** "Above 590 °C on two laps running: go one more open at the next stop, C to B." */
  hot: string;
  cold: string;
}

/** Down to a step of the levels, on both sides: early when hot, late when cold. */
const tripLevel = (reading_K: number): string =>
  `${decimal(Math.floor(degrees(reading_K) / levelStep()) * levelStep())}${NBSP}${unitName('°C')}`;

interface Fit {
  panels: readonly PlannedPanel[];
  /** Places in the set: what the session begins with, and what is right. */
  places: readonly number[];
  isStopPlanned: boolean;
}

/** "D to C, or C to B"; empty where none has a neighbour on that side. */
function stepsBy(by: -1 | 1, { panels, places }: Fit): string {
  const steps = places.filter((place) => panels[place + by]);
  return steps.map((place) => `${fitName(panels, place)} to ${fitName(panels, place + by)}`).join(', or ');
}

const SLOWER = 'brake earlier and softer';

function hotWords({ above_K }: CornerReading, fit: Fit): string {
  if (above_K === null) return 'No hot limit.';
  const steps = stepsBy(-1, fit);
  const act = !steps
    ? `nothing is left to open; ${SLOWER}, or come in`
    : fit.isStopPlanned
      ? `go one more open at the next stop, ${steps}`
      : `${SLOWER}; go one more open before the next run, ${steps}`;
  return `Above ${tripLevel(above_K)} on two laps running: ${act}.`;
}

function coldWords({ below_K }: CornerReading, fit: Fit): string {
  if (below_K === null) return 'No cold limit to read: no counted lap has a hard stop.';
  const steps = stepsBy(1, fit);
  const act = steps ? `go one more closed before the next run, ${steps}` : 'the set has nothing more closed';
  return `Hard stops begin below ${tripLevel(below_K)} on two laps running: tell the driver it is cold; ${act}.`;
}

/** One a corner, for what the rule fits on the likeliest day; none where no sensor is described. */
export function tripLines(
  { plan, predicted }: { plan: Plan; predicted: readonly (Predicted | null)[] },
  session: number,
): TripLine[] {
  const found = predicted[session];
  const lines = (found?.forecast.readings ?? []).flatMap((reading) => {
    const axle = plan.axles.find((each) => each.axle === reading.axle);
    const right = found?.panels[reading.axle];
    const known = axle?.sessions[session];
    if (!axle || !known || right === undefined) return [];
    const start = known.fits.find(({ panel }) => panel === right)?.start ?? right;
    const places = [...new Set([start, right])];
    const fit = { panels: axle.panels, places, isStopPlanned: known.beforeStop !== null };
    const { axle: name } = reading;
    return [
      { name, corner: cornerName(reading), hot: hotWords(reading, fit), cold: coldWords(reading, fit) },
    ];
  });
  return alikeAsOne(lines).map(({ corner, hot, cold }) => ({ corner: capital(corner), hot, cold }));
}

interface Named extends TripLine {
  name: Axle;
}

/** Sides that are told the same are told once, for their axle. */
const alikeAsOne = (lines: readonly Named[]): Named[] =>
  lines.flatMap((line, i) => {
    const twin = lines.findIndex(
      ({ name, hot, cold }, j) => j !== i && name === line.name && hot === line.hot && cold === line.cold,
    );
    if (twin < 0) return [line];
    return twin < i ? [] : [{ ...line, corner: line.name }];
  });

export const fromLaps = ({ brakes: { front, rear } }: Pick<Scenario, 'brakes'>): Record<Axle, number> => ({
  front: front.window.from_lap,
  rear: rear.window.from_lap,
});

/** From which lap the card holds, and whose reading it is in. */
export function tripNote(fromLap: Record<Axle, number>): string {
  const { front, rear } = fromLap;
  const laps =
    front === rear
      ? `push lap${NBSP}${front}`
      : `push lap${NBSP}${front} at the front and ${rear} at the rear`;
  return `As the sensor reads, not as the disc is. From ${laps} on; not behind the safety car, nor in the three laps after. If the reading is in doubt, open.`;
}
