/** What goes wrong with a logged channel: each fault makes a wrong column of a right one. */

export type Fault = (column: Float64Array, rate_Hz: number) => Float64Array;

/** The column as it would have been written so much later (above 0) or earlier. */
export const late =
  (late_s: number): Fault =>
  (column, rate_Hz) =>
    column.map((_, i) => {
      const place = Math.min(column.length - 1, Math.max(0, i - late_s * rate_Hz));
      const from = Math.min(column.length - 2, Math.floor(place));
      return column[from]! + (place - from) * (column[from + 1]! - column[from]!);
    });

/** From a share of the lap on the channel shows one value. */
export const holds =
  (share: number, value: number): Fault =>
  (column) =>
    column.map((own, i) => (i < share * column.length ? own : value));

/** Anything from 0 to `most`, without a pattern, the same each time. */
export const noise =
  (most: number): Fault =>
  (column) =>
    column.map((_, i) => most * Math.abs(Math.sin(1.7 * i * i)));

export const negated: Fault = (column) => column.map((value) => -value);
export const offset =
  (by: number): Fault =>
  (column) =>
    column.map((value) => value + by);

/** A share of the highest value is the most it shows. */
export const clipped =
  (share: number): Fault =>
  (column) => {
    const most = share * column.reduce((high, value) => Math.max(high, value), 0);
    return column.map((value) => Math.min(most, value));
  };
