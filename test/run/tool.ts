import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('../../', import.meta.url));

/** Runs a tool of node_modules with its output passed through; true when it ended well. */
export function runTool(command: string): Promise<boolean> {
  console.log(`\n> ${command}`);
  const child = spawn(`npx --no-install ${command}`, {
    cwd: root,
    shell: true,
    stdio: ['ignore', 'inherit', 'inherit'],
  });
  return new Promise((resolve) => {
    child.once('error', () => resolve(false));
    child.once('exit', (code) => resolve(code === 0));
  });
}
