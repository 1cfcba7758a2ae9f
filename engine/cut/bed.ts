/** What is printed or cut on: a page, or the bed of a machine. */

import { problem, type Problem } from '../scenario/problem.ts';
import type { Size } from './nest.ts';

export type Paper = 'A4' | 'Letter';

export type Bed = { paper: Paper } | { paper: null; width_mm: number; height_mm: number };

/** A4: ISO 216. Letter: 8 1/2 by 11 inches (ANSI/ASME Y14.1, size A) */
const PAPERS: Record<Paper, Size> = {
  A4: { width_mm: 210, height_mm: 297 },
  Letter: { width_mm: 215.9, height_mm: 279.4 },
};

export const MARGIN_MM = 10;
/** The smallest bed that has room for rulers, lettering and a piece [mm] */
const LEAST = { width_mm: 160, height_mm: 180 };
const MOST_MM = 5000;

export const sizeOf = (bed: Bed): Size => (bed.paper ? PAPERS[bed.paper] : bed);

export function bedProblems(bed: Bed): Problem[] {
  const { width_mm, height_mm } = sizeOf(bed);
  return [
    ...(within(width_mm, LEAST.width_mm) ? [] : [outside('bed.width_mm', width_mm, LEAST.width_mm)]),
    ...(within(height_mm, LEAST.height_mm) ? [] : [outside('bed.height_mm', height_mm, LEAST.height_mm)]),
  ];
}

const within = (mm: number, least_mm: number): boolean => mm >= least_mm && mm <= MOST_MM;
const outside = (key: string, mm: number, least_mm: number): Problem =>
  problem(key, mm, `${least_mm} to ${MOST_MM}`);
