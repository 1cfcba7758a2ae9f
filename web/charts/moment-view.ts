/** The disc in section, large, with the way of its air: where everything lies [px]. Inboard, with the duct, is left. */
import type { Point } from './columns.ts';
import { spreadLabels, type Box } from './place-labels.ts';
import type { RingDims } from './section-view.ts';

/** Inboard and outboard. */
type Pair = [Box, Box];

export interface MomentView {
  height: number;
  /** How much larger everything is than where there is least room. */
  scale: number;
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

const HEIGHT_PX = 306;
/** Narrower, names would touch: the drawing is scrolled. */
export const MOMENT_LEAST_PX = 480;

const TOP_PX = 54;
const RING_PX = 150;
const PAD_PX = 100;
const LABELS_PX = 116;
const widths = { caliper: 26, plate: 8, pad: 30 };
/** A thick ring gives way to the names beside it [px] */
const THICKEST_PX = 120;
const LARGEST = 1.4;
const SIDE_PX = widths.caliper + widths.plate + widths.pad;
const PLENUM_PX = { away: 8, width: 40, height: 52 };

/** The ring is drawn to scale in thickness and height, unless that leaves no room beside it; the rest is not. */
export function momentView(
  { width, tallest }: { width: number; tallest: number },
  kind: 'vented' | 'solid',
  dims: RingDims,
): MomentView {
  const scale = Math.max(1, Math.min(LARGEST, width / MOMENT_LEAST_PX, tallest / HEIGHT_PX));
  const gap_mm = kind === 'vented' ? dims.gap_mm : 0;
  const all_mm = 2 * dims.cheek_mm + gap_mm;
  const thickness = Math.min(THICKEST_PX, (all_mm * RING_PX) / ((dims.outer_mm - dims.inner_mm) / 2));
  const cheek = (thickness * dims.cheek_mm) / all_mm;
  const left = (width - LABELS_PX) / scale - SIDE_PX - thickness;
  const right = left + thickness;
  const foot = TOP_PX + RING_PX;
  const box = (x: number, y: number, wide: number, height: number): Box => ({
    left: scale * x,
    top: scale * y,
    width: scale * wide,
    height: scale * height,
  });
  const both = (away: number, wide: number, y: number, height: number): Pair => [
    box(left - away - wide, y, wide, height),
    box(right + away, y, wide, height),
  ];
  const ring = box(left, TOP_PX, thickness, RING_PX);
  return {
    height: scale * HEIGHT_PX,
    scale,
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
    bell: bellPath(right, Math.min(12, cheek), foot, scale),
    axis_y: scale * (foot + 88),
    duct_y: scale * (foot + 36),
    plenum: box(left - PLENUM_PX.away - PLENUM_PX.width, foot + 10, PLENUM_PX.width, PLENUM_PX.height),
  };
}

/** From the foot of the outboard cheek out to the hub: it closes the bore, so that the air goes up through the vanes. */
function bellPath(right: number, wall: number, foot: number, scale: number): string {
  const at = (value: number): number => scale * value;
  return `M${at(right)} ${at(foot)}v${at(14)}h${at(26)}v${at(56)}h${at(-wall)}v${at(wall - 56)}h${at(-26)}v${at(-14 - wall)}z`;
}

export interface Leader {
  from: Point;
  /** Baseline of the name. */
  x: number;
  y: number;
}

/** Height of a name with its value under it [px] */
const LABEL_PX = 37;

/** Where each part's name stands, left or right of the drawing, and the point on the part that it is of. */
export function momentLeaders(view: MomentView, width: number): Record<string, Leader> {
  const { ring, cheeks, caliper, bore, pads, gap, scale } = view;
  const outer = cheeks.at(-1) ?? ring;
  const [left, right] = [caliper[0].left, caliper[1].left + caliper[1].width];
  const on = (box: Box, across: number, down: number): Point => ({
    x: box.left + box.width * across,
    y: box.top + scale * down,
  });
  const onRight: [string, Point][] = [
    ['rim_K', on(outer, 0.5, 3)],
    ['wall_K', gap ? on(outer, 0.08, 52) : on(ring, 0.5, 52)],
    ['cheek_K', on(outer, gap ? 0.5 : 0.75, 84)],
    ['face_K', on(outer, 0.95, 118)],
    ['bell_K', { x: ring.left + ring.width + 20 * scale, y: ring.top + ring.height + 40 * scale }],
  ];
  const onLeft: [string, Point][] = [
    ['wheelhouse_K', { x: left - 12, y: Math.max(26, ring.top - 16 * scale) }],
    ['caliper_K', on(caliper[0], 0.25, 20)],
    ['fluid_K', on(bore[0], 0.5, 24)],
    ['pad_K', on(pads[0], 0.5, 82)],
  ];
  const placed = (side: [string, Point][], x: number): [string, Leader][] => {
    const ys = spreadLabels(
      side.map(([, from]) => from.y - 4),
      LABEL_PX,
      24,
      view.height - 40,
    );
    return side.map(([key, from], i) => [key, { from, x, y: ys[i] ?? from.y }]);
  };
  return Object.fromEntries([
    ...placed(onRight, Math.min(width - 96, right + 18)),
    ...placed(onLeft, Math.max(0, left - 128)),
  ]);
}
