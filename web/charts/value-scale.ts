/** A straight scale from a value to pixels and back. */
export interface ValueScale {
  low: number;
  high: number;
  of(value: number): number;
  invert(px: number): number;
}

export function valueScale(low: number, high: number, atLow_px: number, atHigh_px: number): ValueScale {
  const slope = (atHigh_px - atLow_px) / (high - low);
  return {
    low,
    high,
    of: (value) => atLow_px + (value - low) * slope,
    invert: (px) => low + (px - atLow_px) / slope,
  };
}

/** A range about fixed limits that only ever grows in coarse steps, so that it stands still under a drag. */
export function steadyRange(
  low: number,
  high: number,
  values: Iterable<number>,
  step: number,
): [number, number] {
  let least = low;
  let most = high;
  for (const value of values) {
    if (value < least) least = value;
    if (value > most) most = value;
  }
  return [
    least < low ? low - Math.ceil((low - least) / step) * step : low,
    most > high ? high + Math.ceil((most - high) / step) * step : high,
  ];
}
