export interface LocalFit {
  /** where the samples are, increasing */
  x: Float64Array;
  y: Float64Array;
  /** where values are wanted, increasing */
  at: Float64Array;
  /** samples farther away than this have no weight */
  halfWindow: number;
}

export interface Fitted {
  value: Float64Array;
  /** change of the value per unit of x */
  slope: Float64Array;
}

/** A sample on the rim of the window counts for nothing; three of which two are such would leave no parabola. */
const LEAST_WEIGHT = 1e-6;

/**
 * Value and slope at each wanted place of the parabola that fits the samples around it best, near ones weighing more
 * (tricube). Keeps constant, linear and quadratic signals as they are, for any spacing of the samples; at the
 * ends the fit is one-sided. A place with fewer than three samples about it is interpolated between the
 * nearest two.
 * Source: Cleveland & Devlin, Journal of the American Statistical Association 83 (1988) 596 (from memory).
 */
export function localQuadratic({ x, y, at, halfWindow }: LocalFit): Fitted {
  const last = x.length - 1;
  const value = new Float64Array(at.length);
  const slope = new Float64Array(at.length);
  let from = 0;
  at.forEach((place, n) => {
    while (from < last && x[from]! < place - halfWindow) from++;
    const m = new Float64Array(5);
    const b = new Float64Array(3);
    let count = 0;
    for (let i = from; i <= last && x[i]! <= place + halfWindow; i++) {
      const u = (x[i]! - place) / halfWindow;
      const weight = (1 - Math.abs(u) ** 3) ** 3;
      if (weight <= LEAST_WEIGHT) continue;
      count++;
      let power = weight;
      for (let k = 0; k < 5; k++) {
        m[k]! += power;
        if (k < 3) b[k]! += power * y[i]!;
        power *= u;
      }
    }
    const [height, rise] = count >= 3 ? lowestTerms(m, b) : between(x, y, place);
    value[n] = height;
    slope[n] = count >= 3 ? rise / halfWindow : rise;
  });
  return { value, slope };
}

/** First two unknowns of the normal equations [m0 m1 m2; m1 m2 m3; m2 m3 m4] c = b, by Cramer's rule. */
function lowestTerms(m: Float64Array, b: Float64Array): [value: number, slope: number] {
  const [m0, m1, m2, m3, m4] = m as unknown as [number, number, number, number, number];
  const [b0, b1, b2] = b as unknown as [number, number, number];
  const c0 = m2 * m4 - m3 * m3;
  const c1 = m2 * m3 - m1 * m4;
  const c2 = m1 * m3 - m2 * m2;
  const determinant = m0 * c0 + m1 * c1 + m2 * c2;
  const second = b0 * c1 + b1 * (m0 * m4 - m2 * m2) + b2 * (m1 * m2 - m0 * m3);
  return [(b0 * c0 + b1 * c1 + b2 * c2) / determinant, second / determinant];
}

function between(x: Float64Array, y: Float64Array, place: number): [value: number, slope: number] {
  const last = x.length - 1;
  let i = 0;
  while (i < last - 1 && x[i + 1]! < place) i++;
  const slope = (y[i + 1]! - y[i]!) / (x[i + 1]! - x[i]!);
  return [y[i]! + slope * (Math.min(Math.max(place, x[i]!), x[i + 1]!) - x[i]!), slope];
}
