/** Arbitrary brakes whose parts fit each other: any disc the schema can say, with the mass that its own volume weighs. */
import fc from 'fast-check';
import { defaultScenario } from '../../engine/scenario/library.ts';
import type { Brake } from '../../engine/scenario/schema.ts';
import { between, clamped, numbersOf, orNone, partOf, within } from './random-number.ts';

const sample = defaultScenario().brakes.front;
const at = (name: string): string => `brakes.front.${name}`;
const share = between(0, 1);

/** Density of what discs are made of [kg/m³], near enough to weigh one */
const DENSITY = { 'grey iron': 7200, 'carbon-ceramic': 2350 };
/** Cheeks of a ring weigh at least and at most this much, so that with vanes it is one the schema takes [kg] */
const CHEEKS_KG = [0.8, 22] as const;

/** Numbers between 0 and 1 that choose a disc; shrinking goes to the first of each. */
const choices = fc.record({
  kind: fc.constantFrom('vented' as const, 'solid' as const),
  material: fc.constantFrom('grey iron' as const, 'carbon-ceramic' as const),
  shape: fc.constantFrom('straight' as const, 'curved' as const, 'pillars' as const),
  outer_mm: within(at('disc.outer_mm')),
  inner: between(0.35, 0.8),
  cheek: share,
  gap: share,
  vanes: fc.integer({ min: 12, max: 200 }),
  filled: between(0.05, 0.6),
  weight: between(0.95, 1.1),
  swept: between(0.6, 1),
});

type Choices = typeof choices extends fc.Arbitrary<infer T> ? T : never;

/** The sizes of a disc, and the ring's mass from them. */
function ring(c: Choices) {
  const inner_mm = clamped(at('disc.inner_mm'), c.outer_mm * c.inner);
  const ring_m2 = (Math.PI / 4) * (c.outer_mm ** 2 - inner_mm ** 2) * 1e-6;
  const kgPerMm = DENSITY[c.material] * ring_m2 * 1e-3;
  const [least, most] = CHEEKS_KG.map((kg) => clamped(at('disc.cheek_mm'), kg / (2 * kgPerMm))) as [
    number,
    number,
  ];
  const cheek_mm = Math.min(29, least + c.cheek * (most - least));
  const shape = { outer_mm: c.outer_mm, inner_mm, cheek_mm, material: c.material };
  const rubbed = { swept_cm2: clamped(at('disc.swept_cm2'), c.swept * 2 * ring_m2 * 1e4) };
  const mass = (kg: number) => ({ ring_mass_kg: clamped(at('disc.ring_mass_kg'), c.weight * kg) });
  const cheeks_kg = 2 * cheek_mm * kgPerMm;
  if (c.kind === 'solid') {
    const none = { gap_mm: 0, vanes: 0, vane_mm: 0, vane_shape: 'none' };
    return { kind: c.kind, ...shape, ...none, thickness_mm: 2 * cheek_mm, ...rubbed, ...mass(cheeks_kg) };
  }
  const gap_mm = Math.min(40, 60 - 2 * cheek_mm) * (0.1 + 0.9 * c.gap);
  const vane_mm = clamped(at('disc.vane_mm'), (c.filled * Math.PI * inner_mm) / c.vanes);
  const section_mm2 =
    c.shape === 'pillars' ? (Math.PI / 4) * vane_mm ** 2 : (vane_mm * (c.outer_mm - inner_mm)) / 2;
  const vanes_kg = c.vanes * section_mm2 * gap_mm * 1e-9 * DENSITY[c.material];
  return {
    ...{ kind: c.kind, ...shape, gap_mm, vanes: c.vanes, vane_mm, vane_shape: c.shape },
    ...{ thickness_mm: clamped(at('disc.thickness_mm'), 2 * cheek_mm + gap_mm), ...rubbed },
    ...mass(cheeks_kg + vanes_kg),
  };
}

const disc = fc
  .record({ chosen: choices, free: fc.record(numbersOf(at('disc'), sample.disc)) })
  .map(({ chosen, free }) => ({ ...free, ...ring(chosen) }));

const friction = fc
  .uniqueArray(fc.integer({ min: 0, max: 20 }), { minLength: 2, maxLength: 6 })
  .chain((places) =>
    fc.tuple(
      ...places
        .sort((a, b) => a - b)
        .map((place) =>
          within(at('pad.friction.0.coefficient')).map((coefficient) => ({
            face_C: 60 * place,
            coefficient,
          })),
        ),
    ),
  );

const pad = partOf(at('pad'), sample.pad, {
  material: fc.constantFrom('organic', 'semi-metallic', 'sintered'),
  disc_share: orNone(within(at('pad.disc_share'))),
  friction,
});

const fluid = partOf(at('fluid'), sample.fluid, {
  class: fc.constantFrom('DOT 3', 'DOT 4', 'DOT 5', 'DOT 5.1', 'other'),
  dry_boiling_C: between(350, 400),
});

const bends = fc.array(partOf(at('duct.bends.0'), { angle_deg: 0, radius_ratio: 0 }), { maxLength: 4 });

const duct = partOf(at('duct'), sample.duct!, {
  hoses: fc.integer({ min: 1, max: 4 }),
  clearance_mm: orNone(within(at('duct.clearance_mm'))),
  panels_pct: fc.constant([0, 50]),
  bends,
});

const window = partOf(at('window'), sample.window, {
  bite_C: between(0, 500),
  face_peak_C: between(505, 1400),
  run_C: orNone(within(at('window.run_C'))),
  from_lap: fc.integer({ min: 1, max: 3 }),
  source: fc.constant('drawn for a test'),
  date: fc.constant(''),
});

/** Any brake; pads rub a part of the disc, three in four have a duct. */
export const anyBrake: fc.Arbitrary<Brake> = fc
  .record({
    disc,
    padShare: between(0.03, 0.3),
    bell: partOf(at('bell'), sample.bell, { material: fc.constantFrom('aluminium', 'grey iron') }),
    pad,
    caliper: partOf(at('caliper'), sample.caliper),
    fluid,
    wheel: partOf(at('wheel'), sample.wheel),
    duct: fc.option(duct, { freq: 3 }),
    window,
  })
  .map(({ padShare, ...brake }) => {
    const area_cm2 = clamped(at('pad.area_cm2'), (padShare * brake.disc.swept_cm2) / 2);
    return { ...brake, pad: { ...brake.pad, area_cm2 } } as unknown as Brake;
  });
