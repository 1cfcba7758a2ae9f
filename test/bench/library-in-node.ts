/**
 * The reference stint by dopri, a library's explicit method of order 5 with dense output, in a process of its own, turn about
 * with the kernel. The right-hand side is the engine's own, which is as fast as one can be. Of what the registry has, odex 2
 * and 3, numeric and ode45-cash-karp take 1.1 to 5 times as long for this error, and none is made for stiff equations.
 */
import { Dopri } from 'dopri';
import { NODE, NODES } from '../../engine/disc/network.ts';
import { makeRates } from '../../engine/disc/rates.ts';
import { createStepper } from '../../engine/disc/stepper.ts';
import { compile, type CornerModel } from '../../engine/stint/compile.ts';
import { run } from '../../engine/stint/run.ts';
import { equalError, type Found } from './equal-error.ts';
import type { Answer } from './errors.ts';
import { kernelOf, turn_ms } from './kernel-loop.ts';
import { answerOf, problemOf, temperatureOf, type ProblemCorner, type Stage } from './problem.ts';
import { referenceStint } from './reference-stint.ts';

const ROUNDS = 5;
const TURNS = 20;
/** The absolute tolerance is the relative one of so many entries of the tables, some 250 K */
const ABSOLUTE = 100;
const SAME_S = 1e-7;

export interface LibraryTimes {
  theirs_ms: number[];
  ours_ms: number[];
  found: Found;
}

const { H, F, G, hold, setAir, evaluate } = makeRates();

/** State of the integrator: each node's enthalpy in entries of its table, so that one tolerance suits all. */
type State = number[];

/** A corner as the engine's right-hand side takes it. */
function sidesOf({ spec, start }: CornerModel, { entriesPerJoule }: ProblemCorner) {
  const stepper = createStepper(spec, start);
  return {
    stepper,
    perJoule: Float64Array.from(entriesPerJoule),
    /** Where the right-hand side looks for the speed. */
    speed: new Float64Array(1),
  };
}
type Sides = ReturnType<typeof sidesOf>;

/** Rates of a corner within a stage. */
function ratesOf(stage: Stage, corner: CornerModel, { stepper, speed, perJoule }: Sides) {
  const { begin_s, v0, v1, p0, p1, p2 } = stage;
  const share = corner.shares[stage.leg]!;
  let piece = 0;
  return (t: number, y: State, dy: State): void => {
    while (piece + 1 < begin_s.length && begin_s[piece + 1]! <= t) piece++;
    while (piece > 0 && begin_s[piece]! > t) piece--;
    const after = t - begin_s[piece]!;
    speed[0] = Math.max(v0[piece]! + v1[piece]! * after, 0);
    const power = p0[piece]! + after * (p1[piece]! + after * p2[piece]!);
    for (let i = 0; i < NODES; i++) H[i] = y[i]! / perJoule[i]!;
    setAir(speed, 0);
    evaluate(true);
    const friction = share * power + stepper.drag_N * speed[0];
    F[NODE.face]! += stepper.discShare * friction;
    F[NODE.padFace]! += (1 - stepper.discShare) * friction;
    for (let i = 0; i < NODES; i++) dy[i] = F[i]! * perJoule[i]!;
  };
}

function solveCorner(corner: CornerModel, own: ProblemCorner, tolerance: number): State[] {
  const { stages, sample_s } = problem;
  const sides = sidesOf(corner, own);
  const { network } = sides.stepper;
  let y: State = own.start_J.map((J, i) => J * own.entriesPerJoule[i]!);
  const told = [y];
  for (const stage of stages) {
    hold(sides.stepper, corner.maps[stage.leg]!);
    if (stage.pressed) G[NODE.padFace] = network.pressed_WpK;
    const control = { rtol: tolerance, atol: ABSOLUTE * tolerance, maxSteps: 1e6 };
    const solver = new Dopri(ratesOf(stage, corner, sides), NODES, control);
    const at = solver.initialise(stage.from_s, y).run(stage.to_s);
    const wanted: number[] = [];
    for (let i = told.length; i < sample_s.length && sample_s[i]! <= stage.to_s + SAME_S; i++)
      wanted.push(Math.min(sample_s[i]!, stage.to_s));
    const found = at([...wanted, stage.to_s]);
    y = found.pop()!;
    told.push(...found);
  }
  return told;
}

/** By corner; each a state a sample. */
const solve = (tolerance: number): State[][] =>
  model.corners.map((corner, i) => solveCorner(corner, problem.corners[i]!, tolerance));

const answers = (states: State[][]): Answer[] =>
  states.map((told, i) => {
    const own = problem.corners[i]!;
    const byNode = Array.from({ length: NODES }, (_, node) =>
      told.map((state) => temperatureOf(own, node, state[node]!)),
    );
    return answerOf(own, byNode);
  });

const model = compile(referenceStint());
const { clock, corners } = run(model);
const problem = problemOf(model, clock.time_s);
const columns = corners.map((corner) => corner.columns!);
const drive = kernelOf(model);
const found = await equalError({ model, time_s: clock.time_s, columns }, (tolerance) =>
  answers(solve(tolerance)),
);
const theirs_ms: number[] = [];
const ours_ms: number[] = [];
for (let round = 0; round < ROUNDS; round++) {
  ours_ms.push(turn_ms(drive, TURNS));
  theirs_ms.push(turn_ms(() => void solve(found.tolerance), 1));
}
process.send!({ theirs_ms, ours_ms, found } satisfies LibraryTimes);
