import { describe, expect, it } from 'vitest';
import { withCircuit } from '../../../engine/scenario/library.ts';
import type { Changes } from '../../../engine/scenario/override.ts';
import { celsius, kelvin, mpsFromKmh } from '../../../engine/units.ts';
import { changed, corner, driven, held, onTrace, settled } from '../../support/stints.ts';
import { bothCars, expectWithin, heavy, light, scaled } from '../../support/trade.ts';

describe('the default stint (common practice, no source)', () => {
  it('opens with a front that is taped too far and a rear that is right', () => {
    expectWithin(celsius(heavy.front.faceMax_K), [650, 690]);
    expect(corner(heavy.result, 'front').verdict.status).toBe('hot');
    expect(corner(heavy.result, 'rear').verdict.status).toBe('in');
  });
});

describe('heat and time of a lap (common practice, no source)', () => {
  it.each([
    ['heavy', heavy, 'sorrelby', 6.8, 96],
    ['heavy', heavy, 'long', 9.9, 145],
    ['heavy', heavy, 'slow', 4.8, 74],
    ['light', light, 'sorrelby', 3.6, 118],
    ['light', light, 'long', 5.2, 177],
    ['light', light, 'slow', 2.5, 87],
  ] as const)('are about what practice says, %s car on %s', (_, { base }, circuit, lap_MJ, lap_s) => {
    const result = driven(withCircuit(base, circuit));
    expectWithin(result.brakeEnergyPerLap_J / 1e6, scaled([0.93, 1.07], lap_MJ));
    expectWithin(result.lapTime_s, scaled([0.97, 1.03], lap_s));
  });

  it.each([
    ['heavy', heavy, [65e3, 75e3]],
    ['light', light, [28e3, 32e3]],
  ] as const)('make the mean power of all brakes, %s car', (_, { result }, range) => {
    expectWithin(result.brakeEnergyPerLap_J / result.lapTime_s, range);
  });
});

// From a model of few bodies, at 25 °C with the tightest leak: plausibility. The heavy car comes out up to 40 K below at the
// peak and 60 K at the coldest stop, but for the closed mouth, where it is hotter. A disc as hot as the table has less cooling,
// and then takes longer over tape, traffic and restarts than practice allows: the two do not go together.
describe('settled temperatures of the front (common practice, no source)', () => {
  const table = {
    heavy: [
      [0, 393, 586],
      [25, 404, 596],
      [50, 433, 625],
      [60, 457, 649],
      [70, 491, 682],
      [80, 534, 724],
      [90, 613, 800],
      [100, 724, 914],
    ],
    light: [
      [0, 395, 563],
      [50, 433, 598],
      [75, 472, 636],
      [100, 572, 732],
    ],
  } as const;
  const near = { heavy: { peak_K: 45, coldest_K: 65 }, light: { peak_K: 25, coldest_K: 25 } };

  it.each(bothCars)(
    'are near those of a simple model at each blanking, $name car',
    ({ name, base, ...car }) => {
      const day: Changes = {
        'conditions.ambient_C': 25,
        'brakes.front.duct.leak_cm2': base.doubt['brakes.front.duct.leak_cm2']!.low,
      };
      const off = table[name].map(([pct, coldest_C, peak_C]) => {
        const lap = car.held({ ...day, 'blanking_pct.front': pct });
        return [celsius(lap.faceMax_K) - peak_C, celsius(lap.coldestStop_K!) - coldest_C] as const;
      });
      const mean = off.reduce((sum, [peak_K]) => sum + peak_K, 0) / off.length;
      expect(Math.abs(mean)).toBeLessThan(35);
      for (const [peak_K, coldest_K] of off) {
        expect(Math.abs(peak_K)).toBeLessThan(near[name].peak_K);
        expect(Math.abs(coldest_K)).toBeLessThan(near[name].coldest_K);
      }
    },
  );

  it('and of the rear, half taped', () => {
    expectWithin(celsius(heavy.rear.faceMax_K), [532 - 35, 532 + 35]);
    expectWithin(celsius(heavy.rear.coldestStop_K!), [399 - 35, 399 + 35]);
  });

  // The model's peak of 635 °C there is 92 K over its coldest stop, half of what it gives on the fast circuit; ours is 180 K over.
  it('are too hot on the slow circuit even with an open duct', () => {
    const open = driven(changed({ 'blanking_pct.front': 0 }, withCircuit(heavy.base, 'slow')));
    expect(corner(open, 'front').verdict.status).toBe('hot');
    expectWithin(celsius(settled(open, 'front').coldestStop_K!), [543 - 40, 543 + 40]);
  });
});

