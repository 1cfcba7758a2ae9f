import { describe, expect, it } from 'vitest';
import { printed } from '../../../engine/said.ts';
import type { Changes } from '../../../engine/scenario/override.ts';
import { compile } from '../../../engine/stint/compile.ts';
import { massBySizes, sizeDoubts } from '../../../engine/stint/disc-sizes.ts';
import { shipped } from '../../support/shipped.ts';
import { changed, driven } from '../../support/stints.ts';

const noticesOf = (kind: string, changes: Changes): string[] =>
  driven(changed({ 'stint.laps': 5, ...changes }))
    .notices.filter((notice) => notice.kind === kind)
    .map(({ said }) => printed(said));

const disc = compile(changed({})).corners[0]!.spec.disc;

describe('the mass of a ring by its sizes', () => {
  it('is that of a plate where it is solid, and of two cheeks and bars where it is vented', () => {
    const bare = Math.PI * (0.19 ** 2 - 0.13 ** 2) * 0.02 * 7200;
    const ring = { ...disc, outer_m: 0.38, inner_m: 0.26, cheek_m: 0.01, gap_m: 0.015, vaneStretch: 1 };
    expect(massBySizes({ ...ring, vented: false })).toBeCloseTo(bare, 9);
    const bars = 50 * 0.006 * 0.015 * 0.06 * 7200;
    const vented = { ...ring, vaneShape: 'straight' as const, vanes: 50, vane_m: 0.006 };
    expect(massBySizes(vented)).toBeCloseTo(bare + bars, 9);
  });

  it('does not follow the stated mass, however small', () => {
    expect(massBySizes({ ...disc, ringMass_kg: 0.5 })).toBe(massBySizes(disc));
  });
});

describe('a ring whose numbers disagree', () => {
  it('by up to 15 % in mass is left alone, and by more is told with both', () => {
    const sizes_kg = massBySizes(disc);
    const at = (share: number): string[] =>
      sizeDoubts({ ...disc, ringMass_kg: share * sizes_kg }).map(printed);
    expect([0.86, 1, 1.14].flatMap(at)).toEqual([]);
    expect(at(1.4)[0]).toMatch(/^the ring's \S+ kg is 40 % more than its sizes give, \S+ kg; one of them/);
    expect(at(0.8)[0]).toMatch(/is 20 % less than its sizes give/);
  });

  it('is told where the pads rub more than the ring has', () => {
    const both_m2 = (Math.PI / 2) * (disc.outer_m ** 2 - disc.inner_m ** 2);
    expect(sizeDoubts({ ...disc, swept_m2: 1.01 * both_m2 })).toEqual([]);
    expect(sizeDoubts({ ...disc, swept_m2: 1.03 * both_m2 }).map(printed)[0]).toMatch(
      /^the swept \d+ cm² is more than both faces of the ring have, \d+ cm²/,
    );
  });

  it('is named in the notices of a run', () => {
    expect(noticesOf('sizes', {})).toEqual([]);
    const [heavy] = noticesOf('sizes', { 'brakes.front.disc.ring_mass_kg': 14.8 });
    expect(heavy).toMatch(/^front: the ring's 14\.8 kg is \d+ % more/);
    expect(noticesOf('sizes', { 'brakes.rear.disc.swept_cm2': 2000 })[0]).toMatch(/^rear: the swept 2000/);
  });
});

it.each(shipped)('the sizes of %s agree, and none of its solid discs has a duct', (_, scenario) => {
  for (const { spec, corner } of compile(scenario).corners) {
    expect(sizeDoubts(spec.disc)).toEqual([]);
    expect(corner.brake.disc.kind === 'solid' && corner.brake.duct !== null).toBe(false);
  }
});

it('a solid disc with a duct is told that its span says little', () => {
  const solid = {
    'brakes.front.disc.kind': 'solid',
    'brakes.front.disc.vane_shape': 'none',
    'brakes.front.disc.gap_mm': 0,
    'brakes.front.disc.thickness_mm': 18.4,
  };
  expect(noticesOf('solid disc', solid)).toEqual([
    "front: solid disc: almost nothing of the duct's air reaches it in the model; this span says little",
  ]);
  expect(noticesOf('solid disc', {})).toEqual([]);
});
