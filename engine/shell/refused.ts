/** What was asked for cannot be done: everything that is wrong with it, as values. */
import { problem, problemLine, type Problem } from '../scenario/problem.ts';

export class Refused extends Error {
  constructor(readonly problems: readonly Problem[]) {
    super(problems.map(problemLine).join('\n'));
  }
}

/** Does something with a file that was named under a key; what goes wrong is a problem with that key. */
export function attempt<T>([key, file, expected]: readonly [string, string, string], action: () => T): T {
  try {
    return action();
  } catch (error) {
    throw error instanceof Refused
      ? error
      : new Refused([fileProblem([key, file, expected], messageOf(error))]);
  }
}

/** The name of the file whole, however long, and the cause. */
export const fileProblem = (
  [key, file, expected]: readonly [string, string, string],
  cause: string,
): Problem => ({
  ...problem(key, file, expected, cause),
  value: `'${file}'`,
});

export const messageOf = (error: unknown): string =>
  (error instanceof Error ? error.message : String(error)).split('\n')[0]!;