describe('where the heat of the heavy car’s front goes with an open duct (common practice, no source)', () => {
  const base = changed({ 'blanking_pct.front': 0 }, heavy.base);
  const { ledger_J } = corner(driven(base), 'front');
  const pct = (heat_J: number): number => (100 * heat_J) / ledger_J.brakeHeat;

  it.each([
    ['vanes', ledger_J.vaneAir, 56],
    ['faces', ledger_J.faceAir, 28],
    ['radiation', ledger_J.radiation, 5],
  ])('%s: about what practice says', (_, heat_J, said) => {
    expect(Math.abs(pct(heat_J) - said)).toBeLessThan(10);
  });

  it('the bell, 3 percent of it: what is conducted on and a part of the other air', () => {
    expect(pct(ledger_J.conducted)).toBeLessThan(3);
    expect(pct(ledger_J.conducted + ledger_J.otherAir)).toBeGreaterThan(3);
  });
});

// Practice gives what a ducted disc needs to live at about 500 °C, and taped as it is when it does. With an open duct ours is at
// 415 °C over the lap and its vanes give 35 W/K; it comes to 500 °C between 60 and 70 % of tape.
describe('a large ducted disc at 180 km/h and 500 °C (common practice, no source)', () => {
  const TAPED = { 'blanking_pct.front': 60 };
  const result = onTrace(new Array<number>(200).fill(mpsFromKmh(180)), 0.1, {
    ...TAPED,
    'initial.front.disc_C': 500,
    'initial.front.pad_C': 350,
  });
  const { ledger_J, columns } = corner(result, 'front');
  const { time_s } = result.clock;
  const ambient_K = kelvin(heavy.base.conditions.ambient_C);
  /** Heat over the mean excess of a surface while the lap lasts [W/K] */
  const per_K = (heat_J: number, surface_K: Float64Array): number => {
    const excess = time_s.reduce(
      (sum, t, i) =>
        i === 0 ? 0 : sum + (t - time_s[i - 1]!) * ((surface_K[i]! + surface_K[i - 1]!) / 2 - ambient_K),
      0,
    );
    return heat_J / excess;
  };
  const vanes = per_K(ledger_J.vaneAir, columns!.wall_K);
  const faces = per_K(ledger_J.faceAir, columns!.face_K);
  const radiated = per_K(ledger_J.radiation, columns!.face_K);

  it('gives heat from its vanes', () => expectWithin(vanes, [26, 31]));
  it('gives heat from its faces', () => expectWithin(faces, [12, 15]));
  it('radiates some', () => expectWithin(radiated, [2, 6]));
  it('gives in all what its heat asks for', () => expectWithin(vanes + faces + radiated, [40, 50]));

  it('is taped so when it lives at about that temperature on the heat of a lap', () => {
    const lap = settled(held(TAPED, heavy.base), 'front');
    const { brake_balance_front } = heavy.base.car;
    const power_W = (heavy.result.brakeEnergyPerLap_J * brake_balance_front) / 2 / heavy.result.lapTime_s;
    expectWithin(power_W, [22e3, 24e3]);
    expectWithin(celsius(lap.faceMean_K), [470, 530]);
  });
});
