import { describe, expect, it } from 'vitest';
import { effectiveRadius } from '../../../engine/disc/corner-spec.ts';
import { heatToDisc } from '../../../engine/disc/heat-split.ts';
import { driveLap } from '../../../engine/disc/kernel.ts';
import { materials } from '../../../engine/disc/materials.ts';
import { buildNetwork, NODE } from '../../../engine/disc/network.ts';
import { conductanceShimmed } from '../../../engine/disc/shim.ts';
import { createStepper, nodeTemperatures } from '../../../engine/disc/stepper.ts';
import { defaultScenario } from '../../../engine/scenario/library.ts';
import type { Changes } from '../../../engine/scenario/override.ts';
import { compile } from '../../../engine/stint/compile.ts';
import { cornersOf, specOf } from '../../../engine/stint/corners.ts';
import { planStand } from '../../../engine/stint/steps.ts';
import { unexplained } from '../../support/ledger.ts';
import { stand } from '../../support/standing.ts';
import { changed, corner, driven, onTrace, settled } from '../../support/stints.ts';

const HOT = { 'initial.front.disc_C': 600, 'initial.front.pad_C': 450, 'initial.front.caliper_C': 110 };
const TEN_MINUTES_S = 600;

const specWith = (changes: Changes = {}) => {
  const scenario = changed(changes);
  return specOf(cornersOf(scenario)[0]!.brake, scenario.car.loaded_radius_m);
};
/** Temperatures of the front corner's nodes after it has stood hot for ten minutes. */
const stood = (changes: Changes, brakeHeld: boolean): Float64Array =>
  stand(changed({ ...HOT, ...changes }), TEN_MINUTES_S, brakeHeld)[0]!.after_K;

describe('heat made between disc and pad', () => {
  it('is shared by effusivity and area where the scenario does not say', () => {
    const spec = specWith({ 'brakes.front.pad.disc_share': null });
    const start = { disc_K: 300, pad_K: 300, caliper_K: 300 };
    expect(createStepper(spec, start).discShare).toBe(heatToDisc(spec));
    expect(createStepper(specWith(), start).discShare).toBe(defaultScenario().brakes.front.pad.disc_share);
  });

  // what published partition formulas span for a ring under short pads, see engine/car/partition.ts
  it.each([
    ['grey iron', 'organic', 1],
    ['grey iron', 'semi-metallic', 2.5],
    ['carbon-ceramic', 'semi-metallic', 2.5],
    ['grey iron', 'sintered', 15],
  ] as const)('goes for 0.90 to 0.99 into a disc of %s under %s pads', (material, kind, conductivity) => {
    const { disc, pad } = specWith();
    const share = heatToDisc({ disc: { ...disc, material }, pad: { ...pad, material: kind, conductivity } });
    expect(share).toBeGreaterThan(0.9);
    expect(share).toBeLessThan(0.99);
  });

  it('heats a better conducting pad more', () => {
    const { disc, pad } = specWith();
    const share = (conductivity: number): number => heatToDisc({ disc, pad: { ...pad, conductivity } });
    expect(share(10)).toBeLessThan(share(2.5));
  });

  it('finds its way through the pressed contact: the split moves the disc little and the pad much', () => {
    const [low, high] = [0.93, 0.97].map((share) =>
      driven(changed({ 'brakes.front.pad.disc_share': share })),
    );
    const facePeak = (result: typeof low): number => settled(result!, 'front').faceMax_K;
    const padPeak = (result: typeof low): number => corner(result!, 'front').padPeak_K;
    expect(Math.abs(facePeak(high) - facePeak(low))).toBeLessThan(4);
    expect(padPeak(low) - padPeak(high)).toBeGreaterThan(30);
  });
});

