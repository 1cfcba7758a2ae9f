import { describe, expect, it } from 'vitest';
import { dragForce } from '../../../engine/car/longitudinal.ts';
import { topSpeedLoss } from '../../../engine/car/top-speed.ts';
import { ductMachRange, machThrough, narrowestArea } from '../../../engine/duct/duct-numbers.ts';
import { hoseReynoldsRange } from '../../../engine/duct/hose.ts';
import { dragAreaCoolingAir, dragCoolingAir, powerCoolingAir } from '../../../engine/duct/mouth-drag.ts';
import type { Changes } from '../../../engine/scenario/override.ts';
import type { Scenario } from '../../../engine/scenario/schema.ts';
import { shippedStint } from '../../../engine/scenario/library.ts';
import { airPath } from '../../../engine/stint/corner-air.ts';
import { cornersOf } from '../../../engine/stint/corners.ts';
import { airRows } from '../../../engine/stint/air-rows.ts';
import { axleDuctCost, ductCost } from '../../../engine/stint/duct-cost.ts';
import { ductNumbers, ductPressures } from '../../../engine/stint/duct-pressures.ts';
import { clearAir } from '../../../engine/stint/legs.ts';
import { kmhFromMps, mpsFromKmh } from '../../../engine/units.ts';
import { changed } from '../../support/stints.ts';
import { heavyFront } from './corners.ts';

const open = { 'blanking_pct.front': 0, 'blanking_pct.rear': 0 };
const corners = (scenario: Scenario) => cornersOf(scenario);
const costs = (changes: Changes, base?: Scenario) => {
  const scenario = changed(changes, base);
  return corners(scenario).map((corner) => ductCost(corner, scenario));
};

describe('the drag of cooling air', () => {
  it('is that of its drag area', () => {
    const [flow, speed_mps, density] = [0.2, 50, 1.15];
    const area_m2 = dragAreaCoolingAir(flow, speed_mps, density);
    expect(dragForce(density, area_m2, speed_mps)).toBeCloseTo(dragCoolingAir(flow, speed_mps), 12);
    expect(powerCoolingAir(flow, speed_mps)).toBeCloseTo(dragCoolingAir(flow, speed_mps) * speed_mps, 12);
  });

  it('grows with the square of speed along the rows of a corner', () => {
    const scenario = changed({});
    const rows = airRows(corners(scenario)[0]!, scenario);
    expect(rows[10]!.drag_N / rows[5]!.drag_N).toBeCloseTo(4, 8);
    expect(rows[10]!.dragPower_W / rows[5]!.dragPower_W).toBeCloseTo(8, 8);
    expect(rows[10]!.drag_N).toBeCloseTo(rows[10]!.ductFlow_kgps * rows[10]!.speed_mps, 12);
  });

  // Common practice, no source: a front pair of open ducts costs at most about 28 N and 1.5 kW at 200 km/h.
  it('of an open front pair is some 28 N and 1.5 kW at 200 km/h (common practice, no source)', () => {
    const scenario = changed(open);
    const [front] = corners(scenario);
    const row = airRows(front!, scenario).find((one) => Math.round(kmhFromMps(one.speed_mps)) === 200)!;
    expect(2 * row.drag_N).toBeGreaterThan(20);
    expect(2 * row.drag_N).toBeLessThan(30);
    expect((2 * row.dragPower_W) / 1000).toBeGreaterThan(1.1);
    expect((2 * row.dragPower_W) / 1000).toBeLessThan(1.7);
  });
});

