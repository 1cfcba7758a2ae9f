/** Which blankings the plates of a scenario can be cut for: a hole or slots leave less open than a straight edge may. */
import { blankOf, canBeMade } from '../duct/blank-keys.ts';
import { leastBlanking } from '../duct/least-blanking.ts';
import { FULL_PCT } from './mouth-rules.ts';
import { problem, type Problem } from './problem.ts';
import type { Brake, Scenario } from './schema.ts';
import { layOver } from './tree.ts';

type Axle = 'front' | 'rear';
type Side = `${Axle}_${'left' | 'right'}`;
type Duct = NonNullable<Brake['duct']>;

const AXLES = ['front', 'rear'] as const;
const sidesOf = (axle: Axle): readonly Side[] => [`${axle}_left`, `${axle}_right`];

/** What is asked for from the start, or by a phase: its plate would leave less open, if it is fitted at all. */
export function blankingProblems(scenario: Scenario): Problem[] {
  const { blanking_pct, stint } = scenario;
  return [
    ...shareProblems(scenario, 'blanking_pct', (place) => blanking_pct[place]),
    ...stint.phases.flatMap(({ set = {} }, i) => {
      const shareAt = (place: Axle | Side): unknown => set[`blanking_pct.${place}`];
      return shareProblems(scenario, `stint.phases.${i}.set.blanking_pct`, shareAt);
    }),
  ];
}

/** What an axle is to have holds on both sides' own mouths, but for a side that something is said of. */
function shareProblems(scenario: Scenario, key: string, shareAt: (place: Axle | Side) => unknown): Problem[] {
  return AXLES.flatMap((axle) => {
    const own = sidesOf(axle).filter((side) => shareAt(side) !== undefined);
    const unsaid = sidesOf(axle).filter((side) => !own.includes(side) && scenario.sides[side]);
    const ofAxle = [scenario.brakes[axle].duct, ...unsaid.map((side) => ductAt(scenario, side))];
    return [
      ...ofAxle.flatMap((duct) => madeProblem(`${key}.${axle}`, shareAt(axle), duct)).slice(0, 1),
      ...own.flatMap((side) => madeProblem(`${key}.${side}`, shareAt(side), ductAt(scenario, side))),
    ];
  });
}

/**
 * Panels at hand that cannot be made. No fault of a scenario: nothing runs on them, and a blank may be chosen before its set. But
 * nobody can fit them.
 */
export function panelProblems(scenario: Scenario): Problem[] {
  const { brakes, sides } = scenario;
  return AXLES.flatMap((axle) => [
    ...setProblems(`brakes.${axle}`, brakes[axle].duct),
    ...sidesOf(axle).flatMap((side) => {
      const own = sides[side] as Partial<Brake> | undefined;
      return own?.duct ? setProblems(`sides.${side}`, ductAt(scenario, side)) : [];
    }),
  ]);
}

const setProblems = (key: string, duct: Brake['duct']): Problem[] =>
  (duct?.panels_pct ?? []).flatMap((pct, i) => madeProblem(`${key}.duct.panels_pct.${i}`, pct, duct));

function madeProblem(key: string, share: unknown, duct: Brake['duct']): Problem[] {
  if (typeof share !== 'number' || !duct) return [];
  const least_pct = leastBlanking(duct);
  if (canBeMade(share, least_pct) || least_pct >= FULL_PCT) return [];
  const least = `the least that a blank with ${NAMES[blankOf(duct).kind]} covers`;
  return [problem(key, share, `0, or ${Math.ceil(least_pct)} to 100: ${least}`)];
}

const NAMES = { edge: 'an edge', hole: 'a hole', slots: 'these slots', perforated: 'these holes' };

function ductAt({ brakes, sides }: Scenario, side: Side): Duct | null {
  const brake = brakes[side.split('_')[0] as Axle];
  return (layOver(brake, sides[side] ?? {}) as Brake).duct;
}
