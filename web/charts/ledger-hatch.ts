/** How each part of the ledger is hatched: told apart by direction and shape, never by colour. */
import { crossHatchPath, PITCH_PX, rulingPath, sectionHatch } from './hatch.ts';
import type { Part } from './ledger-parts.ts';
import type { Box } from './place-labels.ts';

const steps = (length: number, pitch: number): number[] =>
  Array.from({ length: Math.max(0, Math.ceil(length / pitch - 0.5)) }, (_, i) => (i + 0.5) * pitch);

const verticals = ({ left, top, width, height }: Box): string =>
  steps(width, PITCH_PX)
    .map((x) => `M${(left + x).toFixed(1)} ${top}v${height}`)
    .join('');

/** Dots in rows that stand between each other: strokes of no length with round ends. */
const dots = ({ left, top, width, height }: Box): string =>
  steps(height, PITCH_PX)
    .flatMap((y, row) =>
      steps(width - (row % 2 ? PITCH_PX / 2 : 0), PITCH_PX).map(
        (x) => `M${(left + x + (row % 2 ? PITCH_PX / 2 : 0)).toFixed(1)} ${(top + y).toFixed(1)}h0`,
      ),
    )
    .join('');

/** Zigzag: heat that runs along metal. */
const chevrons = (box: Box): string => sectionHatch(box) + rulingPath(box);

const HATCHES: Partial<Record<Part, (box: Box) => string>> = {
  givenBack: crossHatchPath,
  vanes: verticals,
  faces: sectionHatch,
  others: rulingPath,
  radiation: dots,
  conducted: chevrons,
  kept: crossHatchPath,
};

/** The path of a part's hatch; friction is drawn solid, what is taken up is left bare. */
export const ledgerHatch = (part: Part, box: Box): string => HATCHES[part]?.(box) ?? '';
