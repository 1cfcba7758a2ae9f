import { describe, expect, it } from 'vitest';
import { depthOfHoles } from '../../../engine/duct/blank-keys.ts';
import { conductanceBlankedMouth } from '../../../engine/duct/loss-mouth.ts';
import {
  conductanceMouth,
  conductancePerforatedMouth,
  lossThickEdged,
  thickEdge,
} from '../../../engine/duct/loss-perforated.ts';

describe('thick-edged openings between two ducts', () => {
  // the same law worked out apart from this program, with a wall friction of 0.02 l/d in the openings
  it.each([
    [0.1, 150.272],
    [0.2, 31.5539],
    [0.3, 11.5754],
    [0.4, 5.2595],
    [0.5, 2.6448],
    [0.6, 1.3905],
    [0.7, 0.7331],
    [0.8, 0.369],
    [0.9, 0.1595],
  ])('open by %d lose %d as deep as wide', (f, loss) => {
    expect(lossThickEdged({ ahead: f, behind: f }, 1) + 0.02 / f ** 2).toBeCloseTo(loss, loss > 100 ? 2 : 3);
  });

  it('lose less than a sharp edge the deeper they are, down to entrance and exit', () => {
    const losses = [0.05, 0.5, 0.8, 1.2, 2, 2.4, 3].map((depth) =>
      lossThickEdged({ ahead: 0.4, behind: 0.4 }, depth),
    );
    expect(losses).toEqual(losses.toSorted((a, b) => b - a));
    expect(losses.at(-1)).toBeCloseTo((0.5 * 0.6 ** 0.75 + 0.36) / 0.16, 12);
    expect(thickEdge(3)).toBe(0);
  });
});

describe('a perforated blank over a mouth', () => {
  it('is the open mouth where it covers nothing, and shut where it covers all', () => {
    expect(conductancePerforatedMouth(1, 0.2)).toBeCloseTo(conductanceBlankedMouth(1), 12);
    expect(conductancePerforatedMouth(0, 0.2)).toBe(0);
  });

  it('lets the more air through the less it covers and the thicker it is beside its holes', () => {
    const open = [0.1, 0.2, 0.3, 0.5, 0.8, 1].map((f) => conductancePerforatedMouth(f, 0.2));
    expect(open).toEqual(open.toSorted((a, b) => a - b));
    expect(conductancePerforatedMouth(0.3, 0.8)).toBeGreaterThan(conductancePerforatedMouth(0.3, 0.1));
  });

  it('of 1.5 mm with 8 mm holes passes 3 % more than the same share behind a sharp edge', () => {
    const depth = depthOfHoles({ blank: 'perforated' });
    expect(depth).toBe(1.5 / 8);
    expect(conductanceMouth(0.3, depth) / conductanceMouth(0.3)).toBeCloseTo(1.031, 3);
    expect(conductanceMouth(0.3)).toBe(conductanceBlankedMouth(0.3));
  });
});
