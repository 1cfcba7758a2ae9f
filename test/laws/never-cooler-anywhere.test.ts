import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Changes } from '../../engine/scenario/override.ts';
import type { Brake, Scenario } from '../../engine/scenario/schema.ts';
import type { StintResult } from '../../engine/stint/result.ts';
import { expectLaw, inOtherAir, LAW_TIMEOUT, twoOf } from '../support/law-runs.ts';
import { changed } from '../support/stints.ts';
import { anyWarmScenario } from '../support/random-scenario.ts';

/** A lap may be this much cooler and still count as equal [K] */
const EQUAL_K = 0.05;
const places = ['front', 'rear', 'front_left', 'front_right', 'rear_left', 'rear_right'] as const;

/**
 * Each lap's face peak and mean, at each corner. Not each sample: where iron passes its transformation a face in hotter air may
 * be a kelvin behind in time, and so cooler at one moment, on the way to the higher peak.
 */
function expectNoCooler(cool: StintResult, warm: StintResult): void {
  cool.corners.forEach(({ axle, side, laps }, c) => {
    laps.forEach(({ lap, faceMax_K, faceMean_K }, i) => {
      const after = warm.corners[c]!.laps[i]!;
      const where = `${axle} ${side}, lap ${lap}`;
      expect(after.faceMax_K - faceMax_K, where).toBeGreaterThanOrEqual(-EQUAL_K);
      expect(after.faceMean_K - faceMean_K, where).toBeGreaterThanOrEqual(-EQUAL_K);
    });
  });
}

/** Every blanking that a stint gives, axles' and sides'. */
const taped = (scenario: Scenario, pct: number): Changes =>
  Object.fromEntries(
    places
      .filter((place) => scenario.blanking_pct[place] !== undefined)
      .map((place) => [`blanking_pct.${place}`, pct]),
  );

/** The mouth drives air in: where the wheel's pressure is the higher one, air leaves by the mouth, and tape keeps it in. */
function drivenIn(scenario: Scenario): Scenario {
  const brakeOf = (brake: Brake): Brake => {
    const { duct, wheel } = brake;
    return duct ? { ...brake, duct: { ...duct, recovery: Math.max(duct.recovery, wheel.exit_cp) } } : brake;
  };
  const { front, rear } = scenario.brakes;
  const sides = Object.entries(scenario.sides).map(([side, brake]) => [side, brakeOf(brake as Brake)]);
  return {
    ...scenario,
    brakes: { front: brakeOf(front), rear: brakeOf(rear) },
    sides: Object.fromEntries(sides) as Scenario['sides'],
  };
}

/** Straight behind: beside the line a wake has to widen before it reaches the mouth, and a longer gap may be the warmer one. */
const straightBehind = (scenario: Scenario): Scenario => changed({ 'traffic.offset_m': 0 }, scenario);

const asItIs = (scenario: Scenario): Scenario => scenario;

interface Law {
  title: string;
  key: string;
  /** Which of two values is the cooler one. */
  cooler: 'low' | 'high';
  changes: (scenario: Scenario, value: number) => Changes;
  given?: (scenario: Scenario) => Scenario;
}

const alone = (key: string) => (_: Scenario, value: number) => ({ [key]: value });

const laws: Law[] = [
  { title: 'more tape', key: 'blanking_pct.front', cooler: 'low', changes: taped, given: drivenIn },
  {
    title: 'hotter air',
    key: 'conditions.ambient_C',
    cooler: 'low',
    changes: alone('conditions.ambient_C'),
  },
  {
    title: 'thinner air, higher up',
    key: 'conditions.altitude_m',
    cooler: 'low',
    changes: alone('conditions.altitude_m'),
  },
  {
    title: 'thinner air, more humid',
    key: 'conditions.humidity_pct',
    cooler: 'low',
    changes: alone('conditions.humidity_pct'),
  },
  {
    title: 'a smaller gap in metres',
    key: 'traffic.gap_m',
    cooler: 'high',
    changes: (_, gap_m) => ({ 'traffic.gap_m': gap_m, 'traffic.gap_s': null }),
    given: straightBehind,
  },
  {
    title: 'a smaller gap in seconds',
    key: 'traffic.gap_s',
    cooler: 'high',
    changes: (_, gap_s) => ({ 'traffic.gap_s': gap_s, 'traffic.gap_m': null }),
    given: straightBehind,
  },
  {
    title: 'less spray',
    key: 'conditions.spray_g_per_m3',
    cooler: 'high',
    changes: alone('conditions.spray_g_per_m3'),
  },
];

/** On a held trace, from a start that is nowhere colder than the air: a colder thing is warmed by air. */
describe('at the speed and heat it had before, no lap of any scenario is cooler', () => {
  it.each(laws)(
    'in $title',
    ({ key, cooler, changes, given = asItIs }) => {
      const pairs = fc.tuple(anyWarmScenario, twoOf(key));
      expectLaw(
        60,
        ([drawn, [low, high]]) => {
          const scenario = given(drawn);
          const at = (value: number): StintResult => inOtherAir(scenario, changes(scenario, value));
          if (cooler === 'low') expectNoCooler(at(low), at(high));
          else expectNoCooler(at(high), at(low));
        },
        pairs,
      );
    },
    LAW_TIMEOUT,
  );
});
