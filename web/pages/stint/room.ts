/** How tall the drawings may be, so that the whole sheet stands in a wide window without scrolling [px]. */
export interface Room {
  isWide: boolean;
  /** Whether the blanking is at the thumb, in a tray. */
  hasTray: boolean;
  /** Whether play and step have a row of their own under the scrubber, rather than its margins. */
  hasPlaybackRow: boolean;
  plot: number;
  map: number;
  /** The same of a lap's trace and of the map under it. */
  lapPlot: number;
  lapMap: number;
  mouth: number;
  /** Whether the strips' buttons stand beside the mouth, for want of height. */
  isStacked: boolean;
}

const WIDE_PX = 1280;
/** Below this the lever's column is not beside the chart; the styles say so too. */
const TRAY_PX = 900;
/** What the rest of each column takes of the window's height [px] */
const BESIDE = { plot: 612, map: 672, mouth: 682 };
/** The lowest window in which trace and map stand above each other without scrolling, and what both have there [px] */
const LAP = { window: 800, plot: 160, map: 109 };
/** A row of buttons for the strips under the mouth [px] */
const STRIPS_PX = 48;
/** From this height of the mouth on there is room for that row. */
const TALL_PX = 150;

const between = (low: number, value: number, high: number): number => Math.min(high, Math.max(low, value));

/** Targets for gloves leave no room to stand without scrolling, in no window. */
export function roomIn(width: number, height: number, hasGloves = false): Room {
  const isWide = width >= WIDE_PX;
  const hasTray = width < TRAY_PX;
  if (!isWide || hasGloves)
    return {
      isWide,
      hasTray,
      hasPlaybackRow: true,
      plot: isWide ? 340 : 240,
      map: isWide ? 240 : 190,
      lapPlot: 300,
      lapMap: isWide ? 240 : 190,
      mouth: 190,
      isStacked: false,
    };
  const mouth = height - BESIDE.mouth;
  const more = Math.max(0, height - LAP.window);
  const isStacked = mouth - STRIPS_PX < TALL_PX;
  return {
    isWide,
    hasTray,
    hasPlaybackRow: false,
    plot: between(170, height - BESIDE.plot, 340),
    map: between(112, height - BESIDE.map, 240),
    lapPlot: Math.min(320, LAP.plot + 0.65 * more),
    lapMap: Math.min(240, LAP.map + 0.35 * more),
    mouth: between(96, isStacked ? mouth : mouth - STRIPS_PX, 200),
    isStacked,
  };
}
