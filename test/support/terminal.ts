/** The command as a terminal starts it. */
import { spawn, spawnSync, type ChildProcessWithoutNullStreams } from 'node:child_process';
import { join } from 'node:path';
import { root } from './tree.ts';

const COMMAND = [join(root, 'node_modules/tsx/dist/cli.mjs'), join(root, 'engine/shell/command.ts')];

export interface Ended {
  status: number | null;
  stdout: string;
  stderr: string;
}

/** Runs to its end, with a text on standard input. */
export const stint = (args: readonly string[], input = ''): Ended =>
  spawnSync(process.execPath, [...COMMAND, ...args], {
    cwd: root,
    encoding: 'utf8',
    input,
    maxBuffer: 1 << 28,
  });

/** The same in one process, which Node's own options may change and which can be watched while it runs. */
export const stintRunning = (
  args: readonly string[],
  nodeOptions: readonly string[] = [],
): ChildProcessWithoutNullStreams =>
  spawn(process.execPath, [...nodeOptions, '--import', 'tsx', COMMAND[1]!, ...args], { cwd: root });
