/** The command as a terminal starts it. */
import { spawn, spawnSync, type ChildProcessWithoutNullStreams } from 'node:child_process';
import { join } from 'node:path';
import { root } from './tree.ts';

/** In one process: the program `tsx` would start a second one. */
const COMMAND = ['--import', 'tsx', join(root, 'engine/shell/command.ts')];

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

/** The same, which Node's own options may change and which can be watched while it runs. */
export const stintRunning = (
  args: readonly string[],
  nodeOptions: readonly string[] = [],
): ChildProcessWithoutNullStreams =>
  spawn(process.execPath, [...nodeOptions, ...COMMAND, ...args], { cwd: root });
