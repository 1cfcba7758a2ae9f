import { describe, expect, it } from 'vitest';
import type { CornerSpec } from '../../../engine/disc/corner-spec.ts';
import { bellConductance, caliperConductance } from '../../../engine/disc/body-convection.ts';
import {
  faceCoefficients,
  faceConductance,
  rimConductance,
  stillRange,
} from '../../../engine/disc/face-convection.ts';
import { shareThroughWheel, type OutsideAir } from '../../../engine/disc/outside-air.ts';
import { nusseltPassingAir, nusseltRotatingDisc } from '../../../engine/disc/nusselt-face.ts';
import { nusseltPlate } from '../../../engine/disc/nusselt-plate.ts';
import { defaultScenario, withCar } from '../../../engine/scenario/library.ts';
import { cornersOf, specOf } from '../../../engine/stint/corners.ts';
import { kelvin, mpsFromKmh } from '../../../engine/units.ts';

const specsOf = (car: string): CornerSpec[] => {
  const scenario = withCar(defaultScenario(), car);
  return cornersOf(scenario).map(({ brake }) => specOf(brake, scenario.car.loaded_radius_m));
};
const all = [...specsOf('heavy'), ...specsOf('light')];
const front = specsOf('heavy')[0]!;
const rear = specsOf('heavy')[1]!;
const wheel = (changes: Partial<CornerSpec['wheel']>, spec = front): CornerSpec => ({
  ...spec,
  wheel: { ...spec.wheel, ...changes },
});
const at = (kmh: number, wash_mps = 0): OutsideAir => ({
  speed_mps: mpsFromKmh(kmh),
  wash_mps,
  air_K: kelvin(25),
  pressure_Pa: 101325,
});
const HOT_K = kelvin(500);
const rises = (values: number[]): void =>
  values.slice(1).forEach((value, i) => expect(value, `entry ${i + 1}`).toBeGreaterThan(values[i]!));

describe('a plate', () => {
  // 0.664 √Re Pr^(1/3) and (0.037 Re^0.8 − 871) Pr^(1/3), Incropera & DeWitt, section 7.2; 871 is rounded in the book
  it.each([
    [1e5, 186.438],
    [1e6, 1299.48],
  ])('has the Nusselt number of the textbook at Re %d', (Re, Nu) => {
    expect(Math.abs(nusseltPlate(Re, 0.7) / Nu - 1)).toBeLessThan(0.0003);
  });

  it('goes from laminar to turbulent without a jump', () => {
    for (const Re of [5e4, 5e5])
      expect(nusseltPlate(Re * (1 + 1e-9), 0.7, Re) / nusseltPlate(Re, 0.7, Re)).toBeCloseTo(1, 7);
  });
});

describe('a face at rest', () => {
  // Topouris et al., Strojniški vestnik 66 (2020) 15: 3 to 5 W/(m² K) on stationary discs
  it.each([kelvin(100), kelvin(300), kelvin(600)])('at %d K loses what was measured', (wall_K) => {
    for (const spec of all) {
      const { outer, inner } = faceCoefficients(spec, at(0), wall_K);
      for (const h of [outer, inner]) {
        expect(h).toBeGreaterThanOrEqual(stillRange.low);
        expect(h).toBeLessThanOrEqual(stillRange.high);
      }
    }
  });
});

describe('convection with speed', () => {
  const speeds = Array.from({ length: 351 }, (_, i) => i);
  const surfaces = {
    faceConductance,
    rimConductance,
    bellConductance,
    caliperConductance,
  };

  it.each(Object.entries(surfaces))('%s rises, and by no jump', (_, conductance) => {
    for (const spec of all) {
      const values = speeds.map((kmh) => conductance(spec, at(kmh), HOT_K));
      rises(values);
      const steps = values.slice(1).map((value, i) => value - values[i]!);
      expect(Math.max(...steps)).toBeLessThan(values.at(-1)! / 80);
    }
  });

  it('has no jump where the law of the passing air changes', () => {
    for (let Re = 9e4; Re < 1e5; Re += 10)
      expect(nusseltPassingAir(Re + 10) / nusseltPassingAir(Re)).toBeLessThan(1 + 0.9 * (10 / Re));
  });

  it('of the face is hardly raised by rotation where the air passes quickly', () => {
    const spec = wheel({ crossflow: 0.5 });
    const still = wheel({ crossflow: 0.5, loadedRadius_m: 1e6 });
    const ratio =
      faceCoefficients(spec, at(180), HOT_K).inner / faceCoefficients(still, at(180), HOT_K).inner;
    expect(ratio).toBeGreaterThan(1);
    expect(ratio).toBeLessThan(1.03);
  });

  it('needs 12 to 15 W/K of the faces of a 380 mm disc at 180 km/h (common practice, no source)', () => {
    const WpK = faceConductance(front, at(180), HOT_K);
    expect(WpK).toBeGreaterThan(12);
    expect(WpK).toBeLessThan(15);
  });
});

