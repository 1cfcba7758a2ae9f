import { describe, expect, it } from 'vitest';
import { decodeText } from '../../../engine/shell/decode-text.ts';
import { tooLarge } from '../../../engine/scenario/file-size.ts';

const bytes = (text: string, width: 1 | 2 = 1, isBig = false): ArrayBuffer => {
  const all = new Uint8Array(text.length * width);
  [...text].forEach((letter, i) => {
    const code = letter.charCodeAt(0);
    all[i * width + (width === 2 && isBig ? 1 : 0)] = code & 0xff;
    if (width === 2) all[i * width + (isBig ? 0 : 1)] = code >> 8;
  });
  return all.buffer;
};
const log = 'Zeit;Höhe;°C\n0,1;300,5;20\n';

describe('the text of a file', () => {
  it.each([
    ['UTF-8', new TextEncoder().encode(log).buffer, 'utf-8'],
    ['UTF-8 with a mark', new TextEncoder().encode(`\uFEFF${log}`).buffer, 'utf-8'],
    ['UTF-16, low byte first, with a mark', bytes(`\uFEFF${log}`, 2), 'utf-16le'],
    ['UTF-16, low byte first, without', bytes(log, 2), 'utf-16le'],
    ['UTF-16, high byte first, with a mark', bytes(`\uFEFF${log}`, 2, true), 'utf-16be'],
    ['UTF-16, high byte first, without', bytes(log, 2, true), 'utf-16be'],
    ['Windows-1252', bytes(log), 'windows-1252'],
  ])('in %s is found', (_, buffer, encoding) => {
    expect(decodeText(buffer)).toEqual({ text: log, encoding, problem: '' });
  });

  it('that is none is refused in one sentence', () => {
    const zip = decodeText(bytes('PK\u0003\u0004 and so on'));
    expect(zip).toEqual({
      problem: 'file: it is a spreadsheet, an archive or a document; save it as text (CSV) first',
    });
    const binary = Uint8Array.from({ length: 500 }, (_, i) => (i * 91) % 256).buffer;
    expect(decodeText(binary).problem).toMatch(/^file: it is not text; export it/);
  });

  it('is not read above 50 MB', () => {
    expect(tooLarge(50e6)).toBe('');
    expect(tooLarge(50e6 + 1)).toBe('file: expected at most 50 MB, got 51 MB');
  });
});
