/** What can be fitted is weighed by the draws: proposed is what most of them keep in, or as many but for chance. */
import type { Scenario } from '../scenario/schema.ts';
import type { CompileOptions } from '../stint/compile.ts';
import { judgedUntil } from './bracket.ts';
import type { Sample } from './doubt.ts';
import { fittest } from './fittest.ts';
import { looksAt, type Sight } from './look.ts';
import type { At, Outcome, Search, Steps } from './search.ts';
import type { Reach, SafeSpan, Spare } from './span.ts';
import { cornerSpread, drawsOf } from './spread.ts';
import { unknownsOf } from './unknowns.ts';

export interface Weighing extends Sample {
  /** Of the same scenario, in the order of its corners. */
  spans: readonly SafeSpan[];
}

/**
 * The same spans, with the draws of their candidates and what is proposed by them; as they are where nothing is in doubt.
 * All candidates meet the same draws, which are those of the spread for the same seed. A blanking that is itself in doubt
 * is fitted here as it is said. All draws may run at once: each is compiled once, for corners do not feel each other's air.
 */
export const weighed = (
  scenario: Scenario,
  weighing: Weighing,
  options: CompileOptions = {},
): Search<SafeSpan[]> => ({ ground: { scenario, ...options }, steps: weighingOf(scenario, weighing) });

function* weighingOf(scenario: Scenario, { spans, ...sample }: Weighing): Steps<SafeSpan[]> {
  const unknowns = unknownsOf(scenario);
  const at = spans.flatMap((span) =>
    candidatesOf(span).map(({ blanking_pct }): At => ({ axle: span.axle, side: span.side, blanking_pct })),
  );
  if (at.length === 0 || unknowns.length === 0) return [...spans];
  const drawn = yield drawsOf(unknowns, sample).map((draw) => ({ ...draw, at }));
  const tried = at.map((_, place) => drawn.map((outcomes) => outcomes[place]!));
  const sights = looksAt(scenario);
  return spans.map((span, i) => {
    const own = tried.splice(0, candidatesOf(span).length);
    return own.length > 0 ? withDraws(span, sights[i]!, own) : span;
  });
}

/** What a lever may choose between: over the laps before the blanking changes, where no choice holds all of them. */
const candidatesOf = ({ isIdle, before, candidates }: SafeSpan): Spare[] =>
  isIdle ? [] : (before ?? { candidates }).candidates;

function withDraws(span: SafeSpan, { corner }: Sight, tried: Outcome[][]): SafeSpan {
  const { before } = span;
  if (!before) return { ...span, ...chosenFrom(span, span, tried) };
  const until = tried.map((outcomes) =>
    outcomes.map((outcome) => judgedUntil(outcome, before.lap, corner.brake)),
  );
  return { ...span, before: { ...before, ...chosenFrom(before, span, until) } };
}

/** Of the candidates, one list of outcomes for each, a draw after the other. */
function chosenFrom(
  { candidates }: Reach,
  { axle, side }: Pick<SafeSpan, 'axle' | 'side'>,
  tried: Outcome[][],
): Pick<Reach, 'candidates' | 'proposal' | 'drawn'> {
  const spreads = tried.map((outcomes) => cornerSpread({ axle, side, laps: outcomes[0]!.laps }, outcomes));
  const counted = candidates.map((spare, i): Spare => ({ ...spare, count: spreads[i]!.count }));
  const kept = spreads.map(({ stints }) => stints.map(({ status }) => status === 'in'));
  const proposal = fittest(counted, kept);
  return { candidates: counted, proposal, drawn: proposal && spreads[counted.indexOf(proposal)]! };
}