describe('what a duct costs at top speed', () => {
  const car = { power_W: 335e3, efficiency: 0.9, dragArea_m2: 1.05, rolling: 0, mass_kg: 1300 };
  const air = { density_kgpm3: 1.2, powerFactor: 1, dragFactor: 1 };

  it('is a third of the added share of drag without rolling resistance', () => {
    const top_mps = Math.cbrt((335e3 * 0.9) / (0.5 * 1.2 * 1.05));
    expect(topSpeedLoss(car, air, 0.001) / (top_mps * (0.001 / 1.05 / 3))).toBeCloseTo(1, 2);
    expect(topSpeedLoss(car, air, 0)).toBe(0);
  });

  it('falls with tape and is nothing for a shut mouth', () => {
    const loss = (blanking_pct: number): number =>
      costs({ 'blanking_pct.front': blanking_pct })[0]!.topSpeedLoss_mps;
    expect(loss(50)).toBeLessThan(loss(0));
    expect(loss(100)).toBe(0);
    expect(kmhFromMps(loss(0))).toBeGreaterThan(0.3);
    expect(kmhFromMps(loss(0))).toBeLessThan(1);
  });

  it('is told for axles with a duct only, and twice for both corners', () => {
    const [front, rear] = costs({}, shippedStint('club-evening'));
    expect(rear).toBeNull();
    const pair = axleDuctCost([{ side: 'both', ductCost: front! }])!;
    expect(pair.drag_N).toBe(2 * front!.drag_N);
    const sides = (['left', 'right'] as const).map((side) => ({ side, ductCost: front! }));
    expect(axleDuctCost(sides)).toEqual(pair);
    expect(axleDuctCost([{ side: 'both', ductCost: null }])).toBeNull();
  });
});

describe('the pressures and numbers of a duct', () => {
  it('add up to the ram pressure at 150 km/h', () => {
    const scenario = changed({ 'brakes.front.duct.clearance_mm': 40 });
    const { speed_mps, ram_Pa, ...parts } = ductPressures(corners(scenario)[0]!, scenario)!;
    expect(speed_mps).toBe(mpsFromKmh(150));
    expect(Object.values(parts).reduce((sum, part) => sum + part, 0)).toBeCloseTo(ram_Pa, 8);
    expect(parts.flattened_Pa).toBeGreaterThan(0);
    expect(corners(scenario).map((corner) => ductPressures(corner, scenario) !== null)).toEqual([true, true]);
  });

  it('stay within the ranges of the laws on the shipped cars at top speed', () => {
    for (const scenario of [changed(open), changed({}), shippedStint('club-evening')]) {
      for (const corner of corners(scenario).filter(({ brake }) => brake.duct)) {
        const { mach, hoseReynolds } = ductNumbers(corner, scenario, mpsFromKmh(270), clearAir)!;
        expect(mach).toBeGreaterThan(0.02);
        expect(mach).toBeLessThan(ductMachRange.high);
        expect(hoseReynolds).toBeGreaterThan(hoseReynoldsRange.low);
        expect(hoseReynolds).toBeLessThan(hoseReynoldsRange.high);
      }
    }
  });

  it('are those of the air behind the car ahead, as its flows are', () => {
    const scenario = changed(open);
    const corner = corners(scenario)[0]!;
    const close = { ...clearAir, gap_m: 6, share: 1 };
    const [alone, behind] = [clearAir, close].map((gap) => ({
      ...ductNumbers(corner, scenario, mpsFromKmh(200), gap)!,
      flow_kgps: airPath({ corner, scenario, gap }).duct_kgps[10]!,
    }));
    // flow goes with the root of the pressure
    expect(behind!.flow_kgps).toBeLessThan(0.95 * alone!.flow_kgps);
    const thinner = behind!.flow_kgps / alone!.flow_kgps;
    expect(behind!.hoseReynolds / alone!.hoseReynolds).toBeCloseTo(thinner, 6);
    expect(behind!.mach / alone!.mach).toBeCloseTo(thinner, 6);
  });

  it('have the narrowest place in the mouth, the hoses or their flattened part', () => {
    const hoses_m2 = 2 * (Math.PI / 4) * 0.076 ** 2;
    expect(narrowestArea(heavyFront, 1)).toBeCloseTo(hoses_m2, 12);
    expect(narrowestArea(heavyFront, 0.3)).toBeCloseTo(0.3 * 0.011, 12);
    const flat = { ...heavyFront, pinch: { flattened: 0.5, length_m: 0.1 } };
    expect(narrowestArea(flat, 1)).toBeCloseTo(0.75 * hoses_m2, 12);
  });

  // 340.294 m/s at 15 °C: U.S. Standard Atmosphere, 1976.
  it('have Mach 1 at the speed of sound', () => {
    const air = { density_kgpm3: 1.225, air_K: 288.15 };
    expect(machThrough(1.225 * 0.01 * 340.294, 0.01, air)).toBeCloseTo(1, 4);
  });
});
