import { describe, expect, it } from 'vitest';
import { driven, changed, corner } from '../../support/stints.ts';
import { bothCars, expectWithin, heavy, light, scaled, type TradeCar } from '../../support/trade.ts';

const STEP_PCT = 5;
const pcts = Array.from({ length: 1 + 100 / STEP_PCT }, (_, i) => STEP_PCT * i);

/** Face peak over that of the open mouth, by the front's blanking, under a held trace [K] */
function curveOf(car: TradeCar): (pct: number) => number {
  const peaks = pcts.map((pct) => car.held({ 'blanking_pct.front': pct }).faceMax_K);
  return (pct) => peaks[pct / STEP_PCT]! - peaks[0]!;
}

/** Share of the front's heat that leaves through the vanes, with an open mouth. */
function vaneShare({ base }: TradeCar): number {
  const { ledger_J } = corner(driven(changed({ 'blanking_pct.front': 0 }, base)), 'front');
  return ledger_J.vaneAir / ledger_J.brakeHeat;
}

const curves = { heavy: curveOf(heavy), light: curveOf(light) };
// Practice speaks of a disc that lives on its vanes. Those of the light car carry two thirds of that share, and tape can take
// away no more than they carry: the ranges shrink with it. (Its own settled temperatures say +35, +38 and +96 K for 0 to 50,
// 50 to 75 and 75 to 100 %, outside two of practice's own ranges.)
const byVanes = { heavy: 1, light: vaneShare(light) / vaneShare(heavy) };

describe.each(bothCars)(
  'tape on the front under a held trace, $name car (common practice, no source)',
  ({ name }) => {
    const at = curves[name];

    it.each([
      [0, 25, [5, 20]],
      [25, 50, [20, 50]],
      [50, 75, [50, 110]],
      [75, 100, [100, 250]],
    ] as const)('costs from %i to %i percent what practice says', (from, to, range) =>
      expectWithin(at(to) - at(from), scaled(range, byVanes[name])),
    );

    it('costs no more in all than a leaky seal lets it', () => expectWithin(at(100), [80, 330]));

    it('never cools by any step', () => {
      pcts
        .slice(1)
        .forEach((pct) => expect(at(pct), `${pct} %`).toBeGreaterThanOrEqual(at(pct - STEP_PCT) - 0.05));
    });

    it('costs more by the quarter the further it goes', () => {
      const quarters = [at(25), at(50) - at(25), at(75) - at(50), at(100) - at(75)];
      expect(quarters).toEqual([...quarters].sort((a, b) => a - b));
    });
  },
);

describe.each(bothCars)(
  'a night ten degrees colder, $name car (common practice, no source)',
  ({ base, held }) => {
    it('asks for five to ten points more tape', () => {
      const night = { 'conditions.ambient_C': base.conditions.ambient_C - 10 };
      const by = (points: number): number =>
        held({ ...night, 'blanking_pct.front': 60 + points }).faceMax_K -
        held({ 'blanking_pct.front': 60 }).faceMax_K;
      expect(by(5)).toBeLessThan(0);
      expect(by(10)).toBeGreaterThan(0);
    });
  },
);

describe('the area of the mouth against that of the hoses decides the tape curve (common practice, no source)', () => {
  const { duct } = heavy.base.brakes.front;
  const hoses_mm2 = (duct!.hoses * Math.PI * duct!.hose_mm ** 2) / 4;
  const halfTaped = (share: number): number => {
    const mouth = { 'brakes.front.duct.mouth_height_mm': (share * hoses_mm2) / duct!.mouth_width_mm };
    const peak = (pct: number): number => heavy.held({ ...mouth, 'blanking_pct.front': pct }).faceMax_K;
    return peak(50) - peak(0);
  };

  // about 67 K and about 13 K, from a model of few bodies: within a quarter
  it.each([
    [0.85, 67],
    [2.4, 13],
  ])('half of a mouth of %d times their area', (share, about_K) => {
    expectWithin(halfTaped(share), scaled([0.75, 1.25], about_K));
  });
});

describe('the leak decides the closed end (common practice, no source)', () => {
  const closing = (car: TradeCar, leak_cm2: number): number => {
    const leaky = { 'brakes.front.duct.leak_cm2': leak_cm2 };
    const peak = (pct: number): number => car.held({ ...leaky, 'blanking_pct.front': pct }).faceMax_K;
    return peak(100) - peak(0);
  };

  it.each([
    [10, [260, 400]],
    [30, [180, 290]],
  ] as const)('of the heavy car: a leak of %i cm²', (leak_cm2, range) => {
    expectWithin(closing(heavy, leak_cm2), range);
  });

  // the settled temperatures of the light car say 169 K with the tightest leak
  it('of the light car: less, as its vanes carry less', () => {
    expectWithin(closing(light, 9), [135, 205]);
    expect(closing(light, 25)).toBeLessThan(closing(light, 9) - 30);
  });

  it('and a better seal makes it hotter', () => {
    const closed = (leak_cm2: number): number =>
      heavy.held({ 'brakes.front.duct.leak_cm2': leak_cm2, 'blanking_pct.front': 100 }).faceMax_K;
    expect(closed(10)).toBeGreaterThan(closed(30) + 30);
  });
});