describe('the open share of a wheel', () => {
  const shares = Array.from({ length: 101 }, (_, i) => i / 100);

  it('lets more air pass the wider it is, from nothing to half as much again', () => {
    for (const free of [0.1, 0.35, 0.5]) {
      const passing = shares.map((open) => shareThroughWheel(open, free));
      rises(passing);
      expect(passing[0]).toBe(0);
      expect(passing[35]).toBeCloseTo(1, 12);
      expect(passing[100]).toBeLessThan(1.6);
    }
  });

  it('matters less the less the disc leaves free', () => {
    expect(shareThroughWheel(1, 0.2)).toBeLessThan(shareThroughWheel(1, 0.4));
    expect(shareThroughWheel(0.1, 0.2)).toBeGreaterThan(shareThroughWheel(0.1, 0.4));
  });

  it('cools the outer face, not the inner', () => {
    const faces = [0, 0.1, 0.35, 0.6, 1].map((openShare) =>
      faceCoefficients(wheel({ openShare }), at(180), HOT_K),
    );
    rises(faces.map(({ outer }) => outer));
    expect(new Set(faces.map(({ inner }) => inner)).size).toBe(1);
  });

  it('of 35 percent treats both faces alike where no duct feeds one', () => {
    const { outer, inner } = faceCoefficients(wheel({ openShare: 0.35, ductOnFace: 0 }), at(180), HOT_K);
    expect(outer).toBeCloseTo(inner, 9);
  });

  it('leaves a closed wheel its rotation only', () => {
    const closed = wheel({ openShare: 0 });
    const calm = wheel({ crossflow: 0 });
    const outer = (spec: CornerSpec): number => faceCoefficients(spec, at(180), HOT_K).outer;
    expect(outer(closed)).toBeCloseTo(outer(calm), 9);
    expect(outer(closed)).toBeGreaterThan(front.wheel.still);
  });

  it('cools edge, bell and caliper as well', () => {
    for (const conductance of [rimConductance, bellConductance, caliperConductance])
      rises([0, 0.35, 0.7, 1].map((openShare) => conductance(wheel({ openShare }), at(180), HOT_K)));
  });
});

describe("the duct's leak", () => {
  it('cools its part of the inner face by as much as the part is large', () => {
    const gain = (ductOnFace: number): number => {
      const spec = wheel({ ductOnFace });
      return faceCoefficients(spec, at(180, 20), HOT_K).inner - faceCoefficients(spec, at(180), HOT_K).inner;
    };
    expect(gain(0)).toBe(0);
    expect(gain(0.6)).toBeCloseTo(2 * gain(0.3), 9);
    expect(gain(0.3)).toBeGreaterThan(0);
  });

  it('leaves the outer face alone', () => {
    const outer = (wash: number): number => faceCoefficients(front, at(180, wash), HOT_K).outer;
    expect(outer(20)).toBe(outer(0));
  });

  it('washes the share of the caliper that is given to it', () => {
    const washed = (ductWash: number, wash: number): number =>
      caliperConductance({ ...front, caliper: { ...front.caliper, ductWash } }, at(180, wash), HOT_K);
    expect(washed(0, 20)).toBe(washed(0, 0));
    expect(washed(0.5, 0)).toBeCloseTo(washed(0, 0), 9);
    rises([0, 0.25, 0.5, 1].map((share) => washed(share, 20)));
  });
});

describe('the share under pads and caliper', () => {
  it('takes no part in the convection of faces and edge', () => {
    for (const conductance of [faceConductance, rimConductance]) {
      const free = conductance(wheel({ covered: 0 }), at(180), HOT_K);
      expect(conductance(wheel({ covered: 0.5 }), at(180), HOT_K)).toBeCloseTo(free / 2, 9);
    }
  });
});

describe('the edge', () => {
  it('turns as a cylinder where no air passes', () => {
    const spec = wheel({ crossflow: 0, covered: 0, still: 1e-6 });
    const area_m2 = 2 * Math.PI * spec.disc.outer_m * spec.disc.cheek_m;
    const slow = rimConductance(spec, at(60), HOT_K) / area_m2;
    const quick = rimConductance(spec, at(120), HOT_K) / area_m2;
    expect(quick / slow).toBeGreaterThan(1.55);
    expect(quick / slow).toBeLessThan(1.75);
  });

  it('loses less by the square metre than a face over which as much air passes', () => {
    for (const spec of [front, rear]) {
      const area_m2 = 2 * Math.PI * spec.disc.outer_m * spec.disc.cheek_m * (1 - spec.wheel.covered);
      const edge = rimConductance(spec, at(180), HOT_K) / area_m2;
      expect(edge).toBeLessThan(faceCoefficients(spec, at(180), HOT_K).outer);
      expect(edge).toBeGreaterThan((nusseltRotatingDisc(1e5) * 0.03) / (spec.disc.outer_m / 2));
    }
  });
});
