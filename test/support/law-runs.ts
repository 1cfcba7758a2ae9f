/** How many random scenarios a law is tried on, and what they are. */
import fc from 'fast-check';
import { rangeOf } from './random-number.ts';
import { anyScenario } from './random-scenario.ts';
import type { Changes } from '../../engine/scenario/override.ts';
import type { Scenario } from '../../engine/scenario/schema.ts';
import type { StintResult } from '../../engine/stint/result.ts';
import { changed, driven } from './stints.ts';

/** Counts are written for one minute in all; LAWS_RUNS=10 multiplies them, and LAWS_SEED draws others. */
const TIMES = Number(process.env['LAWS_RUNS'] ?? 1);
const SEED = Number(process.env['LAWS_SEED'] ?? 1);

/** Limit of a law's time [ms] */
export const LAW_TIMEOUT = 120_000 * Math.max(1, TIMES);

/** The law must hold for so many scenarios; the smallest that breaks it is shown. */
export function expectLaw(runs: number, law: (scenario: Scenario) => void): void;
export function expectLaw<T>(runs: number, law: (drawn: T) => void, drawn: fc.Arbitrary<T>): void;
export function expectLaw(
  runs: number,
  law: (drawn: never) => void,
  drawn: fc.Arbitrary<unknown> = anyScenario,
): void {
  fc.assert(fc.property(drawn as fc.Arbitrary<never>, law), { numRuns: Math.ceil(runs * TIMES), seed: SEED });
}

/** Two values of a field, the second at least as high. */
export const twoOf = (key: string): fc.Arbitrary<[number, number]> => {
  const [min, max] = rangeOf(key);
  return fc.tuple(fc.integer({ min: 0, max: 50 }), fc.integer({ min: 0, max: 50 })).map((parts) => {
    const [low, high] = parts.sort((a, b) => a - b).map((part) => min + (part / 50) * (max - min));
    return [low!, high!];
  });
};

/** The stint with something changed about its air, at the speed and heat it had before. */
export const inOtherAir = (scenario: Scenario, changes: Changes): StintResult =>
  driven(changed(changes, scenario), { driven: scenario });
