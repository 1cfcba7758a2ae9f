import type { Point } from './columns.ts';
import type { Box } from './place-labels.ts';

/** A disc in section, half of it, axis below: where its parts lie [px]. */
export interface SectionView {
  caliper: Box[];
  bore: Box[];
  plates: Box[];
  pads: Box[];
  /** Two for a vented disc, one for a solid disc. */
  cheeks: Box[];
  gap: Box | null;
  ring: Box;
  bell: string;
  axis_y: number;
  caliperLeader: Point;
  fluidLeader: Point;
  right: number;
}

export interface RingDims {
  outer_mm: number;
  inner_mm: number;
  cheek_mm: number;
  gap_mm: number;
}

/** A plausible ring where no dimensions are given [mm] */
const ordinary: RingDims = { outer_mm: 380, inner_mm: 250, cheek_mm: 9, gap_mm: 17 };

const TOP_PX = 44;
const RING_PX = 106;
const PAD_PX = 70;
const LABELS_PX = 84;
const widths = { caliper: 13, plate: 5, pad: 18 };

/** The ring is drawn to scale in thickness and height, unless it would not leave room for the labels. */
export function sectionView(width: number, kind: 'vented' | 'solid', dims: RingDims = ordinary): SectionView {
  const sides = widths.caliper + widths.plate + widths.pad;
  const gap_mm = kind === 'vented' ? dims.gap_mm : 0;
  const scale = RING_PX / ((dims.outer_mm - dims.inner_mm) / 2);
  const room = Math.max(36, Math.min(110, width - LABELS_PX - 2 * sides));
  const thickness = Math.min(room, (2 * dims.cheek_mm + gap_mm) * scale);
  const cheek = (thickness * dims.cheek_mm) / (2 * dims.cheek_mm + gap_mm);
  const box = (left: number, wide: number, height: number, top = TOP_PX): Box => ({
    left,
    top,
    width: wide,
    height,
  });
  const ring = box(sides, thickness, RING_PX);
  const right = sides + thickness;
  const foot = TOP_PX + RING_PX;
  const both = (offset: number, wide: number, height: number, top = TOP_PX): Box[] => [
    box(offset, wide, height, top),
    box(right + sides - offset - wide, wide, height, top),
  ];
  return {
    caliper: both(0, widths.caliper, PAD_PX + 12, TOP_PX - 6),
    bore: both(widths.caliper - 6, 6, 34, TOP_PX + 18),
    plates: both(widths.caliper, widths.plate, PAD_PX, TOP_PX + 2),
    pads: both(widths.caliper + widths.plate, widths.pad, PAD_PX, TOP_PX + 2),
    cheeks: kind === 'vented' ? both(sides, cheek, RING_PX) : [ring],
    gap: kind === 'vented' ? box(sides + cheek, thickness - 2 * cheek, RING_PX) : null,
    ring,
    bell: bellPath(sides, cheek, foot),
    axis_y: foot + 46,
    caliperLeader: { x: widths.caliper / 2, y: TOP_PX + 4 },
    fluidLeader: { x: right + sides - widths.caliper + 3, y: TOP_PX + 24 },
    right: right + sides,
  };
}

/** From the foot of the inboard cheek out to the hub. */
function bellPath(left: number, cheek: number, foot: number): string {
  const wall = Math.min(9, cheek);
  return `M${left} ${foot}v8h-22v26h${wall}v-${26 - wall}h22v-${8 + wall}z`;
}
