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

const ended = (command: readonly string[], input = ''): Ended =>
  spawnSync(process.execPath, command, { cwd: root, encoding: 'utf8', input, maxBuffer: 1 << 28 });

/** Runs to its end, with a text on standard input. */
export const stint = (args: readonly string[], input = ''): Ended => ended([...COMMAND, ...args], input);

/** The plan of an event. */
export const plan = (args: readonly string[]): Ended =>
  ended(['--import', 'tsx', join(root, 'engine/shell/plan-command.ts'), ...args]);

/** The same, which Node's own options may change and which can be watched while it runs. */
export const stintRunning = (
  args: readonly string[],
  nodeOptions: readonly string[] = [],
): ChildProcessWithoutNullStreams =>
  spawn(process.execPath, [...nodeOptions, ...COMMAND, ...args], { cwd: root });
