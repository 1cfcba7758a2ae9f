import { describe, expect, it } from 'vitest';
import { isLeaf } from '../../engine/scenario/keys.ts';
import { valueAt } from '../../engine/scenario/tree.ts';
import { cars, defaultScenario, withCar } from '../../engine/scenario/library.ts';
import { override } from '../../engine/scenario/override.ts';
import { parseScenario } from '../../engine/scenario/parse.ts';
import { problemLine } from '../../engine/scenario/problem.ts';
import type { Scenario } from '../../engine/scenario/schema.ts';

/** What nobody reads off a drawing or a label: a judgement, on every axle that has the part. */
const ofBrake = [
  'disc.emissivity_track disc.emissivity_other bell.joint_W_per_K bell.hub_W_per_K bell.emissivity',
  'pad.conductivity_W_per_mK pad.disc_share pad.drag_N pad.running_gap_mm',
  'caliper.piston_W_per_K caliper.mount_W_per_K caliper.emissivity fluid.coupling_W_per_K',
  'wheel.crossflow wheel.still_W_per_m2K wheel.covered wheel.open_pct wheel.exit_cp',
]
  .join(' ')
  .split(' ');
const ofVented = ['disc.vane_enhancement', 'disc.vane_loss', 'disc.pumping'];
const ofDucted = [
  'duct.recovery duct.hose_friction duct.hose_compression_pct duct.leak_cm2',
  'wheel.duct_on_face caliper.duct_wash',
]
  .join(' ')
  .split(' ');
const ofCar = [
  'car.brake_balance_front car.engine_braking_kW car.rolling_coefficient car.drag_area_m2',
  'car.braking_slip car.rotational_factor traffic.wake_strength',
]
  .join(' ')
  .split(' ');

const judged = ({ brakes }: Scenario): string[] => [
  ...ofCar,
  ...(['front', 'rear'] as const).flatMap((axle) => {
    const { disc, duct } = brakes[axle];
    const parts = [ofBrake, disc.kind === 'vented' ? ofVented : [], duct ? ofDucted : []].flat();
    return parts.map((part) => `brakes.${axle}.${part}`);
  }),
];

const lines = (input: unknown): string[] => {
  const parsed = parseScenario(input);
  return parsed.ok ? [] : parsed.problems.map(problemLine);
};
const doubt = (key: string, low: number, high: number): object => ({
  doubt: { [key]: { low, high, reason: 'a test' } },
});

describe.each(cars.map(({ id }) => [id, withCar(defaultScenario(), id)] as const))(
  'the %s car',
  (_, scenario) => {
    it('doubts everything that is a judgement, and nothing else', () => {
      expect(Object.keys(scenario.doubt).sort()).toEqual(judged(scenario).sort());
    });

    it.each(Object.entries(scenario.doubt))('doubts %s around what is likely, for a reason', (key, range) => {
      const likely = valueAt(scenario, key);
      if (likely !== null) {
        expect(range.low).toBeLessThanOrEqual(likely as number);
        expect(range.high).toBeGreaterThanOrEqual(likely as number);
      }
      expect(range.low).toBeLessThan(range.high);
      expect(range.reason.length).toBeGreaterThan(10);
      expect(isLeaf(key)).toBe(true);
    });

    it('is a whole scenario', () => {
      expect(lines(scenario)).toEqual([]);
    });
  },
);

describe('another car', () => {
  it('brings its own doubts and keeps those about the day and the traffic', () => {
    const light = withCar(defaultScenario(), 'light');
    expect(light.doubt).toHaveProperty(['traffic.wake_strength']);
    expect(Object.keys(light.doubt)).not.toContain('brakes.rear.duct.recovery');
  });
});

describe('a doubt that cannot be', () => {
  it('names the end that the key does not allow', () => {
    expect(lines(doubt('brakes.front.duct.recovery', 0.05, 1.2))).toEqual([
      'doubt.brakes.front.duct.recovery.low: expected 0.1 to 1, got 0.05',
      'doubt.brakes.front.duct.recovery.high: expected 0.1 to 1, got 1.2',
    ]);
  });

  it('names the low that is above the high', () => {
    expect(lines(doubt('car.drag_area_m2', 1.2, 0.9))).toEqual([
      'doubt.car.drag_area_m2.low: expected at most high, 0.9, got 1.2',
    ]);
  });

  it.each(['car.name', 'conditions.wet', 'no.such.key', 'brakes.front'])('is one about %s', (key) => {
    expect(lines(doubt(key, 0, 1))).toEqual([
      `doubt.${key}: expected the key of a number of the scenario, got '${key}'`,
    ]);
  });
});

describe('a doubt is no obstacle', () => {
  it('to a value beyond it', () => {
    expect(override(defaultScenario(), { 'brakes.front.duct.recovery': 0.2 }).ok).toBe(true);
  });

  it('to an axle without the part it is about', () => {
    expect(lines({ brakes: { rear: { duct: null } } })).toEqual([]);
  });

  it('to heat that is shared by effusivity and area', () => {
    expect(override(defaultScenario(), { 'brakes.front.pad.disc_share': null }).ok).toBe(true);
  });
});
