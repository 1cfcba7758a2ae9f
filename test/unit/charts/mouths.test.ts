import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { defaultScenario } from '../../../engine/scenario/library.ts';
import { LETTER_PX, letterPlaces } from '../../../web/controls/letter-places.ts';
import { GAP_PX, mouthScale } from '../../../web/pages/stint/mouth-scale.ts';
import { roomIn } from '../../../web/pages/stint/room.ts';

const panels = [0, 40, 60, 75, 85];
const { front, rear } = defaultScenario().brakes;
const ducts = [front.duct, rear.duct];
const COLUMN_PX = 408;

describe('panel letters under a range', () => {
  it('stand at their percent where there is room', () => {
    expect(letterPlaces(panels, 400, 400).map(({ x }) => x)).toEqual([0, 160, 240, 300, 340]);
  });

  it('never overlap in a row nor leave the column, whatever the set', () => {
    const anySet = fc.uniqueArray(fc.integer({ min: 0, max: 100 }), { minLength: 1, maxLength: 8 });
    fc.assert(
      fc.property(anySet, fc.integer({ min: 60, max: 210 }), (set, width_px) => {
        const places = letterPlaces(
          set.sort((a, b) => a - b),
          width_px,
          158,
        );
        for (const row of [0, 1]) {
          const inRow = places.filter((place) => place.row === row);
          inRow.slice(1).forEach(({ x }, i) => {
            expect(x - inRow[i]!.x).toBeGreaterThanOrEqual(LETTER_PX - 1e-9);
          });
        }
        for (const { x } of places) {
          expect(x).toBeGreaterThanOrEqual(0);
          expect(x).toBeLessThanOrEqual(Math.max(width_px, 158 - LETTER_PX / 2) + 1e-9);
        }
      }),
    );
  });

  it('use a second row only when one is too short', () => {
    const eight = [0, 10, 20, 30, 40, 50, 60, 70];
    expect(letterPlaces(eight, 200, 200).every(({ row }) => row === 0)).toBe(true);
    expect(letterPlaces(eight, 120, 158).map(({ row }) => row)).toEqual([0, 1, 0, 1, 0, 1, 0, 1]);
  });
});

it('a lap’s trace has room enough in the lowest wide window, and more in a higher one', () => {
  expect(roomIn(1280, 800).lapPlot).toBeGreaterThanOrEqual(160);
  expect(roomIn(1280, 900).lapPlot).toBeGreaterThan(roomIn(1280, 800).lapPlot);
});

describe('room for the mouths', () => {
  it('the strips stand beside the mouth in a low window and below it in a high one', () => {
    expect([roomIn(1360, 800).isStacked, roomIn(1360, 1000).isStacked]).toEqual([true, false]);
    expect(roomIn(1024, 768).isStacked).toBe(false);
    expect(roomIn(1360, 800, true).isStacked).toBe(false);
  });

  it('a higher window never makes the mouth lower', () => {
    for (let height = 600; height < 1400; height += 10)
      expect(roomIn(1360, height + 10).mouth).toBeGreaterThanOrEqual(
        Math.min(roomIn(1360, height).mouth, 150),
      );
  });

  it('the wider mouth and its strips fit half the column, and the taller one the height', () => {
    for (const isStacked of [true, false]) {
      const scale = mouthScale(ducts, { width: COLUMN_PX, tallest: 124, isStacked });
      expect(scale * 110 + (isStacked ? 54 : 0)).toBeLessThanOrEqual((COLUMN_PX - GAP_PX) / 2);
      expect(scale * 100).toBeLessThanOrEqual(124);
    }
  });
});
