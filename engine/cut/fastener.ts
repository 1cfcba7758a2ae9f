/** What holds a panel: the hole in the plate, and how far its middle must stay from any edge. */

export type FastenerKind = 'quarter-turn' | 'M4' | 'M5';

export interface Fastener {
  kind: FastenerKind;
  name: string;
  hole_mm: number;
  /** From the middle of the hole to the plate's edge. */
  edge_mm: number;
}

/** All of it common practice, no source: the holes of M4 and M5 are a medium fit; a quarter-turn's stud is to be measured. */
export const FASTENERS: Record<FastenerKind, Fastener> = {
  'quarter-turn': { kind: 'quarter-turn', name: 'quarter-turn, hole 8 mm', hole_mm: 8, edge_mm: 12 },
  M4: { kind: 'M4', name: 'M4, hole 4.5 mm', hole_mm: 4.5, edge_mm: 9 },
  M5: { kind: 'M5', name: 'M5, hole 5.5 mm', hole_mm: 5.5, edge_mm: 10 },
};

/** The tab that pulls the panel out and holds its tether, wide enough for a code (common practice, no source) */
export const PULL_TAB = { width_mm: 28, length_mm: 22, tether_mm: 5 };

/** Along the rim there is a fastener at least every so often (common practice, no source) [mm] */
export const PITCH_MM = 150;
export const MOST_FASTENERS = 6;
/** No edge of a panel is sharper than this: trade rule "edges rounded R3" (common practice, no source) [mm] */
export const LEAST_CORNER_MM = 3;
