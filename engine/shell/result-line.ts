/** A line that answers one line of a batch. */
import { problem, type Problem } from '../scenario/problem.ts';

export interface ResultLine {
  text: string;
  isRefused: boolean;
}

export const ranLine = (id: unknown, record: object): ResultLine => ({
  text: JSON.stringify({ id, ...record }),
  isRefused: false,
});

/** An id that is itself a problem is not given back: it would find the wrong line or none. */
export function refusedLine(id: unknown, problems: readonly Problem[]): ResultLine {
  const isGood = problems.every(({ key }) => key !== 'id');
  return { text: JSON.stringify({ id: isGood ? id : undefined, problems }), isRefused: true };
}

/** What no check has foreseen. */
export const notRun = (cause: string): Problem => ({
  ...problem('job', cause, 'a job that can be run'),
  value: cause,
});
