/** The spread of the answer: the stint run with every unknown drawn at once, many times. */
import type { Scenario } from '../scenario/schema.ts';
import type { CompileOptions } from '../stint/compile.ts';
import type { Verdict } from '../stint/result.ts';
import type { CornerSpread, DrawnStint, LapSpread, Sample, Spread } from './doubt.ts';
import { latinHypercube, quantileTriangular } from './latin-hypercube.ts';
import { cornerAt } from './corner-at.ts';
import { quantilesOf } from './quantiles.ts';
import type { Ask, Outcome, Search, Steps } from './search.ts';
import { unknownsOf, type Unknown } from './unknowns.ts';

/** All draws may run at once. They are the same for the same seed and the same number of unknowns. */
export const spread = (scenario: Scenario, sample: Sample, options: CompileOptions = {}): Search<Spread> => ({
  ground: { scenario, ...options },
  steps: drawing(scenario, sample),
});

function* drawing(scenario: Scenario, { draws, seed }: Sample): Steps<Spread> {
  const unknowns = unknownsOf(scenario);
  const [likely = [], ...drawn] = yield [{}, ...drawsOf(unknowns, { draws, seed })];
  const corners = likely.map((corner) =>
    cornerSpread(
      corner,
      drawn.map((results) => cornerAt(results, corner)),
    ),
  );
  return { draws, seed, unknowns: unknowns.length, corners };
}

/** Every draw as one ask, with all corners as they are. */
export const drawsOf = (unknowns: readonly Unknown[], { draws, seed }: Sample): Ask[] =>
  latinHypercube(draws, unknowns.length, seed).map((shares) => {
    const values = unknowns.map((unknown, i) => [unknown.key, quantileTriangular(shares[i]!, unknown)]);
    return { values: Object.fromEntries(values) as Record<string, number> };
  });

export function cornerSpread(
  { axle, side, laps }: Pick<Outcome, 'axle' | 'side' | 'laps'>,
  drawn: Outcome[],
): CornerSpread {
  const count = { in: 0, hot: 0, cold: 0, both: 0, notJudged: 0 };
  for (const { verdict } of drawn) count[countOf(verdict)] += 1;
  return {
    axle,
    side,
    count,
    laps: laps.map((lap, i) => lapSpread(lap.lap, drawn, i)),
    hottest_K: drawn.map(({ verdict }) => verdict.facePeak_K),
    coldest_K: drawn.map(({ verdict }) => verdict.coldestStop_K),
    stints: drawn.map(stintOf),
  };
}

const stintOf = ({ verdict, laps }: Outcome): DrawnStint => ({
  status: verdict.status,
  facePeak_K: laps.map(({ faceMax_K }) => faceMax_K),
  coldestStop_K: laps.map(({ coldestStop_K }) => coldestStop_K),
});

const countOf = ({ status }: Verdict): keyof CornerSpread['count'] =>
  status === 'not judged' ? 'notJudged' : status;

function lapSpread(lap: number, drawn: Outcome[], i: number): LapSpread {
  const laps = drawn.map((corner) => corner.laps[i]!);
  const cold = laps.flatMap(({ coldestStop_K }) => coldestStop_K ?? []);
  return {
    lap,
    counted: laps.some((each) => each.in !== null),
    facePeak_K: quantilesOf(laps.map(({ faceMax_K }) => faceMax_K)),
    coldestStop_K: cold.length === 0 ? null : quantilesOf(cold),
  };
}
