/** Where the numbers were taken: a time means nothing without its machine. */
import { execFileSync } from 'node:child_process';
import { availableParallelism, cpus } from 'node:os';
import { withBrowser } from './built-page.ts';

export async function machine() {
  return {
    date: new Date().toISOString().slice(0, 10),
    cores: availableParallelism(),
    processor: cpus()[0]?.model ?? 'unknown',
    node: process.version,
    chromium: await withBrowser((browser) => Promise.resolve(browser.version())),
    gcc: versionOf('gcc', ['-dumpfullversion']),
    python: pythonVersion(pythonWithScipy()),
  };
}

const pythonVersion = (python: string | null): string | null =>
  python &&
  versionOf(python, ['-c', 'import scipy, sys; print(sys.version.split()[0], "scipy", scipy.__version__)']);

/** The first Python here that has scipy. */
export const pythonWithScipy = (): string | null =>
  ['python3', 'python', '/usr/bin/python3'].find((python) => pythonVersion(python) !== null) ?? null;

/** What a program says of itself; null where it is not there. */
export function versionOf(program: string, args: string[]): string | null {
  try {
    return execFileSync(program, args, { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] }).trim();
  } catch {
    return null;
  }
}
