/**
 * How long a large log takes to read: 1,000,000 rows of time, speed, distance and acceleration, at the terminal. Prints the
 * time of each of five readings and gates nothing: machines are noisy.
 */
import { readTrace } from '../../engine/trace-file/read-trace.ts';

const ROWS = 1_000_000;
const LAP_M = 5000;

function log(rows: number): string {
  const lines = ['Time [s],Speed [km/h],Distance [m],Long acc [g]'];
  let along_m = 0;
  let before = 0;
  for (let i = 0; i < rows; i++) {
    const speed_mps = 50 + 20 * Math.sin(along_m / 150);
    along_m += speed_mps / 100;
    const accel_g = i === 0 ? 0 : (speed_mps - before) * 10.2;
    before = speed_mps;
    const cells = [i / 100, speed_mps * 3.6, along_m % LAP_M, accel_g];
    lines.push(cells.map((value, at) => value.toFixed(at === 0 ? 2 : 3)).join(','));
  }
  return lines.join('\n');
}

const text = log(ROWS);
process.stdout.write(`${ROWS} rows, ${(text.length / 1e6).toFixed(1)} MB\n`);
for (let n = 0; n < 5; n++) {
  let calls = 0;
  const start_ms = performance.now();
  const { understood, problems } = readTrace(text, {}, () => calls++);
  const took_ms = performance.now() - start_ms;
  const laps = understood?.laps.length ?? 0;
  process.stdout.write(
    `${took_ms.toFixed(0)} ms, progress ${calls} times, ${laps} laps, ${problems.length} problems, ` +
      `${(process.memoryUsage().rss / 1e6).toFixed(0)} MB in use\n`,
  );
}
