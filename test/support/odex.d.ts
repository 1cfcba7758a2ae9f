/** What we use of odex: its own sources do not pass our compiler options. */

export class Solver {
  /** @param n - number of equations */
  constructor(n: number);
  absoluteTolerance: number;
  relativeTolerance: number;
  maxSteps: number;
  maxStepSize: number;
  solve(
    derivative: (x: number, y: number[]) => number[],
    start: number,
    initial: number[],
    end: number,
  ): { y: number[]; xEnd: number; outcome: number; nStep: number };
}
