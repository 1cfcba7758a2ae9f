/** A mouth of any form and its blank in pixels of a drawing: outline, openings, the edge and where a hand takes it. */
import type { Duct } from '../../engine/index.ts';
import { blankAt, blankOf, mouthOutline, sidesOf, taped, type Loop } from '../../engine/scenario/mouth.ts';
import { reachOf } from '../../engine/scenario/tape.ts';
import { unitName } from '../display/units.ts';
import { edgeOf, depths, mouthWidth_px } from './mouth-view.ts';
import type { Box } from './place-labels.ts';

export interface Line {
  x1: number;
  y1: number;
  x2: number;
  y2: number;
}

export interface MouthShape {
  width: number;
  depth: number;
  outline: string;
  /** Whether a straight edge blanks it, rather than a plate with openings. */
  isEdge: boolean;
  /** Whether the edge stands upright, so that it moves across. */
  isUpright: boolean;
  /** Whether the edge is over the thumb: as far across as the share that it covers. */
  isPlumb: boolean;
  /** Where the edge is, from the left or from the top [px] */
  edgeAt(blanking_pct: number): number;
  /** Whole percent for an edge that is there, as the field shows it. */
  blankingAt(place: number): number;
  /** Where a blanking is marked: along the edge, or under a plate with openings. */
  lineAt(blanking_pct: number): Line;
  /** Where a strip ends, so far from the side where strips begin. */
  stripAt(depth_mm: number): Line;
  /** The box that the blank is hatched in. */
  blankBox(blanking_pct: number): Box;
  /** What a plate leaves open; empty for a straight edge. */
  openingsAt(blanking_pct: number): string;
  /** "77" and "33": covered and open along the way of the edge. */
  depths(blanking_pct: number): [blanked: string, open: string];
}

/** How far marks reach under a plate that has no edge to lie on [px] */
const TICK_PX = 7;
/** Of a rectangle that nothing is said of: no mouth is sharp at its corners. */
const CORNER_PX = 12;

/** @param top - where the mouth begins in its drawing [px] */
export function mouthShape(duct: Duct, scale: number, top: number): MouthShape {
  const outline = mouthOutline(duct);
  const { kind, from } = blankOf(duct);
  const { across_mm, pctAt, depthFor } = reachOf(taped(duct));
  const width = mouthWidth_px(outline.width_mm, scale);
  const depth = Math.round(outline.height_mm * scale);
  const isEdge = kind === 'edge';
  const isUpright = !isEdge || from === 'outboard' || from === 'inboard';
  const isFromFar = isEdge && (from === 'inboard' || from === 'bottom');
  const long = isUpright ? width : depth;
  const placeOf = (near: number): number => (isFromFar ? long - near : near) + (isUpright ? 0 : top);
  const edgeAt = (pct: number): number =>
    isEdge ? placeOf((depthFor(pct) / across_mm) * long) : edgeOf(pct, width);
  const pathOf = (loop: Loop): string =>
    loopPath(loop, { x: width / outline.width_mm, y: depth / outline.height_mm, foot: top + depth });
  const lineThrough = (place: number): Line =>
    isUpright
      ? { x1: place, x2: place, y1: top, y2: top + depth }
      : { x1: 0, x2: width, y1: place, y2: place };

  return {
    width,
    depth,
    outline: outline.kind === 'rectangle' ? roundedBox(width, depth, top) : pathOf(outline.loop),
    isEdge,
    isUpright,
    isPlumb: !isEdge || (outline.kind === 'rectangle' && from === 'outboard'),
    edgeAt,
    blankingAt(place) {
      const near = isFromFar ? long - (place - (isUpright ? 0 : top)) : place - (isUpright ? 0 : top);
      const share = Math.min(1, Math.max(0, near / long));
      return Math.round(isEdge ? pctAt(share * across_mm) : 100 * share);
    },
    lineAt: (pct) =>
      isEdge
        ? lineThrough(edgeAt(pct))
        : { ...lineThrough(edgeAt(pct)), y1: top + depth, y2: top + depth + TICK_PX },
    stripAt: (depth_mm) => lineThrough(placeOf((depth_mm / across_mm) * long)),
    blankBox(pct) {
      const edge = edgeAt(pct);
      const whole = { left: 0, top, width, height: depth };
      if (!isEdge) return whole;
      if (isUpright)
        return isFromFar ? { ...whole, left: edge, width: width - edge } : { ...whole, width: edge };
      return isFromFar
        ? { ...whole, top: edge, height: top + depth - edge }
        : { ...whole, height: edge - top };
    },
    openingsAt: (pct) => (isEdge ? '' : blankAt(duct, pct).openings.map(pathOf).join('')),
    depths: (pct) => depths(across_mm, depthFor(pct)),
  };
}

/** "44 mm blanked, 16 open", where no dimension line can stand. */
export const depthWords = ([blanked, open]: [string, string]): string =>
  `${blanked} ${unitName('mm')} blanked, ${open} open`;

function roundedBox(width: number, depth: number, top: number): string {
  const r = Math.min(CORNER_PX, depth / 4);
  const arc = (x: number, y: number): string => `a${r} ${r} 0 0 1 ${x} ${y}`;
  return `M${r} ${top}h${width - 2 * r}${arc(r, r)}v${depth - 2 * r}${arc(-r, r)}h${2 * r - width}${arc(-r, -r)}v${2 * r - depth}${arc(r, -r)}z`;
}

/** A loop in the axes of the screen, where y goes down: what turned left goes on turning left to the eye. */
function loopPath(loop: Loop, scale: { x: number; y: number; foot: number }): string {
  const at = ({ x_mm, y_mm }: Loop[number]): string =>
    `${short(scale.x * x_mm)} ${short(scale.foot - scale.y * y_mm)}`;
  const sides = sidesOf(loop).map(([corner, to]) => {
    if (corner.bulge === 0) return `L${at(to)}`;
    const chord_mm = Math.hypot(to.x_mm - corner.x_mm, to.y_mm - corner.y_mm);
    const radius = (chord_mm * (1 + corner.bulge ** 2)) / (4 * Math.abs(corner.bulge));
    const turn = `${Math.abs(corner.bulge) > 1 ? 1 : 0} ${corner.bulge > 0 ? 0 : 1}`;
    return `A${short(scale.x * radius)} ${short(scale.y * radius)} 0 ${turn} ${at(to)}`;
  });
  return `M${loop.slice(0, 1).map(at).join('')}${sides.join('')}Z`;
}

const short = (value: number): string => value.toFixed(2);
