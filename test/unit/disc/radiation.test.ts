import { describe, expect, it } from 'vitest';
import { faceArea, type CornerSpec } from '../../../engine/disc/corner-spec.ts';
import {
  coefficientBridge,
  emissivityTowards,
  radiatingSurfaces,
  radiationOf,
  type RadiatingSurfaces,
} from '../../../engine/disc/radiation.ts';
import {
  emissivityCavity,
  emissivityEnclosed,
  exchangeGap,
  STEFAN_BOLTZMANN,
  viewFactorDiscs,
  viewFactorRing,
} from '../../../engine/disc/view-factor.ts';
import { defaultScenario, withCar } from '../../../engine/scenario/library.ts';
import { cornersOf, specOf } from '../../../engine/stint/corners.ts';
import { kelvin } from '../../../engine/units.ts';

const specsOf = (car: string): CornerSpec[] => {
  const scenario = withCar(defaultScenario(), car);
  return cornersOf(scenario).map(({ brake }) => specOf(brake, scenario.car.loaded_radius_m));
};
const front = specsOf('heavy')[0]!;
const solid = specsOf('light')[1]!;
const wheel = (changes: Partial<CornerSpec['wheel']>): CornerSpec => ({
  ...front,
  wheel: { ...front.wheel, ...changes },
});

describe('view factors', () => {
  // Coaxial discs, Howell's catalogue C-41; the numbers follow from the formula by independent arithmetic
  it('of coaxial discs and of a ring are those of the catalogue', () => {
    expect(viewFactorDiscs(1, 1, 1)).toBeCloseTo((3 - Math.sqrt(5)) / 2, 12);
    expect(viewFactorDiscs(0.16, 0.16, 0.15)).toBeCloseTo(0.404067, 6);
    expect(viewFactorRing({ inner_m: 0.1, outer_m: 0.16 }, 0.2, 0.1)).toBeCloseTo(0.643593, 6);
  });

  it.each([
    [0.1, 0.3, 0.05],
    [0.2, 0.1, 0.4],
    [1e-6, 0.2, 0.06],
  ])('are reciprocal for discs of %f and %f m, %f m apart', (a, b, distance) => {
    const there = a ** 2 * viewFactorDiscs(a, b, distance);
    const back = b ** 2 * viewFactorDiscs(b, a, distance);
    expect(there / back).toBeCloseTo(1, 9);
  });

  it('are that of a point where the first disc is small, and lose nothing to rounding', () => {
    expect(viewFactorDiscs(1e-9, 0.2, 0.06)).toBeCloseTo(0.2 ** 2 / (0.2 ** 2 + 0.06 ** 2), 12);
  });

  it('reach one where a larger disc comes near, and none where it goes far', () => {
    expect(viewFactorDiscs(0.1, 0.2, 1e-6)).toBeCloseTo(1, 9);
    expect(viewFactorDiscs(0.1, 0.2, 1e3)).toBeLessThan(1e-6);
  });

  it('of ring and middle add up to that of the whole disc', () => {
    const ring = viewFactorRing({ inner_m: 0.1, outer_m: 0.16 }, 0.2, 0.1);
    const middle = viewFactorDiscs(0.1, 0.2, 0.1);
    const whole = viewFactorDiscs(0.16, 0.2, 0.1);
    expect(ring * (0.16 ** 2 - 0.1 ** 2) + middle * 0.1 ** 2).toBeCloseTo(whole * 0.16 ** 2, 12);
  });
});

describe('two surfaces', () => {
  // q = 0.8 σ (T⁴ − 298.15⁴), computed apart
  it.each([
    [373.15, 521.039],
    [573.15, 4536.79],
    [973.15, 40325.28],
  ])('near and parallel exchange at %d K what black against 0.8 does', (T_K, flux) => {
    const q = exchangeGap({ T_K, emissivity: 1 }, { T_K: 298.15, emissivity: 0.8 });
    expect(Math.abs(q - flux)).toBeLessThan(0.005);
  });

  it('exchange the same either way, and nothing when equally warm', () => {
    const a = { T_K: 800, emissivity: 0.45 };
    const b = { T_K: 400, emissivity: 0.8 };
    expect(exchangeGap(a, b)).toBeCloseTo(-exchangeGap(b, a), 6);
    expect(exchangeGap(a, { ...b, T_K: 800 })).toBe(0);
  });

  it('leave a small body in a large room its own emissivity', () => {
    expect(emissivityEnclosed(0.45, 0.2, 0)).toBeCloseTo(0.45, 12);
    expect(emissivityEnclosed(0.45, 0.2, 1)).toBeLessThan(0.2);
  });

  it('make a deep cavity black and a shallow one its wall', () => {
    expect(emissivityCavity(0.75, 0)).toBe(1);
    expect(emissivityCavity(0.75, 1)).toBe(0.75);
  });
});

describe('surroundings in parts', () => {
  it('add up to one of the same kind', () => {
    const half = { view: 0.5, keeps: 0.7, areaRatio: 0.3 };
    const whole = { view: 1, keeps: 0.7, areaRatio: 0.15 };
    expect(emissivityTowards(0.45, [half, half])).toBeCloseTo(emissivityTowards(0.45, [whole]), 12);
  });

  it('all black leave the surface its emissivity', () => {
    const black = [0.2, 0.3, 0.5].map((view) => ({ view, keeps: 1, areaRatio: 1 }));
    expect(emissivityTowards(0.45, black)).toBeCloseTo(0.45, 12);
  });
});

