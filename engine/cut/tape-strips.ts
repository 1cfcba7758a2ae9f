/** Strips of tape as they are laid: how far each reaches into the mouth and how long it is cut. */

import { flattened } from './path.ts';
import type { Loop } from '../duct/loop.ts';
import type { Point } from './side.ts';

export type TapeEdge = 'outboard' | 'inboard' | 'top' | 'bottom';

export interface TapeLaying {
  mouth: Loop;
  /** The edge of the mouth that the first strip begins at. */
  from: TapeEdge;
  strip_mm: number;
  /** How far each strip lies over the one before. */
  overlap_mm: number;
  strips: number;
}

export interface TapeStrip {
  /** In the order of laying, from 1. */
  number: number;
  /** From the edge that the first begins at. */
  start_mm: number;
  end_mm: number;
  /** On the mouth, along the strip. */
  low_mm: number;
  high_mm: number;
  /** To cut off the roll: over the mouth, a hold on both sides, and the end that is folded. */
  length_mm: number;
  /** Whether it reaches beyond the far rim, and is cut there. */
  isTrimmed: boolean;
}

/** Held on the body at both ends, and folded on itself at one to be pulled by (common practice, no source) [mm] */
export const HOLD_MM = 20;
export const FOLD_MM = 20;
/** A strip cannot be laid better than this [mm] */
const LAID_MM = 0.5;

export function tapeStrips({ mouth, from, strip_mm, overlap_mm, strips }: TapeLaying): TapeStrip[] {
  const outline = flattened(mouth).map((point) => seenFrom(from, point));
  const edge_mm = Math.min(...outline.map(({ deep_mm }) => deep_mm));
  const depth_mm = Math.max(...outline.map(({ deep_mm }) => deep_mm)) - edge_mm;
  return Array.from({ length: strips }, (_, i) => {
    const start_mm = i * (strip_mm - overlap_mm);
    const end_mm = start_mm + strip_mm;
    const [low_mm, high_mm] = spanWithin(outline, edge_mm + start_mm, edge_mm + end_mm);
    const length_mm = high_mm - low_mm + 2 * HOLD_MM + FOLD_MM;
    return {
      number: i + 1,
      start_mm,
      end_mm,
      low_mm,
      high_mm,
      length_mm,
      isTrimmed: end_mm > depth_mm + LAID_MM,
    };
  });
}

/** A place as the one sees it who lays tape: how deep in the mouth from the first edge, and how far along the strip. */
interface Seen {
  deep_mm: number;
  along_mm: number;
}

function seenFrom(from: TapeEdge, { x_mm, y_mm }: Point): Seen {
  if (from === 'outboard' || from === 'inboard')
    return { deep_mm: from === 'outboard' ? x_mm : -x_mm, along_mm: y_mm };
  return { deep_mm: from === 'bottom' ? y_mm : -y_mm, along_mm: x_mm };
}

export function placeOf(from: TapeEdge, { deep_mm, along_mm }: Seen): Point {
  if (from === 'outboard' || from === 'inboard')
    return { x_mm: from === 'outboard' ? deep_mm : -deep_mm, y_mm: along_mm };
  return { x_mm: along_mm, y_mm: from === 'bottom' ? deep_mm : -deep_mm };
}

/** How deep the first edge lies. */
export const firstEdge_mm = (mouth: Loop, from: TapeEdge): number =>
  Math.min(...flattened(mouth).map((point) => seenFrom(from, point).deep_mm));

/** From where to where the mouth reaches along a strip between two depths. */
function spanWithin(
  outline: readonly Seen[],
  start_mm: number,
  end_mm: number,
): [low_mm: number, high_mm: number] {
  const found = outline.flatMap((a, i) => {
    const b = outline[(i + 1) % outline.length]!;
    const at = (deep_mm: number): number[] => {
      const share = (deep_mm - a.deep_mm) / (b.deep_mm - a.deep_mm);
      return share >= 0 && share <= 1 ? [a.along_mm + share * (b.along_mm - a.along_mm)] : [];
    };
    const isBetween = a.deep_mm >= start_mm && a.deep_mm <= end_mm;
    return [...(isBetween ? [a.along_mm] : []), ...at(start_mm), ...at(end_mm)];
  });
  return found.length === 0 ? [0, 0] : [Math.min(...found), Math.max(...found)];
}
