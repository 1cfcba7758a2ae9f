import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { installFromDebian } from '../../support/install.ts';
import { stint } from '../../support/terminal.ts';
import { root } from '../../support/tree.ts';

const folder = mkdtempSync(join(tmpdir(), 'parallel-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** Another program of the same name splits nothing. */
const isThere = (): boolean =>
  /^GNU parallel/.test(spawnSync('parallel', ['--version'], { encoding: 'utf8' }).stdout ?? '');

const oneLiner = /^parallel .* < jobs\.jsonl > results\.jsonl$/m.exec(
  readFileSync(join(root, 'README.md'), 'utf8'),
)?.[0];

describe('the line of the README that spreads a batch over processes', () => {
  const job = (id: number): object =>
    id % 500 === 0 ? { id, set: { 'stint.laps': 3 }, span: false } : { id, nope: 1 };
  const jobs = Array.from({ length: 2600 }, (_, id) => `${JSON.stringify(job(id))}\n`).join('');

  it('gives the bytes that one process gives', { timeout: 400_000 }, ({ skip }) => {
    if (!isThere() && !(installFromDebian('parallel') && isThere()))
      skip('GNU parallel is not on this machine and could not be installed: nothing was tested here');
    writeFileSync(join(folder, 'jobs.jsonl'), jobs);
    const line = oneLiner!.replace(/\b(jobs|results)\.jsonl/g, (name) => join(folder, name));
    const { status, stderr } = spawnSync('bash', ['-c', line], { cwd: root, encoding: 'utf8' });
    expect(stderr.split('\n').filter((each) => !/cit(e|ation)/i.test(each) && each !== '')).toEqual([]);
    expect(status).toBe(3); // processes that had a line with problems
    const results = readFileSync(join(folder, 'results.jsonl'), 'utf8');
    expect(results.split('\n')).toHaveLength(2601);
    expect(results).toBe(stint(['--batch', '-'], jobs).stdout);
  });
});
