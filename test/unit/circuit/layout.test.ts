import { describe, expect, it } from 'vitest';
import type { Segment } from '../../../engine/circuit/circuit.ts';
import { layoutCircuit } from '../../../engine/circuit/layout.ts';

const circuit = (segments: Segment[]) => ({ id: 't', name: 'T', purpose: '', segments });
const straight = (length_m: number, slope_pct = 0): Segment => ({ length_m, radius_m: null, slope_pct });
const arc = (length_m: number, radius_m: number, name?: string): Segment => {
  const segment: Segment = { length_m, radius_m, turn: 'left', slope_pct: 0 };
  return name === undefined ? segment : { ...segment, name };
};

describe('layoutCircuit', () => {
  const layout = layoutCircuit(circuit([straight(300), arc(90, 60, 'turn 1'), straight(300, 2)]));
  const at = (values: Float64Array, s: number): number => values[Math.round(s / layout.step_m)]!;

  it('makes a uniform grid that ends one lap on', () => {
    expect(layout.distance_m.at(-1)).toBeCloseTo(690, 9);
    expect(layout.step_m).toBeCloseTo(3, 1);
  });

  it('lets the curvature grow over the transition instead of stepping', () => {
    expect(at(layout.curvature_pm, 286)).toBe(0);
    expect(at(layout.curvature_pm, 300)).toBeCloseTo(0.5 / 60, 6);
    expect(at(layout.curvature_pm, 345)).toBeCloseTo(1 / 60, 9);
  });

  it('keeps the total turning of the arcs', () => {
    const sum = layout.curvature_pm.slice(1).reduce((a, b) => a + b, 0) * layout.step_m;
    expect(sum).toBeCloseTo(90 / 60, 3);
  });

  it('turns right with a negative curvature', () => {
    const right = layoutCircuit(circuit([straight(100), { ...arc(100, 50), turn: 'right' }]));
    expect(Math.min(...right.curvature_pm)).toBeCloseTo(-1 / 50, 9);
  });

  it('states slope as rise over run and height over the line', () => {
    expect(at(layout.slope, 540)).toBeCloseTo(0.02, 9);
    expect(layout.height_m.at(-1)).toBeCloseTo(6, 9);
  });

  it('holds the grip at 1 where a segment names none', () => {
    expect(new Set(layout.grip.map((g) => +g.toFixed(9)))).toEqual(new Set([1]));
    const patched = layoutCircuit(circuit([straight(200), { ...straight(200), grip_factor: 0.8 }]));
    expect(Math.min(...patched.grip)).toBeCloseTo(0.8, 9);
  });

  it('lists a corner with its middle and where the road starts and stops turning', () => {
    expect(layout.corners).toEqual([{ name: 'turn 1', at_m: 345, from_m: 288, to_m: 402 }]);
  });

  it('joins neighbouring arcs of one name, with the apex in the tightest', () => {
    const twoRadii = layoutCircuit(circuit([straight(200), arc(40, 90, 'turn 1'), arc(60, 40, 'turn 1')]));
    expect(twoRadii.corners).toEqual([{ name: 'turn 1', at_m: 270, from_m: 188, to_m: 312 }]);
  });
});
