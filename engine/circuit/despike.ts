/** Samples either side that judge the one between. */
const NEIGHBOURS = 2;

/** A sample farther from its neighbours' median than this many robust standard deviations is a spike. */
const SPREADS = 4;

/** Robust standard deviation over median absolute deviation, for Gaussian noise. */
const GAUSSIAN = 1.4826;

/** Below this a deviation is never a spike: about 5 km/h, more than noise and less than a false wheel speed. */
const LEAST_MPS = 1.5;

/**
 * Replaces single false samples of a speed trace by the median of their neighbourhood (Hampel's filter). A
 * braking ramp is monotonic, so its middle sample is its median: braking passes unchanged.
 * Source: Pearson, Exploring Data in Engineering, the Sciences, and Medicine, 2011 (from memory).
 */
export function despike(speed_mps: Float64Array): Float64Array {
  return speed_mps.map((v, i) => {
    const from = Math.max(0, i - NEIGHBOURS);
    const window = speed_mps.subarray(from, i + NEIGHBOURS + 1);
    const middle = median(window);
    const spread = GAUSSIAN * median(window.map((u) => Math.abs(u - middle)));
    return Math.abs(v - middle) > Math.max(LEAST_MPS, SPREADS * spread) ? middle : v;
  });
}

/**
 * Median of a few values.
 *
 * Source: definition; of an even number the mean of the middle two.
 *
 * @param values - the values, in any order [any]
 * @returns their median [any]
 *
 * @example
 * median([5, 1, 9]) // => 5
 */
function median(values: ArrayLike<number>): number {
  const sorted = Array.from(values).sort((a, b) => a - b);
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
}
