import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Changes } from '../../engine/scenario/override.ts';
import { parseScenario } from '../../engine/scenario/parse.ts';
import type { Scenario } from '../../engine/scenario/schema.ts';
import { legsOf } from '../../engine/stint/legs.ts';
import type { CornerResult, StintResult } from '../../engine/stint/result.ts';
import { kelvin } from '../../engine/units.ts';
import { expectLaw, LAW_TIMEOUT } from '../support/law-runs.ts';
import { unexplained } from '../support/ledger.ts';
import { within } from '../support/random-number.ts';
import { anyInput } from '../support/random-scenario.ts';
import { changed, driven } from '../support/stints.ts';

const CLOSES = 1e-9;
/** Less heat than this is rounding, whatever share of a corner's heat it is [J] */
const ROUNDING_J = 1e-6;
/** How far below the coldest thing around a step may take a temperature [K] */
const UNDER_K = 0.1;

const columnsOf = ({ columns }: CornerResult): [string, Float64Array][] => Object.entries(columns!);

/** What has a temperature of its own; the wheelhouse's air is a balance of what flows into it. */
const bodiesOf = (corner: CornerResult): [string, Float64Array][] =>
  columnsOf(corner).filter(([name]) => name !== 'wheelhouse_K');

function expectFinite({ clock, corners, lapTime_s, brakeEnergyPerLap_J }: StintResult): void {
  expect([lapTime_s, brakeEnergyPerLap_J].every(Number.isFinite)).toBe(true);
  expect(clock.time_s.every(Number.isFinite)).toBe(true);
  for (const corner of corners) {
    for (const [name, column] of columnsOf(corner)) expect(column.every(Number.isFinite), name).toBe(true);
    for (const { faceMax_K, faceMean_K } of corner.laps) expect(faceMax_K).toBeGreaterThanOrEqual(faceMean_K);
  }
}

function expectClosed({ corners }: StintResult): void {
  for (const { ledger_J } of corners) {
    if (Math.abs(ledger_J.residual) > ROUNDING_J) expect(unexplained(ledger_J)).toBeLessThanOrEqual(CLOSES);
  }
}

/** The coldest air of the stint and the coldest thing it starts with [K] */
function coldest_K(scenario: Scenario, axle: CornerResult['axle']): number {
  const { disc_C, pad_C, caliper_C } = scenario.initial[axle];
  const starts = [disc_C, pad_C, caliper_C].map((start) => start ?? scenario.conditions.ambient_C);
  const airs = legsOf(scenario).map((leg) => leg.scenario.conditions.ambient_C);
  return kelvin(Math.min(...starts, ...airs));
}

function expectNothingColder(scenario: Scenario, { corners }: StintResult): void {
  for (const corner of corners) {
    const floor_K = coldest_K(scenario, corner.axle) - UNDER_K;
    for (const [name, column] of bodiesOf(corner)) {
      const lowest_K = column.reduce((low, T) => Math.min(low, T));
      expect(lowest_K, `${corner.axle} ${corner.side} ${name}`).toBeGreaterThanOrEqual(floor_K);
    }
  }
}

describe('whatever a person may write into a scenario', () => {
  it('the parser takes what fits together', () => {
    const refused = fc
      .sample(anyInput, { numRuns: 300, seed: 3 })
      .map((input) => parseScenario(input))
      .filter(({ ok }) => !ok);
    expect(refused).toEqual([]);
  });

  it(
    'a stint is finite, its books close, and nothing falls below the coldest air and start',
    () => {
      expectLaw(1000, (scenario) => {
        const result = driven(scenario, { driven: scenario });
        expectFinite(result);
        expectClosed(result);
        expectNothingColder(scenario, result);
      });
    },
    LAW_TIMEOUT,
  );
});

/** Any place of any slider. */
const sliders: fc.Arbitrary<Changes> = fc.record({
  'conditions.ambient_C': within('conditions.ambient_C'),
  'conditions.altitude_m': within('conditions.altitude_m'),
  'conditions.humidity_pct': within('conditions.humidity_pct'),
  'conditions.wet': fc.boolean(),
  'conditions.spray_g_per_m3': within('conditions.spray_g_per_m3'),
  'blanking_pct.front': within('blanking_pct.front'),
  'blanking_pct.rear': within('blanking_pct.rear'),
  'traffic.gap_m': fc.option(within('traffic.gap_m')),
  'stint.laps': fc.integer({ min: 2, max: 40 }),
});

it('wherever the sliders stand, a driven stint is finite and its books close', () => {
  fc.assert(
    fc.property(sliders, (changes) => {
      const result = driven(changed(changes));
      expectFinite(result);
      expectClosed(result);
    }),
    { numRuns: 25, seed: 20 },
  );
});
