/** Where a note stands beside what it is about: inside the window, on the side with more room [px] */
export interface NotePlace {
  left: number;
  width: number;
  tallest: number;
  /** From the window's upper edge, or else `bottom` from its lower one. */
  top: number | null;
  bottom: number | null;
}

const WIDTH_PX = 400;
const EDGE_PX = 12;

export function placed(
  { left, right, top, bottom }: Pick<DOMRect, 'left' | 'right' | 'top' | 'bottom'>,
  { innerWidth, innerHeight }: Pick<Window, 'innerWidth' | 'innerHeight'>,
): NotePlace {
  const width = Math.min(WIDTH_PX, innerWidth - 2 * EDGE_PX);
  const middle = (left + right) / 2;
  const at = Math.min(innerWidth - EDGE_PX - width, Math.max(EDGE_PX, middle - width / 2));
  const [above, below] = [top - EDGE_PX, innerHeight - bottom - EDGE_PX];
  const isAbove = above > below;
  const tallest = Math.max(120, isAbove ? above : below);
  return {
    left: at,
    width,
    tallest,
    top: isAbove ? null : bottom,
    bottom: isAbove ? innerHeight - top : null,
  };
}
