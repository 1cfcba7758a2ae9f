/** Against SciPy's LSODA with the same equations and inputs, at the engine's own error. */
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { compile } from '../../engine/stint/compile.ts';
import { run } from '../../engine/stint/run.ts';
import { asked, lineAsker, started } from './apart.ts';
import { equalError } from './equal-error.ts';
import { pythonWithScipy } from './machine.ts';
import { answerOf, problemOf } from './problem.ts';
import { referenceStint } from './reference-stint.ts';
import { Missing, ratios, rowOf, type Row } from './rows.ts';

const ROUNDS = 5;
const TURNS = 20;
const SCRIPT = fileURLToPath(new URL('with_scipy.py', import.meta.url));

interface Solved {
  took_ms: number;
  /** By corner, node and sample [K] */
  T: number[][][];
}

export async function scipy(): Promise<Row[]> {
  const program = pythonWithScipy();
  if (!program) throw new Missing('needs python3 with scipy');
  const model = compile(referenceStint());
  const { clock, corners } = run(model);
  const columns = corners.map((corner) => corner.columns!);
  const problem = problemOf(model, clock.time_s);
  const folder = mkdtempSync(join(tmpdir(), 'bench-scipy-'));
  const path = join(folder, 'problem.json');
  writeFileSync(path, JSON.stringify(problem));
  const child = spawn(program, [SCRIPT, path], { stdio: ['pipe', 'pipe', 'inherit'] });
  const kernel = started('kernel-in-node.ts');
  try {
    const python = lineAsker(child);
    const solve = async (tolerance: number): Promise<Solved> =>
      JSON.parse(await python.ask(String(tolerance))) as Solved;
    const found = await equalError({ model, time_s: clock.time_s, columns }, async (tolerance) =>
      (await solve(tolerance)).T.map((T, i) => answerOf(problem.corners[i]!, T)),
    );
    const [theirs, ours]: [number[], number[]] = [[], []];
    for (let round = 0; round < ROUNDS; round++) {
      ours.push(await asked<number>(kernel, TURNS));
      theirs.push((await solve(found.tolerance)).took_ms);
    }
    const { error } = found;
    return [
      rowOf(`LSODA of SciPy, tolerance ${found.tolerance}`, theirs, { unit: 'ms', error }),
      rowOf('LSODA over the kernel in Node', ratios(theirs, ours), { unit: 'x', wanted: 'aim 300', error }),
      rowOf('LSODA, furthest from the engine', [found.apart_K], { unit: 'K' }),
    ];
  } finally {
    kernel.kill();
    child.kill();
    rmSync(folder, { recursive: true });
  }
}
