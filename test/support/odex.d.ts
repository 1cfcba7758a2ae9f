/** What we use of odex, whose own types do not pass our compiler. */
export class Solver {
  constructor(n: number);
  relativeTolerance: number;
  absoluteTolerance: number;
  initialStepSize: number;
  /** From one moment to another; `after` is told each step that was accepted. */
  solve(
    rates: (t: number, y: number[]) => number[],
    from: number,
    y: number[],
    to: number,
    after?: (step: number, from: number, to: number, y: number[]) => void,
  ): { y: number[]; outcome: number; nStep: number; nEval: number };
}
export const Outcome: { readonly Converged: number };
