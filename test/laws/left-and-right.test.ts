import { expect, it } from 'vitest';
import type { Scenario } from '../../engine/scenario/schema.ts';
import type { CornerResult, StintResult } from '../../engine/stint/result.ts';
import { expectLaw, LAW_TIMEOUT } from '../support/law-runs.ts';
import { driven } from '../support/stints.ts';

const axles = ['front', 'rear'] as const;
const SWAPPED = { left: 'right', right: 'left', both: 'both' } as const;

const run = (scenario: Scenario): StintResult => driven(scenario, { driven: scenario });

const find = ({ corners }: StintResult, axle: string, side: string): CornerResult | undefined =>
  corners.find((one) => one.axle === axle && one.side === side);

/** What is computed of a corner, to the last bit. */
const facts = ({ columns, laps, ledger_J }: CornerResult): string =>
  JSON.stringify([Object.values(columns!).map((column: Float64Array) => Array.from(column)), laps, ledger_J]);

/** Equal brakes under equal tape, but told as two: only the name of the window's source differs. */
function toldApart({ sides: _, blanking_pct: { front, rear }, ...scenario }: Scenario): Scenario {
  const other = { window: { source: 'the same limits, from another hand' } };
  const sides = { front_left: other, rear_right: other };
  return { ...scenario, blanking_pct: { front, rear }, sides };
}

it(
  'left equals right when given the same, and both equal the axle told as one',
  () => {
    expectLaw(120, (scenario) => {
      const apart = toldApart(scenario);
      const [two, one] = [run(apart), run({ ...apart, sides: {} })];
      for (const axle of axles) {
        const left = facts(find(two, axle, 'left')!);
        expect(facts(find(two, axle, 'right')!) === left).toBe(true);
        expect(facts(find(one, axle, 'both')!) === left).toBe(true);
      }
    });
  },
  LAW_TIMEOUT,
);

const keySwapped = (key: string): string =>
  key.replace(/_(left|right)$/, (_, side: 'left' | 'right') => `_${SWAPPED[side]}`);

const swapped = <T extends object>(table: T): T =>
  Object.fromEntries(Object.entries(table).map(([key, value]) => [keySwapped(key), value as unknown])) as T;

it(
  'what is done to the left does to it what the same does to the right',
  () => {
    expectLaw(120, (scenario) => {
      const mirrored = {
        ...scenario,
        sides: swapped(scenario.sides),
        blanking_pct: swapped(scenario.blanking_pct),
      };
      const [usual, mirror] = [run(scenario), run(mirrored)];
      for (const corner of usual.corners) {
        const twin = find(mirror, corner.axle, SWAPPED[corner.side])!;
        expect(facts(twin) === facts(corner)).toBe(true);
      }
    });
  },
  LAW_TIMEOUT,
);
