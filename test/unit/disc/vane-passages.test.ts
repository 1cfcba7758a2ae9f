import { describe, expect, it } from 'vitest';
import type { DiscSpec } from '../../../engine/disc/corner-spec.ts';
import { nusseltCylinder } from '../../../engine/disc/nusselt-cylinder.ts';
import { enhancementRotation, nusseltVanePassage, nusseltVanes } from '../../../engine/disc/nusselt-vane.ts';
import { rotationNumber, vaneConductance } from '../../../engine/disc/vane-convection.ts';
import { vanePassage } from '../../../engine/disc/vane-passage.ts';
import { solveAirPath } from '../../../engine/duct/network.ts';
import { heavyFront, rolling } from '../duct/corners.ts';
import { heavyDisc } from '../../support/heavy-disc.ts';

const PR = 0.7;
/** Steps of a percent from Re 10 to 1e5. */
const reynolds = Array.from({ length: 926 }, (_, i) => 10 * 1.01 ** i);
const passages = [0.05, 0.2, 0.35, 0.8].flatMap((diameterOverLength) =>
  [0.8, 1.5, 2.5, 4].map((enhancement) => ({ diameterOverLength, enhancement })),
);

/** How a law grows from each Re of the list to the next: the exponent of Re. */
function exponents(law: (Re: number) => number): number[] {
  const logs = reynolds.map((Re) => Math.log(law(Re)));
  return logs.slice(1).map((log, i) => (log - logs[i]!) / Math.log(1.01));
}

describe('heat transfer between vanes, over Re 10 to 1e5, four lengths and four enhancements', () => {
  const cases = passages.map((passage) => exponents((Re) => nusseltVanes(Re, PR, passage)));

  it('grows with flow everywhere and nowhere faster than the flow', () => {
    expect(Math.min(...cases.flat())).toBeGreaterThan(0);
    expect(Math.max(...cases.flat())).toBeLessThan(1);
  });

  it('has no jump and no kink: within a percent of Re its exponent moves by less than 0.02', () => {
    const moves = cases.flatMap((each) => each.slice(1).map((n, i) => Math.abs(n - each[i]!)));
    expect(Math.max(...moves)).toBeLessThan(0.02);
  });

  it('has no jump at Re 10 000, where the branches of the old vane law stand 2.08 apart', () => {
    for (const passage of passages) {
      const at = (Re: number): number => nusseltVanes(Re, PR, passage);
      expect(at(10001) / at(9999) - 1).toBeLessThan(3e-4);
    }
  });

  it('is the enhancement times the smooth tube at Re 10 000, within a percent, or two where it is below 1', () => {
    for (const passage of passages) {
      const smooth = nusseltVanePassage(10000, PR, passage.diameterOverLength);
      const over = nusseltVanes(10000, PR, passage) / (passage.enhancement * smooth) - 1;
      expect(Math.abs(over)).toBeLessThan(passage.enhancement < 1 ? 0.02 : 0.01);
    }
  });

  it('is the laminar law of a smooth tube where little flows', () => {
    for (const passage of passages) {
      const smooth = nusseltVanePassage(50, PR, passage.diameterOverLength);
      expect(nusseltVanes(50, PR, passage) / smooth - 1).toBeLessThan(1e-3);
    }
  });

  it('is more where the passage is short', () => {
    const short = nusseltVanes(5000, PR, { diameterOverLength: 0.35, enhancement: 1.5 });
    expect(short).toBeGreaterThan(
      1.2 * nusseltVanes(5000, PR, { diameterOverLength: 0.1, enhancement: 1.5 }),
    );
  });
});

describe('rotation', () => {
  it('adds nothing at rest, more the faster the passage turns, and never more than 60 %', () => {
    expect(enhancementRotation(0)).toBe(1);
    const steps = Array.from({ length: 100 }, (_, i) => enhancementRotation(i * 0.02));
    expect(steps.slice(1).every((each, i) => each > steps[i]!)).toBe(true);
    expect(enhancementRotation(Infinity)).toBe(1.6);
  });

  it('has the same number for an undriven rotor at any speed', () => {
    const passage = { hydraulicDiameter_m: 0.014, flowArea_m2: 0.007 };
    const at = (wheel_radps: number): number =>
      rotationNumber(passage, { vane_kgps: 3e-4 * wheel_radps, density_kgpm3: 1.2, wheel_radps });
    expect(at(120)).toBeCloseTo(at(30), 12);
  });
});

