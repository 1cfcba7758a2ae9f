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
    python: versionOf('python3', [
      '-c',
      'import scipy, sys; print(sys.version.split()[0], "scipy", scipy.__version__)',
    ]),
  };
}

/** What a program says of itself; null where it is not there. */
export function versionOf(program: string, args: string[]): string | null {
  try {
    return execFileSync(program, args, { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] }).trim();
  } catch {
    return null;
  }
}
