/** A module of the benchmark in a process of its own: nothing that ran before has warmed, filled or confused it. */
import { fork, type ChildProcess } from 'node:child_process';
import { createInterface } from 'node:readline';
import type { Readable, Writable } from 'node:stream';
import { fileURLToPath } from 'node:url';

/** Starts a module beside this file, by its name. */
export const started = (name: string, flags: readonly string[] = []): ChildProcess =>
  fork(fileURLToPath(new URL(name, import.meta.url)), [], {
    execArgv: ['--import', 'tsx', ...flags],
    serialization: 'advanced',
  });

/** The first thing that a process says. */
export function saidBy<T>(child: ChildProcess): Promise<T> {
  return new Promise((resolve, reject) => {
    const ended = (code: number | null): void => reject(new Error(`bench: a process ended with ${code}`));
    child.once('exit', ended);
    child.once('message', (said) => {
      child.off('exit', ended);
      resolve(said as T);
    });
  });
}

/** What a process answers. */
export function asked<T>(child: ChildProcess, question: number): Promise<T> {
  const answer = saidBy<T>(child);
  child.send(question);
  return answer;
}

/** What a module sends when it has done its work, alone. */
export async function apart<T>(name: string, flags: readonly string[] = []): Promise<T> {
  const child = started(name, flags);
  try {
    return await saidBy<T>(child);
  } finally {
    child.kill();
  }
}

/** Talks with a program line by line. */
export function lineAsker({ stdin, stdout }: { stdin: Writable; stdout: Readable }) {
  const lines = createInterface(stdout)[Symbol.asyncIterator]();
  const next = async (): Promise<string> => {
    const { value, done } = await lines.next();
    if (done) throw new Error('bench: a program ended early');
    return value;
  };
  const ask = (question: string): Promise<string> => {
    stdin.write(`${question}\n`);
    return next();
  };
  return { next, ask };
}
