import { svgPathProperties } from 'svg-path-properties';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Duct } from '../../../engine/index.ts';
import { defaultScenario } from '../../../engine/scenario/library.ts';
import { mouthShape } from '../../../web/charts/mouth-shape.ts';
import { edgeOf } from '../../../web/charts/mouth-view.ts';
import { mouthWords, plateWords } from '../../../web/display/mouth-words.ts';
import { tapeWords } from '../../../web/display/tape-words.ts';

const TOP = 34;
const ductOf = (own: Partial<Duct>): Duct => ({ ...defaultScenario().brakes.front.duct!, ...own });
const drawn = (own: Partial<Duct>, scale = 1.5) => mouthShape(ductOf(own), scale, TOP);
const plain = (text: string | null): string => (text ?? '').replaceAll('\u00a0', ' ');

const anyForm = fc.record({
  mouth_shape: fc.constantFrom(
    'rectangle' as const,
    'rounded rectangle' as const,
    'round' as const,
    'oval' as const,
  ),
  blank_from: fc.constantFrom('outboard' as const, 'inboard' as const, 'top' as const, 'bottom' as const),
  blank: fc.constantFrom('edge' as const, 'hole' as const, 'slots' as const, 'perforated' as const),
});

describe('the drawing of a mouth', () => {
  it('finds every whole percent again where its edge is drawn', () => {
    fc.assert(
      fc.property(anyForm, fc.integer({ min: 2, max: 98 }), (form, pct) => {
        const shape = drawn(form);
        expect(shape.blankingAt(shape.edgeAt(pct))).toBe(pct);
      }),
    );
  });

  it('of a rectangle that is blanked from outboard has its edge over the thumb', () => {
    const shape = drawn({});
    expect([shape.width, shape.depth, shape.isPlumb]).toEqual([165, 150, true]);
    expect(shape.edgeAt(70)).toBeCloseTo(edgeOf(70, 165), 9);
    expect(shape.blankBox(70)).toEqual({ left: 0, top: TOP, width: shape.edgeAt(70), height: 150 });
    expect(shape.openingsAt(70)).toBe('');
    expect(shape.depths(70)).toEqual(['77', '33']);
  });

  it('has the edge of a round mouth where that share is covered, and hatches from the side it begins', () => {
    const round = { mouth_shape: 'round', mouth_width_mm: 100 } as const;
    for (const [blank_from, edge, box] of [
      ['outboard', 59.6, { left: 0, top: TOP, width: 59.6, height: 200 }],
      ['inboard', 140.4, { left: 140.4, top: TOP, width: 59.6, height: 200 }],
      ['top', TOP + 59.6, { left: 0, top: TOP, width: 200, height: 59.6 }],
      ['bottom', TOP + 140.4, { left: 0, top: TOP + 140.4, width: 200, height: 59.6 }],
    ] as const) {
      const shape = drawn({ ...round, blank_from }, 2);
      expect(shape.isPlumb).toBe(false);
      expect(shape.edgeAt(25)).toBeCloseTo(edge, 1);
      for (const [name, value] of Object.entries(box))
        expect(shape.blankBox(25)[name as keyof typeof box]).toBeCloseTo(value, 1);
    }
  });

  it('draws an outline of the mouth’s own length, and as many openings as it has', () => {
    const round = drawn({ mouth_shape: 'round', mouth_width_mm: 100 }, 1);
    expect(new svgPathProperties(round.outline).getTotalLength()).toBeCloseTo(100 * Math.PI, 0);
    const triangle = drawn(
      {
        mouth_shape: 'outline',
        mouth_outline_mm: [
          [0, 0],
          [80, 0],
          [0, 60],
        ],
      },
      1,
    );
    expect(new svgPathProperties(triangle.outline).getTotalLength()).toBeCloseTo(240, 6);
    const slots = drawn({ blank: 'slots', blank_slots: 5 });
    expect(slots.openingsAt(60).match(/M/g)).toHaveLength(5);
  });

  it('shows a traced corner that is high and inboard up and to the right', () => {
    const shape = drawn(
      {
        mouth_shape: 'outline',
        mouth_outline_mm: [
          [0, 0],
          [80, 60],
          [0, 60],
        ],
      },
      1,
    );
    expect(shape.outline).toContain(`80.00 ${TOP}.00`);
    expect(shape.outline).toContain(`0.00 ${TOP + 60}.00`);
  });
});

describe('a mouth in words', () => {
  it.each<[Partial<Duct>, string]>([
    [{}, '110 × 100 mm'],
    [{ mouth_shape: 'round' }, '110 mm round'],
    [{ mouth_shape: 'oval' }, '110 × 100 mm oval'],
    [
      {
        mouth_shape: 'outline',
        mouth_outline_mm: [
          [5, 5],
          [85, 5],
          [5, 65],
        ],
      },
      '80 × 60 mm traced',
    ],
  ])('%j is %s', (own, words) => {
    expect(plain(mouthWords(ductOf(own)))).toBe(words);
  });

  it('tells what a plate is cut with in the place of strips', () => {
    expect(plateWords(ductOf({}), 70)).toBeNull();
    expect(plain(plateWords(ductOf({ blank: 'hole' }), 75))).toBe('hole 55.0 mm wide');
    expect(plain(plateWords(ductOf({ blank: 'slots', blank_slots: 1 }), 75))).toMatch(
      /^1 slot of \d+(\.\d)? mm$/,
    );
    expect(plain(plateWords(ductOf({ blank: 'perforated' }), 80))).toMatch(/^\d+ holes of [78](\.\d)? mm$/);
    expect(plateWords(ductOf({ blank: 'hole' }), 0)).toBe('no plate');
    expect(plateWords(ductOf({ blank: 'hole' }), 100)).toBe('a closed plate');
    expect(plain(tapeWords(70, ductOf({ blank: 'hole' }), 'hole 60 mm wide'))).toBe(
      'hole 60 mm wide; panel D is 75 %',
    );
  });
});
