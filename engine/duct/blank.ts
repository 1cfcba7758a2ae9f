/** What covers a mouth: a straight edge from one side, or a plate with a hole, slots or many holes. */
import type { Blank, MouthSide } from './blank-keys.ts';
import { centreOf, reachFromCentre, scaledAbout } from './centre.ts';
import { partsBefore } from './half-plane.ts';
import { RIM_MM } from './inset.ts';
import { reversed, type Loop } from './loop.ts';
import type { MouthOutline } from './mouth-outline.ts';
import { perforationOf } from './perforated.ts';
import { slotsOf } from './slots.ts';
import { partsAfter, sweepOf, turnedBack, turnedTo } from './sweep.ts';

export { blankOf, type Blank } from './blank-keys.ts';

export interface Covered {
  /** Counter-clockwise, and clockwise for the openings in them. */
  readonly pieces: Loop[];
  /** Counter-clockwise. */
  readonly openings: Loop[];
  readonly covered_mm2: number;
  readonly covered_pct: number;
  /** How far the straight edge is from the side where it began; null for the other kinds, and where nothing or all is covered. */
  readonly edge_mm: number | null;
  /** What there is to measure of the openings: width of a hole or a slot, diameter of the holes; null for an edge. */
  readonly opening_mm: number | null;
}

/**
 * What a blank covers of a mouth where it is to cover a share of its area.
 *
 * @remarks
 * Exact within rounding; what a kind cannot leave open it leaves as open as it can.
 *
 * @param outline - the mouth
 * @param blank - how it is covered
 * @param covered_pct - share to be covered [%]
 * @returns pieces and openings, area covered [mm²], its share [%], the edge and the size of openings [mm]
 */
export function blankFor(outline: MouthOutline, blank: Blank, covered_pct: number): Covered {
  const { loop, area_mm2 } = outline;
  if (covered_pct <= 0) return { ...covering(outline, 0), pieces: [], openings: [loop] };
  const asked_mm2 = area_mm2 * (1 - covered_pct / 100);
  const open_mm2 = Math.min(asked_mm2, mostOpen(outline, blank));
  if (open_mm2 <= 0) return { ...covering(outline, area_mm2), pieces: [loop], openings: [] };
  const share = covering(outline, area_mm2 - open_mm2);
  if (blank.kind === 'edge') return { ...share, ...cutByEdge(outline, blank.from, share.covered_mm2) };
  const { openings, opening_mm } = openingsOf(outline, blank, open_mm2);
  return { ...share, pieces: [loop, ...openings.map(reversed)], openings, opening_mm };
}

const covering = ({ area_mm2 }: MouthOutline, covered_mm2: number): Omit<Covered, 'pieces' | 'openings'> => ({
  covered_mm2,
  covered_pct: 100 * (covered_mm2 / area_mm2),
  edge_mm: null,
  opening_mm: null,
});

function cutByEdge(
  outline: MouthOutline,
  from: MouthSide,
  covered_mm2: number,
): Pick<Covered, 'pieces' | 'openings' | 'edge_mm'> {
  const edge_mm = sweepOf(outline, from).depthFor(covered_mm2);
  const turned = turnedTo(outline.loop, from, outline);
  const back = (parts: Loop[]): Loop[] => parts.map((part) => turnedBack(part, from, outline));
  return {
    pieces: back(partsBefore(turned, edge_mm)),
    openings: back(partsAfter(turned, edge_mm)),
    edge_mm,
  };
}

interface Openings {
  openings: Loop[];
  opening_mm: number;
}

function openingsOf(outline: MouthOutline, blank: Blank, open_mm2: number): Openings {
  if (blank.kind === 'slots') {
    const { openings, width_mm } = slotsOf(outline, blank.from, blank.slots)!.openingsFor(open_mm2);
    return { openings, opening_mm: width_mm };
  }
  if (blank.kind === 'perforated') {
    const { openings, hole_mm } = perforationOf(outline, blank.hole_mm).openingsFor(open_mm2);
    return { openings, opening_mm: hole_mm };
  }
  const scale = Math.sqrt(open_mm2 / outline.area_mm2);
  const openings = [scaledAbout(outline.loop, centreOf(outline), scale)];
  return { openings, opening_mm: scale * outline.width_mm };
}

/** The most that a blank leaves open where it covers anything at all; 0: it cannot be made [mm²] */
function mostOpen(outline: MouthOutline, { kind, from, slots, hole_mm }: Blank): number {
  switch (kind) {
    case 'edge':
      return outline.area_mm2;
    case 'hole':
      return outline.area_mm2 * Math.max(0, 1 - RIM_MM / Math.max(RIM_MM, reachFromCentre(outline))) ** 2;
    case 'slots':
      return slotsOf(outline, from, slots)?.most_mm2 ?? 0;
    case 'perforated':
      return perforationOf(outline, hole_mm).most_mm2;
  }
}

/**
 * The least that a blank covers, if it covers anything.
 *
 *     100 (1 − A_most/A)
 *
 * @remarks
 * 0 for a straight edge. What holds a plate together is a rim of 4 mm and bars of 3 mm (common practice, no source).
 * Source: geometry of the blanks.
 *
 * @param outline - the mouth
 * @param blank - how it is covered
 * @returns share; 100 where no opening has room [%]
 *
 * @example
 * leastCovered({ kind: 'rectangle', loop: [], area_mm2: 6400, width_mm: 80, height_mm: 80 },
 *   blankOf({ blank: 'hole' })) // => 19.0
 */
export function leastCovered(outline: MouthOutline, blank: Blank): number {
  return 100 * (1 - mostOpen(outline, blank) / outline.area_mm2);
}

/**
 * What one millimetre is worth: of the edge's place, of the hole's or the slots' width, of the holes' diameter.
 *
 *     100 [A(d + ½) − A(d − ½)] / A_mouth
 *
 * @remarks
 * In points of the mouth. Nothing and all have none.
 * Source: geometry of the blanks.
 *
 * @param outline - the mouth
 * @param blank - how it is covered
 * @param covered_pct - share that is covered [%]
 * @returns points a millimetre [%/mm]
 *
 * @example
 * pointsPerMm({ kind: 'rectangle', loop: [], area_mm2: 11000, width_mm: 110, height_mm: 100 }, blankOf({}), 70) // => 0.909091
 */
export function pointsPerMm(outline: MouthOutline, blank: Blank, covered_pct: number): number {
  const { edge_mm, opening_mm, covered_mm2 } = blankFor(outline, blank, covered_pct);
  const size_mm = edge_mm ?? opening_mm;
  if (size_mm === null) return 0;
  const areaAt = {
    edge: () => sweepOf(outline, blank.from).coveredAt,
    slots: () => slotsOf(outline, blank.from, blank.slots)!.openAt,
    hole: () => likeSquares,
    perforated: () => likeSquares,
  }[blank.kind]();
  return (100 * (areaAt(size_mm + 0.5) - areaAt(size_mm - 0.5))) / outline.area_mm2;

  function likeSquares(width_mm: number): number {
    return (outline.area_mm2 - covered_mm2) * (width_mm / size_mm!) ** 2;
  }
}
