export interface LocalFit {
  /** where the samples are, increasing */
  x: Float64Array;
  y: Float64Array;
  /** where values are wanted, increasing */
  at: Float64Array;
  /** samples farther away than this have no weight */
  halfWindow: number;
}

/**
 * Value at each wanted place of the parabola that fits the samples around it best, near ones weighing more
 * (tricube). Keeps constant, linear and quadratic signals as they are, for any spacing of the samples; at the
 * ends the fit is one-sided. A place with fewer than three samples about it is interpolated between the
 * nearest two.
 * Source: Cleveland & Devlin, Journal of the American Statistical Association 83 (1988) 596 (from memory).
 */
export function localQuadratic({ x, y, at, halfWindow }: LocalFit): Float64Array {
  const last = x.length - 1;
  let from = 0;
  return at.map((place) => {
    while (from < last && x[from]! < place - halfWindow) from++;
    const m = new Float64Array(5);
    const b = new Float64Array(3);
    let count = 0;
    for (let i = from; i <= last && x[i]! <= place + halfWindow; i++) {
      const u = (x[i]! - place) / halfWindow;
      const weight = (1 - Math.abs(u) ** 3) ** 3;
      if (weight <= 0) continue;
      count++;
      let power = weight;
      for (let k = 0; k < 5; k++) {
        m[k]! += power;
        if (k < 3) b[k]! += power * y[i]!;
        power *= u;
      }
    }
    return count >= 3 ? constantTerm(m, b) : between(x, y, place);
  });
}

/** First unknown of the normal equations [m0 m1 m2; m1 m2 m3; m2 m3 m4] c = b, by Cramer's rule. */
function constantTerm(m: Float64Array, b: Float64Array): number {
  const [m0, m1, m2, m3, m4] = m as unknown as [number, number, number, number, number];
  const [b0, b1, b2] = b as unknown as [number, number, number];
  const c0 = m2 * m4 - m3 * m3;
  const c1 = m2 * m3 - m1 * m4;
  const c2 = m1 * m3 - m2 * m2;
  return (b0 * c0 + b1 * c1 + b2 * c2) / (m0 * c0 + m1 * c1 + m2 * c2);
}

function between(x: Float64Array, y: Float64Array, place: number): number {
  const last = x.length - 1;
  let i = 0;
  while (i < last - 1 && x[i + 1]! < place) i++;
  const share = Math.min(1, Math.max(0, (place - x[i]!) / (x[i + 1]! - x[i]!)));
  return y[i]! + share * (y[i + 1]! - y[i]!);
}
