/** The part of a mouth that keeps clear of its edge: where slots and holes may be, so that the panel hangs together. */
import { centreOf, reachFromCentre, scaledAbout } from './centre.ts';
import { placed, type Loop } from './loop.ts';
import { mouthOutline, type MouthOutline } from './mouth-outline.ts';

/** Least width of a panel between an opening and the mouth's edge, and between openings (common practice, no source) [mm] */
export const RIM_MM = 4;
export const BAR_MM = 3;

/**
 * The inner part of a mouth, a rim inside its edge.
 *
 * @remarks
 * The same form made smaller. An oval and a traced outline are scaled about their centre, so that their rim is the least
 * one where a side is nearest to the centre and wider elsewhere; an outline whose sides are not all seen from its centre
 * has none.
 *
 * @param outline - the mouth
 * @returns counter-clockwise loop in the mouth's own axes, or null where no room is left
 */
export function insetOf(outline: MouthOutline): Loop | null {
  const { kind, width_mm, height_mm } = outline;
  const reach_mm = reachFromCentre(outline);
  if (reach_mm <= RIM_MM) return null;
  if (kind === 'outline' || kind === 'oval')
    return scaledAbout(outline.loop, centreOf(outline), 1 - RIM_MM / reach_mm);
  const inner = mouthOutline({
    mouth_shape: kind,
    mouth_width_mm: width_mm - 2 * RIM_MM,
    mouth_height_mm: height_mm - 2 * RIM_MM,
    mouth_corner_mm: Math.max(0, cornerOf(outline) - RIM_MM),
  });
  return placed(inner.loop, { right_mm: RIM_MM, up_mm: RIM_MM });
}

/** Radius of a rounded rectangle's corners: its loop begins where the first one ends [mm] */
const cornerOf = ({ kind, loop }: MouthOutline): number =>
  kind === 'rounded rectangle' ? Math.min(...loop.map(({ x_mm }) => x_mm).filter((x_mm) => x_mm > 0)) : 0;
