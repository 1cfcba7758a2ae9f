/**
 * What checks a scenario, the schema with its rules: the first picture does without. Who can change something is shown when it is
 * there, and has been waited for wherever something is brought along: by what was kept, by a link, by a file.
 */
import type * as checking from './checking.ts';

type Checks = typeof checking;

let loaded: Checks | null = null;

export const loadChecks = async (): Promise<Checks> => (loaded ??= await import('./checking.ts'));

/** Throws where nobody has waited for them. */
export function checks(): Checks {
  if (!loaded) throw new Error('checks: not loaded yet');
  return loaded;
}
