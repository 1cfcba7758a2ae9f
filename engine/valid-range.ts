/** The range in which a law was measured or derived. What a run uses is compared with it, and leaving it is a notice. */
export interface ValidRange {
  /** What the law gives, in words: "convection inside the vanes". */
  law: string;
  /** What is bounded, in words: "Reynolds number of the passages". */
  quantity: string;
  /** As printed after a number; empty for a pure number. */
  unit: string;
  low: number;
  high: number;
  /** Who says so; "from memory" or "common practice, no source" where nobody does. */
  source: string;
}
