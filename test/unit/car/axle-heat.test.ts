import { describe, expect, it } from 'vitest';
import { axleHeat, frontShareAt } from '../../../engine/car/axle-heat.ts';

const heat = {
  force_N: Float64Array.of(10, 20, 20),
  power_W: Float64Array.of(100, 400, 400),
  cumulative_J: Float64Array.of(0, 50, 250),
  total_J: 250,
};

describe('heat by axle', () => {
  it('adds up to the heat of all four brakes at every moment', () => {
    const lines = { front: Float64Array.of(1, 1.4, 1.4), rear: Float64Array.of(0.5, 1.1, 1.1) };
    const { front, rear } = axleHeat(heat, 0.6, lines);
    heat.cumulative_J.forEach((J, i) =>
      expect(0.6 * front.cumulative_J[i]! + 0.4 * rear.cumulative_J[i]!).toBeCloseTo(J, 9),
    );
    heat.power_W.forEach((W, i) =>
      expect(0.6 * front.power_W[i]! + 0.4 * rear.power_W[i]!).toBeCloseTo(W, 9),
    );
  });

  it('goes to the front by the balance where no line is pressed, and by the ratio of the lines where they are', () => {
    expect(frontShareAt(0.6, { front: 0, rear: 0 })).toBe(0.6);
    expect(frontShareAt(0.5, { front: 3, rear: 1 })).toBeCloseTo(0.75, 12);
  });

  it('is shared by the balance where both lines are at their means', () => {
    const lines = { front: Float64Array.of(1, 2, 2), rear: Float64Array.of(1, 2, 2) };
    const { front } = axleHeat(heat, 0.6, lines);
    front.cumulative_J.forEach((J, i) => expect(J).toBeCloseTo(heat.cumulative_J[i]!, 9));
  });

  it('comes to the balance over the lap, whatever one line shows too little of', () => {
    const lines = { front: Float64Array.of(1, 1.5, 1.5), rear: Float64Array.of(1.1, 0.7, 0.7) };
    const { front, rear } = axleHeat(heat, 0.6, lines);
    expect(front.cumulative_J.at(-1)).toBeCloseTo(heat.total_J, 9);
    expect(rear.cumulative_J.at(-1)).toBeCloseTo(heat.total_J, 9);
    expect(front.power_W[1]! / heat.power_W[1]!).toBeGreaterThan(1.01);
    expect(rear.power_W[0]! / heat.power_W[0]!).toBeGreaterThan(1.1);
  });

  it('is all the front’s where the rear line is at rest', () => {
    const lines = { front: Float64Array.of(1, 1, 1), rear: new Float64Array(3) };
    expect(axleHeat(heat, 0.6, lines).rear.cumulative_J.at(-1)).toBe(0);
  });
});
