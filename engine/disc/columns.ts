/** The temperatures of a corner that are kept: columns of one buffer, so that they are copied and given away in one piece. */

/** Temperatures of one corner, one entry a sample [K]. */
export interface CornerColumns {
  /** rubbed face */
  face_K: Float64Array;
  /** mean of the cheek ("bulk") */
  cheek_K: Float64Array;
  /** vane wall; the mid-plane of a solid disc */
  wall_K: Float64Array;
  /** outer edge, where paint sits */
  rim_K: Float64Array;
  bell_K: Float64Array;
  /** rubbed side of the pad */
  pad_K: Float64Array;
  caliper_K: Float64Array;
  fluid_K: Float64Array;
  /** air of the wheelhouse; at the very start that of the day */
  wheelhouse_K: Float64Array;
}

const COLUMNS = 9;

/** Columns of zeros, one entry a sample. */
export const newColumns = (samples: number): CornerColumns =>
  columnsIn(new Float64Array(COLUMNS * samples), samples);

/** The same columns in a buffer of their own. */
export const copyOf = ({ face_K }: CornerColumns): CornerColumns =>
  columnsIn(new Float64Array(face_K.buffer.slice(0)), face_K.length);

function columnsIn(all: Float64Array, samples: number): CornerColumns {
  const column = (i: number): Float64Array => all.subarray(i * samples, (i + 1) * samples);
  return {
    face_K: column(0),
    cheek_K: column(1),
    wall_K: column(2),
    rim_K: column(3),
    bell_K: column(4),
    pad_K: column(5),
    caliper_K: column(6),
    fluid_K: column(7),
    wheelhouse_K: column(8),
  };
}
