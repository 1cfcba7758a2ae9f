/** One plain question where two readings of a file fit, with the choices that each answer makes. */
import type { TraceChoices, TraceQuestion } from '../circuit/understood.ts';
import type { MotionLog } from './motion-log.ts';
import { repeatsOf } from './repeats.ts';
import type { MotionUnits } from './time-units.ts';
import { count, joined, plain, quantity } from './words.ts';

export function speedQuestion(
  { open, topSpeed }: MotionUnits,
  at: number,
  choices: TraceChoices,
): TraceQuestion | null {
  if (open.length === 0) return null;
  return {
    text: `Is the speed in ${joined(
      open.map(({ unit }) => unit),
      'or',
    )}? Its highest is ${plain(topSpeed)}.`,
    answers: open.map(({ unit, top_kmh }) => ({
      text: unit === 'km/h' ? unit : `${unit}, up to ${quantity(top_kmh, 'km/h')}`,
      choices: { ...choices, units: { ...choices.units, [at]: unit } },
    })),
  };
}

/** Laps that nothing marks, but the speed that repeats. */
export function lapsQuestion(log: MotionLog, choices: TraceChoices): TraceQuestion | null {
  const found = repeatsOf(log);
  if (!found) return null;
  const laps = count(found.laps, 'lap');
  const part = found.hasPart ? ' and a part of one' : '';
  return {
    text: `This looks like ${laps} of about ${quantity(Math.round(found.length_m / 10) * 10, 'm')}${part}. Cut it so?`,
    answers: [
      { text: `Yes, ${laps}`, choices: { ...choices, lapsBy: 'times', lapStarts_s: found.starts_s } },
      { text: 'No, it is one lap', choices: { ...choices, lapsBy: 'none' } },
    ],
  };
}
