import { once } from 'node:events';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline/promises';
import { Readable } from 'node:stream';
import { setTimeout as pause } from 'node:timers/promises';
import { afterAll, afterEach, describe, expect, it } from 'vitest';
import { stintRunning } from '../../support/terminal.ts';

type Running = ReturnType<typeof stintRunning>;

const folder = mkdtempSync(join(tmpdir(), 'batch-process-'));
afterAll(() => rmSync(folder, { recursive: true }));

const started: Running[] = [];
afterEach(() => started.splice(0).forEach((each) => each.kill('SIGKILL')));

function batch(threads: number, nodeOptions: string[] = []): Running {
  const running = stintRunning(['--batch', '-', '--threads', String(threads)], nodeOptions);
  running.stdin.on('error', () => undefined); // whoever ends early reads no more
  started.push(running);
  return running;
}

/** Gives lines as they are taken. */
function feed({ stdin }: Running, count: number, lineOf: (i: number) => string): void {
  function* lines() {
    for (let i = 0; i < count; i++) yield lineOf(i);
  }
  Readable.from(lines()).pipe(stdin);
}

const bad = (bytes: number) => (i: number) => `{"id":${i},"nope":"${'x'.repeat(bytes)}"}\n`;

async function answersOf({ stdout }: Running): Promise<{ id: number; problems?: { value: string }[] }[]> {
  const answers = [];
  for await (const line of createInterface(stdout)) answers.push(JSON.parse(line) as { id: number });
  return answers;
}

/** Threads start several times over, beside whatever else the machine is at. */
const patient = { timeout: 120_000 };

describe('memory', patient, () => {
  it('stays within 32 MB of heap while 60 MB of jobs run through', async () => {
    const running = batch(2, ['--max-old-space-size=32']);
    const count = 20_000;
    feed(running, count, bad(3000));
    let next = 0;
    for await (const line of createInterface(running.stdout))
      if (line.startsWith(`{"id":${next},`)) next += 1;
    expect(next).toBe(count);
  });

  it('takes no more lines than it can answer where nobody reads the answers', async () => {
    const running = batch(2);
    let taken = 0;
    const lineOf = bad(2000);
    feed(running, 1e6, (i) => lineOf((taken = i)));
    await once(running.stdout, 'readable');
    // until nothing moves any more, or too much has
    const most = 3000;
    for (let before = -1; before < taken && taken < most; await pause(1000)) before = taken;
    expect(taken).toBeLessThan(most);
  });

  it('that a job takes too much of is the end of its thread and the answer to its line alone', async () => {
    const huge = join(folder, 'huge.json');
    writeFileSync(huge, `{"a":[${'{},'.repeat(2.5e6)}{}]}`);
    const running = batch(1, ['--max-old-space-size=64']);
    const job = (id: number) => JSON.stringify({ id, set: { 'stint.laps': 3 }, span: false });
    running.stdin.end([job(1), JSON.stringify({ id: 2, scenario: huge }), job(3), ''].join('\n'));
    const answers = await answersOf(running);
    expect(answers.map(({ id }) => id)).toEqual([1, 2, 3]);
    expect(answers.map(({ problems }) => problems?.[0]?.value)).toEqual([
      undefined,
      expect.stringMatching(/memory/),
      undefined,
    ]);
    expect(running.exitCode ?? (await once(running, 'exit'))[0]).toBe(1);
  });
});

describe('a batch in a pipe', patient, () => {
  it('answers a line before the next one comes', async () => {
    const running = batch(2);
    const answers = createInterface(running.stdout)[Symbol.asyncIterator]();
    for (const id of [1, 2, 3]) {
      running.stdin.write(`{"id":${id},"set":{"stint.laps":3},"span":false}\n`);
      expect(JSON.parse((await answers.next()).value as string)).toMatchObject({ id });
    }
    running.stdin.end();
    expect(await answers.next()).toMatchObject({ done: true });
  });

  it.each([
    ['threads are at work', Array.from({ length: 20 }, () => '{"spread":{"draws":10000}}\n')],
    ['more lines may come', []],
  ])('ends quietly and at once when nobody wants more, though %s', async (_, more) => {
    const running = batch(2);
    const said: Buffer[] = [];
    running.stderr.on('data', (data: Buffer) => said.push(data));
    running.stdin.write('{"nope":1}\n');
    await once(running.stdout, 'data');
    running.stdout.destroy();
    running.stdin.write(['{"nope":2}\n', ...more].join(''));
    expect(await once(running, 'exit')).toEqual([0, null]);
    expect(Buffer.concat(said).toString()).toBe('');
  });

  it('ends on an interrupt in the middle of a job that would outlast this test', async () => {
    const running = batch(2);
    running.stdin.write('{"nope":1}\n{"spread":{"draws":10000}}\n');
    await once(running.stdout, 'data');
    running.kill('SIGINT');
    expect(await once(running, 'exit')).toEqual([null, 'SIGINT']);
  });
});
