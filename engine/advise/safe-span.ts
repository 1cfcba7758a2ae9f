/** The safe span of every corner of a scenario, in the order of its result, and what would help where there is none. */
import { leastBlanking } from '../duct/least-blanking.ts';
import type { Scenario } from '../scenario/schema.ts';
import type { CompileOptions } from '../stint/compile.ts';
import { bracketed } from './bracket.ts';
import { withRemedies } from './remedies.ts';
import type { Search, Steps } from './search.ts';
import type { SafeSpan } from './span.ts';

export const safeSpans = (scenario: Scenario, options: CompileOptions = {}): Search<SafeSpan[]> => ({
  ground: { scenario, ...options },
  steps: stepsOf(scenario),
});

function* stepsOf(scenario: Scenario): Steps<SafeSpan[]> {
  return yield* withRemedies(scenario, yield* bracketed(scenario, leastBlanking));
}