// Values: the closed form in the open library ht 1.0.7 (its own documented one first).
describe('a pillar', () => {
  it.each([
    [6071, 40.63709],
    [1e3, 15.9296],
    [1e4, 53.3278],
    [1e5, 214.126],
  ])('at Re %d takes what Churchill & Bernstein give', (Re, expected) => {
    expect(nusseltCylinder(Re, PR) / expected - 1).toBeCloseTo(0, 5);
  });
});

const ring = heavyDisc;
const IRON = 7200;
const discs: [shape: string, disc: DiscSpec][] = [
  ['straight vanes', ring],
  ['curved vanes', { ...ring, vaneShape: 'curved', vaneStretch: 1.15 }],
  ['pillars', { ...ring, vaneShape: 'pillars', vanes: 150, vane_m: 0.009 }],
  ['carbon-ceramic', { ...ring, material: 'carbon-ceramic' }],
  ['few thick vanes', { ...ring, vanes: 24, vane_m: 0.009, gap_m: 0.008 }],
];
const passageOf = (disc: DiscSpec) => vanePassage(disc, IRON)!;

const still = { air_K: 300, density_kgpm3: 1.17, still: 4 };
const taken = (disc: DiscSpec, vane_kgps: number, wall_K = 700, wheel_radps = 150): number =>
  vaneConductance(disc, passageOf(disc), { ...still, vane_kgps, wall_K, wheel_radps });

describe.each(discs)('passages of a disc with %s', (_, disc) => {
  it('and what stands in them fill the ring between the cheeks', () => {
    const { wallArea_m2, vaneMass_kg } = passageOf(disc);
    const open_m3 = (wallArea_m2 / 2) * disc.gap_m;
    const ring_m3 = (Math.PI / 4) * (disc.outer_m ** 2 - disc.inner_m ** 2) * disc.gap_m;
    expect((open_m3 + vaneMass_kg / IRON) / ring_m3).toBeCloseTo(1, 12);
  });

  it('take more heat with more flow, from none on, at any wall temperature and wheel speed', () => {
    for (const wall_K of [250, 350, 500, 750, 1000, 1500]) {
      for (const wheel_radps of [0, 20, 100, 300]) {
        const flows = Array.from({ length: 400 }, (_, i) => 1e-5 * (1.03 ** i - 1));
        const at = flows.map((flow) => taken(disc, flow, wall_K, wheel_radps));
        const falls = at.slice(1).filter((each, i) => !(each > at[i]!));
        expect(falls).toEqual([]);
      }
    }
  });

  it('keep a small coefficient without flow, and leave it without a jump', () => {
    expect(taken(disc, 0)).toBeGreaterThan(0);
    expect(taken(disc, 1e-6) - taken(disc, 0)).toBeLessThan(1e-3);
  });

  it('give the air no more than it can carry', () => {
    const moving = (flow: number): number => taken(disc, flow) - taken(disc, 0);
    for (const flow of [0.001, 0.01, 0.1]) expect(moving(flow)).toBeLessThan(flow * 1035);
  });
});

describe('the shape of the passages', () => {
  it('of curved vanes is longer and narrower than of straight ones by the same ratio, between vanes of no thickness', () => {
    const thin = { ...ring, vane_m: 1e-9 };
    const straight = passageOf(thin);
    const curved = passageOf({ ...thin, vaneStretch: 1.15 });
    expect(curved.length_m / straight.length_m).toBeCloseTo(1.15, 6);
    expect(straight.flowArea_m2 / curved.flowArea_m2).toBeCloseTo(1.15, 6);
    expect(straight.entryArea_m2 / curved.entryArea_m2).toBeCloseTo(1.15, 6);
  });

  it('gives a solid disc none', () => {
    expect(vanePassage({ ...ring, vented: false }, IRON)).toBeNull();
  });

  it.each([
    ['vanes', ring],
    ['pillars', discs[2]![1]],
  ])('with more %s takes more heat from the same flow', (_, disc) => {
    const at = [20, 40, 60, 80, 100, 120].map((vanes) => taken({ ...disc, vanes }, 0.1));
    expect(at.slice(1).every((each, i) => each > at[i]!)).toBe(true);
  });

  it('with more vanes on the same duct takes more heat until they choke the flow', () => {
    const at = (vanes: number): number => {
      const disc = { ...ring, vanes };
      const flowArea_m2 = passageOf(disc).entryArea_m2;
      const path = { ...heavyFront, vanes: { ...heavyFront.vanes!, flowArea_m2 } };
      return taken(disc, solveAirPath(path, rolling(180)).vane_kgps);
    };
    const counts = [20, 40, 60, 80].map(at);
    expect(counts.slice(1).every((each, i) => each > counts[i]!)).toBe(true);
    expect(at(170)).toBeLessThan(at(60) / 2);
  });
});
