import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { linesOf, type JobLine } from '../../../engine/shell/job-lines.ts';

/** What comes of bytes that arrive in pieces of some size. */
async function linesIn(bytes: Uint8Array, size = bytes.length || 1): Promise<JobLine[]> {
  async function* pieces() {
    for (let at = 0; at < bytes.length; at += size) yield bytes.subarray(at, at + size);
  }
  const lines: JobLine[] = [];
  for await (const line of linesOf(pieces())) lines.push(line);
  return lines;
}

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

describe('lines of a file of jobs', () => {
  it('come back as they were written, wherever the file is cut', () =>
    fc.assert(
      fc.asyncProperty(
        fc.array(fc.string({ unit: 'binary' }).map((text) => text.replaceAll('\n', ''))),
        fc.integer({ min: 1, max: 9 }),
        async (lines, size) => {
          const whole = lines.map((line) => `${line}\n`).join('');
          const unmarked = lines.map((line) => line.replace(/^\uFEFF/, ''));
          expect(await linesIn(bytesOf(whole), size)).toEqual(unmarked);
        },
      ),
    ));

  it.each([
    ['no line', '', []],
    ['an empty line', '\n', ['']],
    ['a last line without an end', 'a\nb', ['a', 'b']],
    ['a carriage return, which JSON takes for a space', 'a\r\n\r\n', ['a\r', '\r']],
    ['other marks that end lines elsewhere', 'a\u2028b\u2029c\rd\u0085e\n', ['a\u2028b\u2029c\rd\u0085e']],
    ['marks of UTF-8 of files put one after the other', '\uFEFFa\n\uFEFFb\n', ['a', 'b']],
  ])('%s', async (_, text, expected) => {
    expect(await linesIn(bytesOf(text))).toEqual(expected);
  });

  it('say so where they are not UTF-8 or too long, and the next line stands', async () => {
    const long = new Uint8Array(12_000_000).fill(0x78);
    const bytes = Buffer.concat([Buffer.from([0xff, 0xfe, 0x0a]), long, bytesOf('\nlast')]);
    expect(await linesIn(bytes, 65_536)).toMatchObject([
      { key: 'line', expected: 'text in UTF-8' },
      { key: 'line', expected: 'at most 10 MB', value: "'12 MB'" },
      'last',
    ]);
  });
});
