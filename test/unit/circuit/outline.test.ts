import { expect, it } from 'vitest';
import type { Segment } from '../../../engine/circuit/circuit.ts';
import { layoutCircuit } from '../../../engine/circuit/layout.ts';
import { outlineOf } from '../../../engine/circuit/outline.ts';

const side: Segment = { length_m: 400, radius_m: null, slope_pct: 0 };
const half: Segment = { ...side, length_m: 200 };
const bend: Segment = { length_m: 100 * Math.PI, radius_m: 100, turn: 'left', slope_pct: 0 };
const oval = layoutCircuit({ id: 't', name: 'T', purpose: '', segments: [half, bend, side, bend, half] });

it('draws an oval that closes by itself', () => {
  const { x_m, y_m, closing_m, turning_rad } = outlineOf(oval);
  expect(closing_m).toBeLessThan(0.1);
  expect(turning_rad).toBeCloseTo(2 * Math.PI, 2);
  expect(Math.abs(Math.max(...y_m) - Math.min(...y_m) - 200)).toBeLessThan(1);
  expect(Math.abs(Math.max(...x_m) - Math.min(...x_m) - 600)).toBeLessThan(1);
});

it('ends where it starts, whatever was left to close', () => {
  const open = layoutCircuit({ id: 't', name: 'T', purpose: '', segments: [side, bend, side] });
  const { x_m, y_m } = outlineOf(open);
  expect(x_m.at(-1)).toBeCloseTo(0, 9);
  expect(y_m.at(-1)).toBeCloseTo(0, 9);
});

it('sets off in the heading it is given', () => {
  const { x_m, y_m } = outlineOf(oval, 90);
  expect(y_m[10]! - y_m[0]!).toBeGreaterThan(25);
  expect(Math.abs(x_m[10]! - x_m[0]!)).toBeLessThan(0.1);
});
