import { describe, expect, it } from 'vitest';
import { ductLossFreeArea, ductResistance } from '../../../engine/duct/duct-resistance.ts';
import { frictionCompressedHose } from '../../../engine/duct/hose.ts';
import { lossBendRennels } from '../../../engine/duct/loss-bend.ts';
import { heavyFront } from './corners.ts';

const oneHose = { ...heavyFront, mouthArea_m2: 0.003, hoses: 1, bends: [] };
const hose_m2 = (Math.PI / 4) * 0.076 ** 2;

describe('the resistance of a duct', () => {
  it('of two hoses and twice the mouth is that of one at half the flow', () => {
    const two = { ...oneHose, hoses: 2, mouthArea_m2: 2 * oneHose.mouthArea_m2 };
    expect(ductLossFreeArea(two, 0.6)).toBeCloseTo(2 * ductLossFreeArea(oneHose, 0.6), 12);
  });

  it('counts wall friction once where the hose bends', () => {
    const angle_rad = Math.PI / 3;
    const bent = ductResistance({ ...oneHose, bends: [{ angle_rad, radiusRatio: 1.5 }] });
    const straight_m = 1.5 - 0.076 * 1.5 * angle_rad;
    expect(bent.friction_pm4 * hose_m2 ** 2).toBeCloseTo((0.06 * straight_m) / 0.076, 10);
    expect(bent.bends_pm4 * hose_m2 ** 2).toBeCloseTo(lossBendRennels(angle_rad, 1.5, 0.06), 10);
  });

  it('bends a compressed hose at the friction it has when compressed', () => {
    const bend = { angle_rad: Math.PI / 2, radiusRatio: 1.5 };
    const squeezed = ductResistance({ ...oneHose, compression: 0.15, bends: [bend] });
    const friction = frictionCompressedHose(0.06, 0.15);
    expect(friction).toBeGreaterThan(0.07);
    expect(squeezed.bends_pm4 * hose_m2 ** 2).toBeCloseTo(lossBendRennels(Math.PI / 2, 1.5, friction), 10);
  });

  it('has no wall friction left where its bends take up more than the hose', () => {
    const bend = { angle_rad: Math.PI, radiusRatio: 4 };
    expect(ductResistance({ ...oneHose, bends: [bend, bend] }).friction_pm4).toBe(0);
  });

  it('holds an expansion behind a small mouth and a contraction behind a large one', () => {
    const small = ductResistance(oneHose).areaChange_pm4;
    expect(small * 0.003 ** 2).toBeCloseTo((1 - 0.003 / hose_m2) ** 2, 10);
    const large = ductResistance({ ...oneHose, mouthArea_m2: 2 * hose_m2 }).areaChange_pm4;
    expect(large * hose_m2 ** 2).toBeCloseTo(0.2973, 4);
  });

  it('of a flattened part is that part’s friction, and an area change into and out of it', () => {
    const parts = ductResistance({ ...oneHose, pinch: { flattened: 0.6, length_m: 0.5 } });
    const round = ductResistance(oneHose);
    // Stadium of constant perimeter: area and hydraulic diameter both 0.84 of the round hose's at 0.6.
    const flat_m2 = 0.84 * hose_m2;
    const inAndOut = 0.5 * 0.16 ** 0.75 + 0.16 ** 2;
    expect(parts.flattened_pm4 * flat_m2 ** 2).toBeCloseTo((0.06 * 0.5) / (0.84 * 0.076) + inAndOut, 10);
    expect(parts.friction_pm4 / round.friction_pm4).toBeCloseTo(1 - 0.5 / 1.5, 10);
    expect({ ...parts, friction_pm4: 0, flattened_pm4: 0 }).toEqual({ ...round, friction_pm4: 0 });
  });

  it('of a part that is hardly flattened is that of the round hose', () => {
    const whole = (geometry: object): number => ductLossFreeArea({ ...oneHose, ...geometry }, 1);
    const hardly = whole({ pinch: { flattened: 0.999, length_m: 0.4 } });
    expect(hardly / whole({})).toBeCloseTo(1, 4);
  });

  it('counts no more flattened length than there is hose', () => {
    const pinched = (length_m: number) => ductResistance({ ...oneHose, pinch: { flattened: 0.5, length_m } });
    expect(pinched(5)).toEqual(pinched(1.5));
    expect(pinched(1.5).friction_pm4).toBe(0);
    expect(pinched(1.5).flattened_pm4).toBeGreaterThan(3 * pinched(0.2).flattened_pm4);
  });

  it('leaves no opening where there is no mouth or it is shut', () => {
    expect(ductLossFreeArea(oneHose, 0)).toBe(0);
    expect(ductLossFreeArea({ ...oneHose, mouthArea_m2: 0, hoses: 0, hoseDiameter_m: 0 }, 1)).toBe(0);
  });
});
