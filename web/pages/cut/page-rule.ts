import type { SheetTexts } from '../../../engine/index.ts';

/** The style of printed pages that carry their own margins; it rules over that of the run sheet, whichever was set first. */
export const pageRule = ({ width_mm, height_mm }: Pick<SheetTexts, 'width_mm' | 'height_mm'>): string =>
  `@page { size: ${width_mm}mm ${height_mm}mm !important; margin: 0 !important; }`;
