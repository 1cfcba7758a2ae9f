/**
 * `npm run reference`: solves the stints a second time and writes data.csv and made-with.json beside this file. Some minutes;
 * each corner in a process of its own. With `--fine` it tells what a cheek of 24 nodes would change and writes nothing.
 */
import { fork } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { stretchesOf } from './drive.ts';
import { engineRun, timeText } from './engine-trace.ts';
import { COLUMNS, equationsOf, fineMesh } from './equations.ts';
import { fingerprintOf } from './fingerprint.ts';
import { integrate, type Sample } from './integrate.ts';
import { chosen, referenceStints } from './stints.ts';

const here = fileURLToPath(import.meta.url);
const folder = join(here, '..');
const HEADER = ['stint', 'corner', 'lap', 't', ...COLUMNS, 'peak', 'coldest'];

interface Job {
  stint: number;
  corner: number;
  fine: boolean;
}

/** One corner's lines of data.csv, and what they say of the engine. */
function solve({ stint, corner, fine }: Job): { lines: string[]; told: string } {
  const began = performance.now();
  const { name, scenario } = referenceStints()[stint]!;
  const { model, result } = engineRun(stint);
  const { spec, shares, corner: which } = model.corners[corner]!;
  const mesh = fine ? fineMesh(spec.disc.cheek_m) : undefined;
  const equations = equationsOf(scenario, model.corners[corner]!, mesh);
  const sampleAt = Array.from(result.clock.time_s);
  const { samples, peaks, evaluations } = integrate(equations, stretchesOf(scenario), { shares, sampleAt });
  if (samples.length !== sampleAt.length)
    throw new Error(`met ${samples.length} of ${sampleAt.length} samples`);
  const { columns, laps, stops } = result.corners[corner]!;
  const coldestOf = (lap: number): number => {
    const hard = stops.filter((stop) => stop.lap === lap && stop.hard);
    const faces = hard.map(({ start_s }) => samples[sampleAt.indexOf(start_s)]!.face);
    return faces.length > 0 ? Math.min(...faces) : NaN;
  };
  const text = (value: number): string => (Number.isNaN(value) ? '' : value.toFixed(2));
  const lapLines = peaks.map(({ lap, peak }) => {
    const empty = COLUMNS.map(() => '');
    return [stint, corner, lap, '', ...empty, text(peak), text(coldestOf(lap))].join();
  });
  const momentLines = samples
    .filter((_, i) => chosen(stint, model, i))
    .map((sample) =>
      [stint, corner, '', timeText(sample.t), ...COLUMNS.map((one) => text(sample[one])), '', ''].join(),
    );
  const largest = COLUMNS.map((one) => {
    const errors = samples.map((sample, i) => columns![`${one}_K`][i]! - sample[one]);
    return `${one} ${worst(errors, samples)}`;
  });
  const ofPeaks = peaks.map(({ peak }, i) => laps[i]!.faceMax_K - peak);
  const minutes = (performance.now() - began) / 60_000;
  const told = [
    `${name}, ${which.axle}${fine ? ', 24 nodes' : ''}: ${samples.length} samples, ${evaluations} evaluations, ${minutes.toFixed(1)} min`,
    `  largest error of every sample [K]: ${largest.join(', ')}`,
    `  errors of the laps' face peaks [K]: ${ofPeaks.map((error) => error.toFixed(2)).join(' ')}`,
  ].join('\n');
  return { lines: [...lapLines, ...momentLines], told };
}

function worst(errors: number[], samples: Sample[]): string {
  const at = errors.reduce((top, error, i) => (Math.abs(error) > Math.abs(errors[top]!) ? i : top), 0);
  return `${errors[at]!.toFixed(2)} at ${samples[at]!.t.toFixed(1)} s`;
}

/** In a process of its own. */
const apart = (job: Job): Promise<ReturnType<typeof solve>> =>
  new Promise((resolve, reject) => {
    const child = fork(here, [JSON.stringify(job)], { execArgv: process.execArgv });
    child.on('message', (made) => resolve(made as ReturnType<typeof solve>));
    child.on('exit', (code) => code !== 0 && reject(new Error(`a corner failed: ${JSON.stringify(job)}`)));
  });

async function solveAll(fine: boolean): Promise<void> {
  const stints = referenceStints();
  const made = fingerprintOf(stints);
  const jobs = stints.flatMap((_, stint) =>
    engineRun(stint).model.corners.map((__, corner): Job => ({ stint, corner, fine })),
  );
  const answers = new Array<ReturnType<typeof solve>>(jobs.length);
  let next = 0;
  const hand = async (): Promise<void> => {
    for (let job = next++; job < jobs.length; job = next++) {
      const answer = await apart(jobs[job]!);
      answers[job] = answer;
      console.log(answer.told);
    }
  };
  await Promise.all(Array.from({ length: Math.min(availableParallelism(), jobs.length) }, hand));
  if (fine) return;
  const comments = stints.map(
    ({ name }, i) => `# stint ${i}: ${name}; corner 0 front, 1 rear; kelvin, seconds`,
  );
  const lines = [...comments, HEADER.join(), ...answers.flatMap(({ lines: own }) => own)];
  writeFileSync(join(folder, 'data.csv'), `${lines.join('\n')}\n`);
  writeFileSync(join(folder, 'made-with.json'), `${JSON.stringify(made, null, 2)}\n`);
}

const [asked = ''] = process.argv.slice(2);
if (!asked.startsWith('{')) await solveAll(asked === '--fine');
else {
  const answer = solve(JSON.parse(asked) as Job);
  if (process.send) process.send(answer);
  else console.log(answer.told);
}
