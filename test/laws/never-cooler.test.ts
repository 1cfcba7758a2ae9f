import { describe, expect, it } from 'vitest';
import type { Changes } from '../../engine/scenario/override.ts';
import type { Scenario } from '../../engine/scenario/schema.ts';
import type { StintResult } from '../../engine/stint/result.ts';
import { shipped } from '../support/shipped.ts';
import { corner, held, settled } from '../support/stints.ts';

/** A run may be this much cooler than the one before it and still count as equal [K] */
const EQUAL_K = 0.05;
const axles = ['front', 'rear'] as const;

function warmth(result: StintResult): number[] {
  return axles.flatMap((axle) => {
    const lap = settled(result, axle);
    return [corner(result, axle).facePeak_K, lap.faceMax_K, lap.faceMean_K];
  });
}

/** Each change in its turn gives no cooler front or rear, by peak and by mean, than the change before it. */
function expectNeverCooler(scenario: Scenario, changes: Changes[]): void {
  const runs = changes.map((change) => warmth(held(change, scenario)));
  runs.slice(1).forEach((run, i) => {
    run.forEach((T, j) => {
      const what = `${JSON.stringify(changes[i])} to ${JSON.stringify(changes[i + 1])}, value ${j}`;
      expect(T - runs[i]![j]!, what).toBeGreaterThanOrEqual(-EQUAL_K);
    });
  });
}

const span = (from: number, to: number, step: number): number[] =>
  Array.from({ length: Math.round((to - from) / step) + 1 }, (_, i) => from + i * step);

describe.each(shipped)('under the speed it had before, %s is never cooler', (_, scenario) => {
  it.each(axles)('with more tape on the %s', (axle) => {
    expectNeverCooler(
      scenario,
      span(0, 100, 12.5).map((pct) => ({ [`blanking_pct.${axle}`]: pct })),
    );
  });

  it('with more tape on both, in hotter air', () => {
    const changes = span(0, 100, 25).map((pct, i) => ({
      'blanking_pct.front': pct,
      'blanking_pct.rear': pct,
      'conditions.ambient_C': 10 + i,
    }));
    expectNeverCooler(scenario, changes);
  });

  it.each([0, 85])('at %i %% tape in hotter air', (pct) => {
    const tape = { 'blanking_pct.front': pct, 'blanking_pct.rear': pct };
    expectNeverCooler(
      scenario,
      span(-20, 50, 35).map((ambient_C) => ({ ...tape, 'conditions.ambient_C': ambient_C })),
    );
  });

  it.each([0, 85])('at %i %% tape in thinner air', (pct) => {
    const tape = { 'blanking_pct.front': pct, 'blanking_pct.rear': pct };
    expectNeverCooler(
      scenario,
      span(0, 5000, 2500).map((altitude_m) => ({ ...tape, 'conditions.altitude_m': altitude_m })),
    );
  });

  it.each([0, 85])('at %i %% tape closer behind another car', (pct) => {
    const tape = { 'blanking_pct.front': pct, 'blanking_pct.rear': pct };
    const gaps = [null, 200, 40, 10, 2];
    expectNeverCooler(
      scenario,
      gaps.map((gap_m) => ({ ...tape, 'traffic.gap_m': gap_m })),
    );
  });

  it('a shorter time behind another car', () => {
    const gaps = [null, 8, 1, 0.25];
    expectNeverCooler(
      scenario,
      gaps.map((gap_s) => ({ 'traffic.gap_s': gap_s })),
    );
  });
});
