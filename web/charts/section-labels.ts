import type { CornerColumns } from '../../engine/index.ts';
import { level } from '../display/format.ts';
import type { Point } from './columns.ts';
import type { SectionView } from './section-view.ts';

export interface SectionLabel {
  name: string;
  value: string;
  isHot: boolean;
  /** Where the leader starts, on the part. */
  from: Point;
  /** Baseline of the name. */
  x: number;
  y: number;
}

/** Names and values right of the drawing, each with a leader from its part, in the order that lets no two cross. */
export function sectionLabels(
  { ring, pads, cheeks, right }: SectionView,
  columns: CornerColumns,
  sample: number,
  kind: 'vented' | 'solid',
  facePeak_K: number,
): SectionLabel[] {
  const outer = cheeks.at(-1) ?? ring;
  const edge = outer.left + outer.width;
  const pad = pads[1] ?? ring;
  const wall_x = kind === 'vented' ? outer.left + 1.5 : outer.left + outer.width / 2;
  const parts: [string, Float64Array, number, number][] = [
    ['face', columns.face_K, edge - 1, 14],
    ['cheek mean', columns.cheek_K, outer.left + outer.width * (kind === 'vented' ? 0.5 : 0.75), 37],
    ['pad', columns.pad_K, pad.left + pad.width / 2, 58],
    [kind === 'vented' ? 'vane wall' : 'mid-plane', columns.wall_K, wall_x, 90],
  ];
  return parts.map(([name, values, x, down], index) => ({
    name,
    value: level(values[sample] ?? 0),
    isHot: index === 0 && (values[sample] ?? 0) > facePeak_K,
    from: { x, y: ring.top + down },
    x: right + 14,
    y: ring.top + 4 + index * 40,
  }));
}