describe('a pad', () => {
  it.each(['organic', 'semi-metallic', 'sintered'] as const)('of the %s kind has its own mass', (kind) => {
    const { mass_kg } = buildNetwork(specWith({ 'brakes.front.pad.material': kind }));
    const { area_cm2, thickness_mm } = defaultScenario().brakes.front.pad;
    const volume_m3 = 2 * area_cm2 * 1e-4 * thickness_mm * 1e-3;
    const pads_kg = mass_kg[NODE.pad]! + mass_kg[NODE.padFace]!;
    expect(pads_kg).toBeCloseTo(materials[kind].density_kgpm3 * volume_m3, 9);
  });

  it('that conducts better lets more heat into the caliper', () => {
    const caliper = (conductivity: number): number =>
      corner(driven(changed({ 'brakes.front.pad.conductivity_W_per_mK': conductivity })), 'front')
        .caliperPeak_K;
    expect(caliper(10)).toBeGreaterThan(caliper(2.5) + 5);
  });
});

describe('a titanium shim', () => {
  it('keeps the caliper and its fluid cooler and the plate hotter', () => {
    const without = stood({ 'brakes.front.pad.shim_mm': 0 }, true);
    const shimmed = stood({ 'brakes.front.pad.shim_mm': 1.5 }, true);
    expect(shimmed[NODE.caliper]!).toBeLessThan(without[NODE.caliper]! - 1);
    expect(shimmed[NODE.fluid]!).toBeLessThan(without[NODE.fluid]! - 1);
    expect(shimmed[NODE.plate]!).toBeGreaterThan(without[NODE.plate]! + 1);
  });

  it('of twice the thickness holds back more, and none holds back nothing', () => {
    expect(conductanceShimmed(3.2, 0, 0.018)).toBe(3.2);
    const [thin, thick] = [1e-3, 2e-3].map((shim_m) => conductanceShimmed(3.2, shim_m, 0.018));
    expect(thin).toBeLessThan(3.2);
    expect(thick).toBeLessThan(thin!);
  });
});

describe('a brake held while the car stands', () => {
  it('makes caliper and fluid hotter and the disc cooler than one let go', () => {
    const [held, free] = [stood({}, true), stood({}, false)];
    expect(held[NODE.caliper]!).toBeGreaterThan(free[NODE.caliper]! + 3);
    expect(held[NODE.fluid]!).toBeGreaterThan(free[NODE.fluid]! + 3);
    expect(held[NODE.face]!).toBeLessThan(free[NODE.face]! - 2);
  });
});

describe('the disc’s edge', () => {
  it('warms the caliper over it by its radiation, and the books still close', () => {
    const { spec, start, maps } = compile(changed(HOT)).corners[0]!;
    const caliperAfter = (bridge: 'there' | 'gone'): number => {
      const stepper = createStepper(spec, start);
      if (bridge === 'gone') stepper.bridge_WpK4 = 0;
      driveLap(stepper, planStand(TEN_MINUTES_S, false, 1), 0, maps[0]!, null, 0);
      return nodeTemperatures(stepper)[NODE.caliper]!;
    };
    expect(caliperAfter('there')).toBeGreaterThan(caliperAfter('gone') + 1);
    const [front] = stand(changed(HOT), TEN_MINUTES_S, true);
    expect(unexplained(front!.ledger)).toBeLessThan(1e-9);
  });
});

describe('pads that drag', () => {
  it('heat the brake by their force over the way that they rub, and it is in the books', () => {
    const drag_N = 8;
    const speed_mps = 50;
    const rows = 400;
    const step_s = 0.1;
    const result = onTrace(new Array<number>(rows).fill(speed_mps), step_s, {
      'brakes.front.pad.drag_N': drag_N,
    });
    const spec = specWith();
    const { ledger_J } = corner(result, 'front');
    const rubbed_m =
      (speed_mps * step_s * (rows - 1) * effectiveRadius(spec.disc)) / spec.wheel.loadedRadius_m;
    expect(ledger_J.brakeHeat / (drag_N * rubbed_m)).toBeCloseTo(1, 2);
    expect(unexplained(ledger_J)).toBeLessThan(1e-9);
  });
});