describe('what a corner radiates', () => {
  const base = radiatingSurfaces(front);
  const moved = (changes: Partial<CornerSpec>): string[] => {
    const other = radiatingSurfaces({ ...front, ...changes });
    return (Object.keys(base) as (keyof RadiatingSurfaces)[]).filter((name) => other[name] > base[name]);
  };

  it('follows the emissivity of each surface on its own', () => {
    expect(moved({ disc: { ...front.disc, emissivityTrack: 0.6 } })).toEqual(['outerTrack', 'innerTrack']);
    expect(moved({ disc: { ...front.disc, emissivityOther: 0.85 } })).toEqual(['vaneOpenings', 'rim']);
    expect(moved({ bell: { ...front.bell, emissivity: 0.85 } })).toEqual(['bell']);
    expect(moved({ caliper: { ...front.caliper, emissivity: 0.9 } })).toEqual(['caliper']);
  });

  it('never exceeds its black area', () => {
    const black = radiatingSurfaces({
      ...front,
      disc: { ...front.disc, emissivityTrack: 1, emissivityOther: 1 },
    });
    const { outer_m, gap_m, cheek_m } = front.disc;
    expect(black.outerTrack + black.innerTrack).toBeLessThan(
      2 * faceArea(front.disc) * (1 - front.wheel.covered),
    );
    expect(black.vaneOpenings).toBeLessThan(Math.PI * outer_m * gap_m);
    expect(black.rim).toBeLessThan(2 * Math.PI * outer_m * cheek_m);
  });

  it('is more from an oxidised track than from a rubbed one, nearly in proportion', () => {
    const track = (emissivityTrack: number): number =>
      radiatingSurfaces({ ...front, disc: { ...front.disc, emissivityTrack } }).outerTrack;
    const ratio = track(0.76) / track(0.45);
    expect(ratio).toBeGreaterThan(1.6);
    expect(ratio).toBeLessThan(0.76 / 0.45);
  });

  it('is more from the outer track the wider the wheel is open, by the outer track only', () => {
    const surfaces = [0, 0.1, 0.35, 0.7, 1].map((openShare) => radiatingSurfaces(wheel({ openShare })));
    surfaces.slice(1).forEach(({ outerTrack }, i) => {
      expect(outerTrack).toBeGreaterThan(surfaces[i]!.outerTrack);
      expect(outerTrack / surfaces[i]!.outerTrack).toBeLessThan(1.05);
    });
    expect(new Set(surfaces.map(({ innerTrack }) => innerTrack)).size).toBe(1);
  });

  it('is less from the inner track where the plate is near', () => {
    const inner = (ductOnFace: number): number => radiatingSurfaces(wheel({ ductOnFace })).innerTrack;
    expect(inner(1)).toBeLessThan(inner(0));
    expect(inner(0.5)).toBeCloseTo((inner(0) + inner(1)) / 2, 12);
  });

  it('comes from vanes that are nearly black by the square metre, and from none in a solid disc', () => {
    const perArea = radiatingSurfaces(wheel({ covered: 0 })).vaneOpenings;
    expect(perArea / (Math.PI * front.disc.outer_m * front.disc.gap_m)).toBeGreaterThan(0.8);
    expect(radiatingSurfaces(solid).vaneOpenings).toBe(0);
  });

  it('of the disc is 2 to 6 W/K at 500 °C (common practice, no source)', () => {
    const [face, wall, rim] = radiationOf(front);
    const hot_K = kelvin(500);
    const cold_K = kelvin(25);
    const WpK = ((face! + wall! + rim!) * (hot_K ** 4 - cold_K ** 4)) / (hot_K - cold_K);
    expect(WpK).toBeGreaterThan(2);
    expect(WpK).toBeLessThan(6);
  });

  it('is that of the nodes in the order of the network', () => {
    const { outerTrack, innerTrack, vaneOpenings, rim, bell, caliper } = base;
    const areas = [outerTrack + innerTrack, vaneOpenings, rim, bell, caliper];
    expect([...radiationOf(front)]).toEqual(areas.map((area) => area * STEFAN_BOLTZMANN));
  });
});

describe('what pads and caliper shadow', () => {
  it('halves the tracks where they cover half', () => {
    const free = radiatingSurfaces(wheel({ covered: 0 }));
    const half = radiatingSurfaces(wheel({ covered: 0.5 }));
    expect(half.outerTrack).toBeCloseTo(free.outerTrack / 2, 12);
    expect(half.innerTrack).toBeCloseTo(free.innerTrack / 2, 12);
    expect(half.rim).toBeLessThan(free.rim / 2);
  });

  it('takes from the edge what the bridge is given, up to all of it', () => {
    expect(coefficientBridge(wheel({ covered: 0 }))).toBe(0);
    expect(coefficientBridge(wheel({ covered: 0.2 }))).toBeCloseTo(
      2 * coefficientBridge(wheel({ covered: 0.1 })),
      18,
    );
    expect(radiatingSurfaces(wheel({ covered: 0.9 })).rim).toBe(0);
    expect(coefficientBridge(wheel({ covered: 0.9 }))).toBe(coefficientBridge(wheel({ covered: 0.8 })));
  });

  it('exchanges by the emissivities of both, as a narrow gap does', () => {
    const covered = 0.1;
    const one = { ...solid, wheel: { ...solid.wheel, covered } };
    const { outer_m, cheek_m, emissivityOther } = solid.disc;
    const under_m2 = (coefficientBridge(one) * (800 ** 4 - 400 ** 4)) / 1;
    const flux = exchangeGap(
      { T_K: 800, emissivity: emissivityOther },
      { T_K: 400, emissivity: solid.caliper.emissivity },
    );
    expect(under_m2 / flux).toBeCloseTo(1.4 * covered * Math.PI * outer_m * 2 * cheek_m, 9);
  });
});
