import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createStepper, nodeTemperatures } from '../../engine/disc/stepper.ts';
import { WALLS } from '../../engine/disc/wall-grid.ts';
import { defaultScenario } from '../../engine/scenario/library.ts';
import type { Scenario } from '../../engine/scenario/schema.ts';
import { cornersOf, specOf } from '../../engine/stint/corners.ts';
import { drivenSlab, evenSteps, stillMap } from '../support/bare-slab.ts';
import { LAW_TIMEOUT } from '../support/law-runs.ts';
import { anyScenario } from '../support/random-scenario.ts';
import { shipped } from '../support/shipped.ts';
import { driven } from '../support/stints.ts';

describe('half the step', () => {
  it.each(shipped)('moves no face peak of a lap of %s by more than 1 K', (_, scenario) => {
    const usual = driven(scenario);
    const finer = driven(scenario, { stepScale: 0.5 });
    usual.corners.forEach((one, c) =>
      one.laps.forEach(({ lap, faceMax_K }, i) => {
        const moved = Math.abs(finer.corners[c]!.laps[i]!.faceMax_K - faceMax_K);
        expect(moved, `${one.axle}, lap ${lap}`).toBeLessThanOrEqual(1);
      }),
    );
  });
});

/** How far a column is at any of its own moments from one of finer steps, at most [K] */
function farthest(
  column: Float64Array,
  time_s: Float64Array,
  fine: { column: Float64Array; time_s: Float64Array },
) {
  let i = 0;
  return column.reduce((most, value, n) => {
    const t = time_s[n]!;
    while (i < fine.time_s.length - 2 && fine.time_s[i + 1]! < t) i++;
    const w = (t - fine.time_s[i]!) / (fine.time_s[i + 1]! - fine.time_s[i]!);
    return Math.max(most, Math.abs(value - fine.column[i]! - w * (fine.column[i + 1]! - fine.column[i]!)));
  }, 0);
}

describe('against steps an eighth as long', () => {
  it.each(shipped)(
    'faces of %s are within 1 K at every moment, within 0.5 K at the peak of every stop',
    (_, scenario) => {
      const usual = driven(scenario);
      const exact = driven(scenario, { stepScale: 1 / 8 });
      usual.corners.forEach(({ columns, stops, axle }, c) => {
        const there = exact.corners[c]!;
        const fine = { column: there.columns!.face_K, time_s: exact.clock.time_s };
        expect(farthest(columns!.face_K, usual.clock.time_s, fine), axle).toBeLessThanOrEqual(1);
        const moved = stops.map(({ peakFace_K }, i) => Math.abs(peakFace_K - there.stops[i]!.peakFace_K));
        expect(Math.max(...moved), axle).toBeLessThanOrEqual(0.5);
      });
    },
  );
});

type Power = Parameters<typeof evenSteps>[2];
const filled = (value: number): Float64Array => new Float64Array(2 * WALLS).fill(value);

/** Order at which the temperatures of all nodes close in on those of far shorter steps, over two halvings. */
function orderOf(temperatures: (stepScale: number) => Float64Array): number {
  const exact = temperatures(1 / 64);
  const error = (scale: number): number => Math.hypot(...temperatures(scale).map((T, i) => T - exact[i]!));
  return Math.log2(error(1) / error(1 / 4)) / 2;
}

const spec = specOf(cornersOf(defaultScenario())[0]!.brake, defaultScenario().car.loaded_radius_m);
const hold = { ...stillMap(12, 25), rim: filled(1), bell: filled(2), caliper: filled(2) };
/** Temperatures after so many even steps of a corner that starts hot, its wheelhouse never warm. */
function after(span_s: number, steps: number, power: Power, bridged: boolean): Float64Array {
  const stepper = createStepper(spec, { disc_K: 700, pad_K: 600, caliper_K: 380 });
  if (!bridged) stepper.bridge_WpK4 = 0;
  drivenSlab(stepper, evenSteps(span_s, steps, power), hold);
  return nodeTemperatures(stepper);
}
const smooth = {
  at: (t: number) => 4e5 * Math.sin((Math.PI * t) / 4) ** 2,
  sum: (t: number) => 2e5 * (t - (2 / Math.PI) * Math.sin((Math.PI * t) / 2)),
};
const rest = { at: () => 0, sum: () => 0 };

describe('the error falls with the step at third order', () => {
  it.each([
    ['while the heat of one stop rises and falls smoothly', 4, 40, smooth, true],
    [
      'while it cools, by steps whose error stands above the grain of the tables, with all in the tangents',
      480,
      10,
      rest,
      false,
    ],
  ])('%s', (_, span_s, steps, power, bridged) => {
    expect(orderOf((scale) => after(span_s, steps / scale, power, bridged))).toBeGreaterThan(2.5);
  });

  it('and what the tangents leave out, the radiation from edge to caliper, costs little over steps of 12 s', () => {
    const exact = after(480, 2560, rest, true);
    const errors = after(480, 40, rest, true).map((T, i) => Math.abs(T - exact[i]!));
    expect(Math.max(...errors)).toBeLessThan(0.05);
    expect(Math.max(...errors)).toBeGreaterThan(0.005);
  });
});

/** Errors below this are the tables' grain, whatever the steps [K] */
const GRAIN_K = 1e-3;

/** How much the error of each corner's last lap, by its mean face, falls from steps of a half to steps of a quarter. */
function fallsOf(scenario: Scenario): number[] {
  const at = (stepScale: number): number[] =>
    driven(scenario, { driven: scenario, stepScale }).corners.map(({ laps }) => laps.at(-1)!.faceMean_K);
  const exact = at(1 / 32);
  const errors = (stepScale: number): number[] => at(stepScale).map((T, c) => Math.abs(T - exact[c]!));
  const [halves, quarters] = [errors(1 / 2), errors(1 / 4)];
  return halves.flatMap((error, c) => (error > GRAIN_K ? [error / quarters[c]!] : []));
}

it(
  'half of short steps leave about a quarter of the error in most scenarios, on whole laps with stops',
  () => {
    const falls = fc.sample(anyScenario, { numRuns: 30, seed: 5 }).flatMap(fallsOf);
    falls.sort((a, b) => a - b);
    expect(falls.length).toBeGreaterThan(20);
    expect(falls[Math.floor(falls.length / 2)]).toBeGreaterThan(3);
  },
  LAW_TIMEOUT,
);
