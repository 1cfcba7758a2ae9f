/** The disc in section, large, with the way of its air: where everything lies [px]. Inboard, with the duct, is left. */
import type { Point } from './columns.ts';
import { spreadLabels, type Box } from './place-labels.ts';
import type { RingDims } from './section-view.ts';

/** Inboard and outboard. */
type Pair = [Box, Box];

export interface MomentView {
  caliper: Pair;
  bore: Pair;
  plates: Pair;
  pads: Pair;
  /** Two for a vented disc, one for a solid disc. */
  cheeks: Box[];
  gap: Box | null;
  ring: Box;
  bell: string;
  axis_y: number;
  /** Middle of the hose. */
  duct_y: number;
  /** Where the hose ends behind the disc. */
  plenum: Box;
}

export const MOMENT_HEIGHT_PX = 318;
/** Narrower, names would touch: the drawing is scrolled. */
export const MOMENT_LEAST_PX = 480;

const TOP_PX = 66;
const RING_PX = 150;
const PAD_PX = 100;
const LABELS_PX = 116;
const widths = { caliper: 26, plate: 8, pad: 30 };
const SIDE_PX = widths.caliper + widths.plate + widths.pad;
const PLENUM_PX = { away: 8, width: 40, height: 52 };

/** The ring is drawn to scale in thickness and height, unless that leaves no room beside it; the rest is not. */
export function momentView(width: number, kind: 'vented' | 'solid', dims: RingDims): MomentView {
  const gap_mm = kind === 'vented' ? dims.gap_mm : 0;
  const scale = RING_PX / ((dims.outer_mm - dims.inner_mm) / 2);
  const all_mm = 2 * dims.cheek_mm + gap_mm;
  const thickness = Math.min(120, all_mm * scale);
  const cheek = (thickness * dims.cheek_mm) / all_mm;
  const left = width - LABELS_PX - SIDE_PX - thickness;
  const right = left + thickness;
  const foot = TOP_PX + RING_PX;
  const box = (x: number, y: number, wide: number, height: number): Box => ({
    left: x,
    top: y,
    width: wide,
    height,
  });
  const both = (away: number, wide: number, y: number, height: number): Pair => [
    box(left - away - wide, y, wide, height),
    box(right + away, y, wide, height),
  ];
  const ring = box(left, TOP_PX, thickness, RING_PX);
  return {
    pads: both(0, widths.pad, TOP_PX + 3, PAD_PX),
    plates: both(widths.pad, widths.plate, TOP_PX + 3, PAD_PX),
    caliper: both(widths.pad + widths.plate, widths.caliper, TOP_PX - 8, PAD_PX + 16),
    bore: both(widths.pad + widths.plate, 10, TOP_PX + 26, 48),
    cheeks:
      kind === 'vented'
        ? [box(left, TOP_PX, cheek, RING_PX), box(right - cheek, TOP_PX, cheek, RING_PX)]
        : [ring],
    gap: kind === 'vented' ? box(left + cheek, TOP_PX, thickness - 2 * cheek, RING_PX) : null,
    ring,
    bell: bellPath(right, Math.min(12, cheek), foot),
    axis_y: foot + 88,
    duct_y: foot + 36,
    plenum: box(left - PLENUM_PX.away - PLENUM_PX.width, foot + 10, PLENUM_PX.width, PLENUM_PX.height),
  };
}

/** From the foot of the outboard cheek out to the hub: it closes the bore, so that the air goes up through the vanes. */
const bellPath = (right: number, wall: number, foot: number): string =>
  `M${right} ${foot}v14h26v56h${-wall}v${wall - 56}h-26v${-14 - wall}z`;

export interface Leader {
  from: Point;
  /** Baseline of the name. */
  x: number;
  y: number;
  anchor: 'start' | 'end';
}

/** Height of a name with its value under it [px] */
const LABEL_PX = 37;

/** Where each part's name stands, left or right of the drawing, and the point on the part that it is of. */
export function momentLeaders(view: MomentView, width: number): Record<string, Leader> {
  const { ring, cheeks, caliper, bore, pads, gap } = view;
  const outer = cheeks.at(-1) ?? ring;
  const [left, right] = [caliper[0].left, caliper[1].left + caliper[1].width];
  const middle = (box: Box, down: number): Point => ({ x: box.left + box.width / 2, y: box.top + down });
  const onRight: [string, Point][] = [
    ['rim_K', middle(outer, 3)],
    ['wall_K', gap ? { x: outer.left + 2, y: ring.top + 52 } : middle(ring, 52)],
    ['cheek_K', gap ? middle(outer, 84) : { x: ring.left + ring.width * 0.75, y: ring.top + 84 }],
    ['face_K', { x: ring.left + ring.width - 2, y: ring.top + 118 }],
    ['bell_K', { x: ring.left + ring.width + 20, y: ring.top + ring.height + 40 }],
  ];
  const onLeft: [string, Point][] = [
    ['wheelhouse_K', { x: left - 12, y: ring.top - 16 }],
    ['caliper_K', { x: caliper[0].left + 7, y: ring.top + 12 }],
    ['fluid_K', middle(bore[0], 24)],
    ['pad_K', middle(pads[0], 82)],
  ];
  const placed = (side: [string, Point][], x: number): [string, Leader][] => {
    const ys = spreadLabels(
      side.map(([, from]) => from.y - 4),
      LABEL_PX,
      24,
      MOMENT_HEIGHT_PX - 40,
    );
    return side.map(([key, from], i) => [key, { from, x, y: ys[i] ?? from.y, anchor: 'start' }]);
  };
  return Object.fromEntries([
    ...placed(onRight, Math.min(width - 96, right + 18)),
    ...placed(onLeft, Math.max(0, left - 128)),
  ]);
}
