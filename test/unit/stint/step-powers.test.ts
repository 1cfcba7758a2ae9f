import { describe, expect, it } from 'vitest';
import { defaultScenario, withCircuit } from '../../../engine/scenario/library.ts';
import { heatCurve, stepPowers } from '../../../engine/stint/step-powers.ts';
import { driven } from '../../support/stints.ts';

/** A profile whose intervals have these mean powers [W]; times of its nodes are uneven. */
function profileOf(power_W: number[]) {
  const time_s = Float64Array.from([0, ...power_W].map((_, i) => 0.1 * i + 0.03 * Math.sin(i)));
  const cumulative_J = new Float64Array(time_s.length);
  power_W.forEach((p, i) => {
    cumulative_J[i + 1] = cumulative_J[i]! + p * (time_s[i + 1]! - time_s[i]!);
  });
  const heat = { power_W: Float64Array.from(power_W), cumulative_J, total_J: cumulative_J.at(-1)! };
  return { heat, time_s };
}

const stop = [0, 0, 40e3, 300e3, 900e3, 860e3, 700e3, 300e3, 60e3, 0, 0, 5e3, 0, 0];
const ends = (step_s: number, until_s: number): Float64Array =>
  Float64Array.from({ length: Math.round(until_s / step_s) }, (_, i) => Math.min(until_s, (i + 1) * step_s));

type Powers = ReturnType<typeof stepPowers>;

/** Power at the start and at the end of each step by its parabola [W] */
const startOf = ({ power_W, rise_W, bend_W }: Powers, n: number): number =>
  power_W[n]! - rise_W[n]! / 2 + bend_W[n]!;
const endOf = ({ power_W, rise_W, bend_W }: Powers, n: number): number =>
  power_W[n]! + rise_W[n]! / 2 + bend_W[n]!;

describe('powers of steps', () => {
  const { heat, time_s } = profileOf(stop);
  const curve = heatCurve(heat, time_s);
  const until_s = time_s.at(-1)!;

  it.each([0.25, 0.04, 0.001])(
    'of %s s hold the heat of the whole profile, and none is negative',
    (step_s) => {
      const end_s = ends(step_s, until_s);
      end_s[end_s.length - 1] = until_s;
      const { power_W } = stepPowers(curve, end_s);
      const sum = end_s.reduce((total, t, n) => total + power_W[n]! * (t - (end_s[n - 1] ?? 0)), 0);
      expect(sum / heat.total_J).toBeCloseTo(1, 9);
      expect(Math.min(...power_W)).toBeGreaterThanOrEqual(0);
    },
  );

  it('that end at nodes have exactly the mean of their interval', () => {
    const { power_W } = stepPowers(curve, time_s.subarray(1));
    stop.forEach((mean, n) => expect(power_W[n]!).toBeCloseTo(mean, 4));
  });

  it('keep when the heat came: the first two moments of a long step are those of its short ones', () => {
    const fine_s = ends(0.001, 1.2);
    const { power_W } = stepPowers(curve, fine_s);
    const long = stepPowers(curve, Float64Array.of(1.2));
    const moment = (of: (w: number) => number): number =>
      fine_s.reduce((sum, t, n) => sum + (power_W[n]! * of((t - 0.0005) / 1.2)) / fine_s.length, 0);
    // of the parabola: the mean of its product with (w - 1/2) is rise/12, that with (1 - 6w + 6w²) is bend/5
    expect(long.rise_W[0]! / 12 / moment((w) => w - 0.5)).toBeCloseTo(1, 4);
    expect(long.bend_W[0]! / 5 / moment((w) => 1 - 6 * w + 6 * w * w)).toBeCloseTo(1, 4);
  });

  it('make no stairs: far shorter than an interval, each begins where the one before it ended', () => {
    const powers = stepPowers(curve, ends(0.0005, until_s - 0.01));
    const jumps = [...powers.power_W]
      .slice(1)
      .map((_, n) => Math.abs(startOf(powers, n + 1) - endOf(powers, n)));
    expect(Math.max(...jumps)).toBeLessThan(1000);
  });

  it('are nothing where the brake is off', () => {
    const powers = stepPowers(curve, time_s.subarray(1));
    for (const n of [0, 9, stop.length - 1]) expect(endOf(powers, n)).toBeCloseTo(0, 6);
  });
});

describe('a quarter of the step', () => {
  it.each(['sorrelby', 'long', 'slow'])(
    'moves the face peak of a lap by less than 0.3 K and of a stop by less than 0.5 K on %s',
    (id) => {
      const scenario = withCircuit(defaultScenario(), id);
      const [usual, finer] = [driven(scenario), driven(scenario, { stepScale: 0.25 })];
      usual.corners.forEach(({ laps, stops }, c) => {
        const other = finer.corners[c]!;
        laps.forEach(({ lap, faceMax_K }, i) => {
          expect(Math.abs(other.laps[i]!.faceMax_K - faceMax_K), `lap ${lap}`).toBeLessThan(0.3);
        });
        stops.forEach(({ lap, place, peakFace_K }, i) => {
          expect(Math.abs(other.stops[i]!.peakFace_K - peakFace_K), `lap ${lap}, ${place}`).toBeLessThan(0.5);
        });
      });
    },
  );
});
