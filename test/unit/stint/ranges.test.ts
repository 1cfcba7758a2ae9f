import { describe, expect, it } from 'vitest';
import { printed } from '../../../engine/said.ts';
import { shippedStint } from '../../../engine/scenario/library.ts';
import type { Changes } from '../../../engine/scenario/override.ts';
import { compile } from '../../../engine/stint/compile.ts';
import { run } from '../../../engine/stint/run.ts';
import { changed, driven } from '../../support/stints.ts';

const notices = (changes: Changes): string[] =>
  driven(changed({ 'stint.laps': 5, ...changes }))
    .notices.filter(({ kind }) => kind === 'range')
    .map(({ said }) => printed(said));

describe('a run that leaves where a law holds', () => {
  it('says nothing where it stays inside', () => expect(notices({})).toEqual([]));

  it.each([
    ['brakes.front.disc.emissivity_track', 0.1, /front: radiation of the disc: emissivity 0\.1 to 0\.8/],
    ['brakes.front.wheel.still_W_per_m2K', 9, /front: convection of a standing disc: .* 9 W/],
    [
      'brakes.front.wheel.open_pct',
      85,
      /front: air past the outer face: .* 0\.85 where the law holds from 0\.1 to 0\.8/,
    ],
    ['brakes.front.duct.clearance_mm', 15, /front: flattened hose/],
    ['traffic.gap_m', 100, /front: wake of the car ahead: gap to the car ahead 100 m/],
    ['conditions.ambient_C', 40, null],
  ] as const)('names law, value and range: %s at %s', (key, value, expected) => {
    const found = notices({ [key]: value });
    if (expected) expect(found.join('\n')).toMatch(expected);
    else expect(found).toEqual([]);
  });

  it('names a material that is hotter than its table', () => {
    const found = notices({ 'blanking_pct.front': 100, 'correction.heat.factor': 2 });
    expect(found.join('\n')).toMatch(/front: properties of grey iron: temperature .* °C/);
  });

  it('is told with the columns, and left out of a summary', () => {
    const model = compile(shippedStint('sorrelby-20'));
    const [front] = run(model).corners;
    expect(front!.ranges.length).toBeGreaterThan(12);
    for (const range of front!.ranges) {
      expect(range.from).toBeLessThanOrEqual(range.to);
      expect(range.left).toBe(range.from < range.low || range.to > range.high);
      expect(range.source).not.toBe('');
    }
    expect(run(model, 'summary').corners[0]!.ranges).toEqual([]);
  });
});
