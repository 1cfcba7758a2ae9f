/** Programs that a test needs and the machine lacks. */
import { execFileSync } from 'node:child_process';

/** As root of a Debian; false where that is not so or does not work. */
export const installFromDebian = (name: string): boolean =>
  process.platform === 'linux' &&
  process.getuid?.() === 0 &&
  ran('apt-get', ['update']) &&
  ran('apt-get', ['install', '-y', '--no-install-recommends', name]);

/** Whether a command, told and with its output passed through, ended well. */
export function ran(command: string, args: string[]): boolean {
  console.log(`install: ${command} ${args.join(' ')}`);
  try {
    execFileSync(command, args, {
      stdio: ['ignore', 'inherit', 'inherit'],
      timeout: 300_000,
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    });
    return true;
  } catch {
    return false;
  }
}
