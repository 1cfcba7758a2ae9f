/** Where a note stands beside what it is about: inside the window, on the side with more room. */
export interface NotePlace {
  /** From the left side of what it is about [px] */
  left: number;
  width: number;
  tallest: number;
  isAbove: boolean;
}

const WIDTH_PX = 380;
const EDGE_PX = 12;

export function placed(
  { left, right, top, bottom }: Pick<DOMRect, 'left' | 'right' | 'top' | 'bottom'>,
  { innerWidth, innerHeight }: Pick<Window, 'innerWidth' | 'innerHeight'>,
): NotePlace {
  const width = Math.min(WIDTH_PX, innerWidth - 2 * EDGE_PX);
  const at = Math.min(innerWidth - EDGE_PX - width, Math.max(EDGE_PX, right - width));
  const [above, below] = [top - EDGE_PX, innerHeight - bottom - EDGE_PX];
  const isAbove = above > below;
  return { left: at - left, width, tallest: Math.max(120, isAbove ? above : below), isAbove };
}
