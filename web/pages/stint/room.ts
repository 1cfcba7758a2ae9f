/** How tall the drawings may be, so that the whole sheet stands in a wide window without scrolling [px]. */
export interface Room {
  isWide: boolean;
  plot: number;
  map: number;
  mouth: number;
}

const WIDE_PX = 1280;
/** What the rest of each column takes of the window's height [px] */
const BESIDE = { plot: 590, map: 664, mouth: 668 };

const between = (low: number, value: number, high: number): number => Math.min(high, Math.max(low, value));

export function roomIn(width: number, height: number): Room {
  if (width < WIDE_PX) return { isWide: false, plot: 240, map: 190, mouth: 190 };
  return {
    isWide: true,
    plot: between(170, height - BESIDE.plot, 340),
    map: between(120, height - BESIDE.map, 240),
    mouth: between(110, height - BESIDE.mouth, 200),
  };
}
