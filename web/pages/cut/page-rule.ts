import type { SheetTexts } from '../../../engine/index.ts';

/** The style of printed pages that carry their own margins: named, so that it rules over that of the run sheet. */
export const pageRule = ({ width_mm, height_mm }: Pick<SheetTexts, 'width_mm' | 'height_mm'>): string =>
  `@page cut { size: ${width_mm}mm ${height_mm}mm; margin: 0; }
  @media print { .cut-sheets { page: cut; } }`;
