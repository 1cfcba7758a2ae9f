import { runTool } from './tool.ts';
import type { Tally } from './tally.ts';

const checks = [
  'tsc -p engine',
  'tsc -p engine/shell/tsconfig.worker.json',
  'tsc -p engine/shell/tsconfig.command.json',
  'tsc -p web/offline',
  'tsc -p test',
  'svelte-check --tsconfig web/tsconfig.json --fail-on-warnings --output human',
  'eslint . --max-warnings 0',
  'prettier --check --log-level warn .',
  'knip --no-progress',
  'depcruise engine web scenarios',
];

/** Most keep one core busy. */
const AT_ONCE = 2;

/** Each check counts as one test. */
export async function staticChecks(): Promise<Tally> {
  const failed: string[] = [];
  const waiting = [...checks];
  const work = async (): Promise<void> => {
    for (let check = waiting.shift(); check; check = waiting.shift())
      if (!(await runTool(check))) failed.push(check);
  };
  await Promise.all(Array.from({ length: AT_ONCE }, work));
  for (const check of failed) console.log(`failed: ${check}`);
  return { passed: checks.length - failed.length, failed: failed.length, skipped: 0 };
}
