/** A piece of lettering in a drawing. */
export interface Word {
  text: string;
  /** Middle of the baseline, or its start. */
  x: number;
  y: number;
  anchor: 'start' | 'middle';
  tone: 'ink' | 'bold' | 'hot' | 'pinned';
}
