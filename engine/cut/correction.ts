/** A printer that does not print true, made good axis by axis from what its 100 mm rulers measured. */

import { problem, type Problem } from '../scenario/problem.ts';

export const RULER_MM = 100;
/** A printer further off is set wrong ("fit to page"), which no correction mends (common practice, no source) [%] */
const MOST_PCT = 3;

export interface Correction {
  /** What the two rulers measured on paper. */
  across_mm: number;
  up_mm: number;
}

export const UNCORRECTED: Correction = { across_mm: RULER_MM, up_mm: RULER_MM };

/** How much larger everything is drawn, so that it comes out true. */
export const scaleOf = ({ across_mm, up_mm }: Correction): { across: number; up: number } => ({
  across: RULER_MM / across_mm,
  up: RULER_MM / up_mm,
});

export const isCorrected = ({ across_mm, up_mm }: Correction): boolean =>
  across_mm !== RULER_MM || up_mm !== RULER_MM;

/** One problem, whichever axis is off. */
export function correctionProblems({ across_mm, up_mm }: Correction): Problem[] {
  const isNear = (mm: number): boolean => Math.abs(mm - RULER_MM) <= (MOST_PCT / 100) * RULER_MM;
  if (isNear(across_mm) && isNear(up_mm)) return [];
  const [least, most] = [RULER_MM - MOST_PCT, RULER_MM + MOST_PCT];
  return [
    problem(
      'correction.measured_mm',
      `${across_mm} across and ${up_mm} up`,
      `${least} to ${most} each`,
      'print at actual size, not fitted to the page',
    ),
  ];
}

export const correctionWords = (correction: Correction): string => {
  const { across, up } = scaleOf(correction);
  const { across_mm, up_mm } = correction;
  return `CORRECTED for a printer that made 100 mm ${across_mm} across and ${up_mm} up: drawn x ${across.toFixed(4)} and ${up.toFixed(4)}`;
};
