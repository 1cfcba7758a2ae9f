/** A circuit as its file states it: a chain of straights and arcs that comes back to its start. */

export interface Segment {
  length_m: number;
  /** radius of the driven line, null for a straight */
  radius_m: number | null;
  /** only with a radius */
  turn?: 'left' | 'right';
  /** rise over run, above 0 uphill */
  slope_pct: number;
  /** for corners; neighbours with one name are one corner */
  name?: string;
  /** grip of this piece of road over the circuit's, 1 if absent */
  grip_factor?: number;
}

export interface Circuit {
  id: string;
  name: string;
  purpose: string;
  /** heading at the line, anticlockwise from the drawing's x axis; 0 if absent */
  start_heading_deg?: number;
  segments: Segment[];
}
