/** Mouths of every shape for properties, and areas measured in another way than the engine does. */
import fc from 'fast-check';
import { areaMouth, type MouthKeys } from '../../../engine/duct/mouth-area.ts';
import { along, sidesOf, type Loop } from '../../../engine/duct/loop.ts';

const side = fc.double({ min: 20, max: 250, noNaN: true });

/** Corners at rising angles about a place, none half a turn on, at any distance: never crosses itself, seldom convex. */
const traced = fc
  .array(
    fc.tuple(fc.double({ min: 0.45, max: 1, noNaN: true }), fc.double({ min: 20, max: 150, noNaN: true })),
    {
      minLength: 3,
      maxLength: 9,
    },
  )
  .map((steps): [number, number][] => {
    const whole = steps.reduce((sum, [step]) => sum + step, 0);
    let passed = 0;
    return steps.map(([step, far]) => {
      passed += (step / whole) * 2 * Math.PI;
      return [far * Math.cos(passed), far * Math.sin(passed)];
    });
  });

export const anyMouth: fc.Arbitrary<MouthKeys> = fc
  .oneof(
    fc
      .record({
        mouth_width_mm: side,
        mouth_height_mm: side,
        mouth_shape: fc.constantFrom(
          'rectangle' as const,
          'rounded rectangle' as const,
          'round' as const,
          'oval' as const,
        ),
        mouth_corner_mm: fc.double({ min: 0, max: 30, noNaN: true }),
      })
      .map((keys) => ({
        ...keys,
        mouth_corner_mm: Math.min(keys.mouth_corner_mm, keys.mouth_width_mm / 2, keys.mouth_height_mm / 2),
      })),
    traced.map((mouth_outline_mm) => ({
      mouth_shape: 'outline' as const,
      mouth_width_mm: 100,
      mouth_height_mm: 100,
      mouth_outline_mm,
    })),
  )
  .filter((mouth) => areaMouth(mouth) > 400);

export const anySide = fc.constantFrom(
  'outboard' as const,
  'inboard' as const,
  'top' as const,
  'bottom' as const,
);

/** The loop as many points. */
export const pointsOf = (loop: Loop, pieces = 60): [x: number, y: number][] =>
  sidesOf(loop).flatMap(([from, to]) =>
    Array.from({ length: from.bulge === 0 ? 1 : pieces }, (_, i): [number, number] => {
      const { x, y } = along(from, to, i / pieces);
      return [x, y];
    }),
  );

/** Shoelace over those points: below 0 for a hole. */
export function measured(loops: readonly Loop[]): number {
  return loops.map((loop) => shoelace(pointsOf(loop))).reduce((sum, area) => sum + area, 0);
}

const shoelace = (points: [x: number, y: number][]): number =>
  points.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = points[(i + 1) % points.length]!;
    return sum + ((nextX - x) * (nextY + y)) / -2;
  }, 0);
