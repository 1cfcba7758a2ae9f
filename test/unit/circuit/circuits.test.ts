import { describe, expect, it } from 'vitest';
import { brakeHeat } from '../../../engine/car/brake-heat.ts';
import { layoutCircuit } from '../../../engine/circuit/layout.ts';
import { outlineOf } from '../../../engine/circuit/outline.ts';
import { speedProfile } from '../../../engine/circuit/speed-profile.ts';
import { kmhFromMps } from '../../../engine/units.ts';
import { circuits, heavyCar, heavyDriver, lightCar, lightDriver, warmDay } from '../../support/driving.ts';
import { stopsOf } from '../../support/stops.ts';

/** Common practice, no source: what these two invented cars should do on three such circuits. */
const figures = [
  { id: 'sorrelby', length_m: 5300, heavy: { lap_s: 96, heat_MJ: 6.8 }, light: { lap_s: 118, heat_MJ: 3.6 } },
  { id: 'long', length_m: 8000, heavy: { lap_s: 145, heat_MJ: 9.9 }, light: { lap_s: 177, heat_MJ: 5.2 } },
  { id: 'slow', length_m: 2400, heavy: { lap_s: 74, heat_MJ: 4.8 }, light: { lap_s: 87, heat_MJ: 2.5 } },
] as const;

const driven = { heavy: [heavyCar, heavyDriver], light: [lightCar, lightDriver] } as const;

describe.each(figures)('the circuit $id', (figure) => {
  const layout = layoutCircuit(circuits[figure.id]);
  const outline = outlineOf(layout);

  it('is as long as it says', () => {
    expect(Math.abs(layout.length_m / figure.length_m - 1)).toBeLessThan(0.01);
  });

  it('closes as a drawing within 1 % of its length and turns once round', () => {
    expect(outline.closing_m).toBeLessThan(0.01 * layout.length_m);
    expect(Math.abs(outline.turning_rad)).toBeCloseTo(2 * Math.PI, 1);
  });

  it('ends at the height at which it began', () => {
    expect(Math.abs(layout.height_m.at(-1)!)).toBeLessThan(0.2);
  });

  it('nowhere comes near another part of itself', () => {
    const { x_m, y_m } = outline;
    const n = x_m.length - 1;
    let nearest = Infinity;
    for (let i = 0; i < n; i += 3) {
      for (let j = i + 1; j < n; j += 3) {
        const along_m = Math.min(j - i, n - j + i) * layout.step_m;
        if (along_m > 100) nearest = Math.min(nearest, Math.hypot(x_m[i]! - x_m[j]!, y_m[i]! - y_m[j]!));
      }
    }
    expect(nearest).toBeGreaterThan(25);
  });

  it.each(['heavy', 'light'] as const)('takes the %s car about the time and heat of practice', (which) => {
    const [car, driver] = driven[which];
    const lap = speedProfile({ layout, car, driver, air: warmDay });
    const { lap_s, heat_MJ } = figure[which];
    expect(Math.abs(lap.time_s.at(-1)! / lap_s - 1)).toBeLessThan(0.06);
    expect(Math.abs(brakeHeat(lap, car, warmDay).total_J / 1e6 / heat_MJ - 1)).toBeLessThan(0.06);
  });
});

describe.each(['heavy', 'light'] as const)('Sorrelby in the %s car', (which) => {
  const [car, driver] = driven[which];
  const layout = layoutCircuit(circuits.sorrelby);
  const lap = speedProfile({ layout, car, driver, air: warmDay });
  const stops = stopsOf(lap, brakeHeat(lap, car, warmDay), layout);
  const top_mps = Math.max(...lap.speed_mps);
  const hard = stops.filter(
    ({ from_mps, to_mps }) => kmhFromMps(from_mps) > 120 && from_mps ** 2 - to_mps ** 2 >= 0.3 * top_mps ** 2,
  );

  it('has four hard stops, at turns 1, 3, 7 and 11', () => {
    expect(hard.map(({ corner }) => corner)).toEqual(['turn 1', 'turn 3', 'turn 7', 'turn 11']);
  });

  it('is hardest on the brakes at turn 7', () => {
    expect(hard.toSorted((a, b) => b.heat_J - a.heat_J)[0]!.corner).toBe('turn 7');
  });

  it('lets the discs cool for more than 12 s before a hard stop', () => {
    const rests = stops.map((stop, i) => stop.start_s - (stops[i - 1]?.end_s ?? 0));
    expect(Math.max(...rests)).toBeGreaterThan(12);
  });
});
