/** Bytes of a logger's file as text, in whichever of the usual encodings they are. */

export type Encoding = 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252';

/** Bytes that tell an encoding without a mark [bytes] */
const PROBE = 4096;

/** First bytes of packed and binary files: zip (spreadsheets too), older spreadsheets, gzip, PDF, MAT files, SQLite. */
const BINARY_STARTS = [
  [0x50, 0x4b, 0x03, 0x04],
  [0xd0, 0xcf, 0x11, 0xe0],
  [0x1f, 0x8b],
  [0x25, 0x50, 0x44, 0x46],
];

/** A text, or one sentence why the bytes are none. */
export type Decoded = { text: string; encoding: Encoding; problem: '' } | { problem: string };

/** UTF-8 and UTF-16 with or without a mark; what is neither is Windows-1252, where the degree sign is one byte. */
export function decodeText(buffer: ArrayBuffer): Decoded {
  const bytes = new Uint8Array(buffer);
  if (BINARY_STARTS.some((start) => start.every((byte, i) => bytes[i] === byte))) {
    return { problem: 'file: it is a spreadsheet, an archive or a document; save it as text (CSV) first' };
  }
  const utf16 = utf16Of(bytes);
  if (utf16) return { text: new TextDecoder(utf16).decode(bytes), encoding: utf16, problem: '' };
  if (bytes.subarray(0, PROBE).includes(0)) {
    return { problem: 'file: it is not text; export it from the logger as text (CSV) first' };
  }
  try {
    const text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    return { text, encoding: 'utf-8', problem: '' };
  } catch {
    const encoding = isMostlyUtf8(bytes) ? 'utf-8' : 'windows-1252';
    return { text: new TextDecoder(encoding).decode(bytes), encoding, problem: '' };
  }
}

/** Letters of several bytes outnumber the bytes that are none: a spoilt cell in a good file, which keeps its other letters. */
function isMostlyUtf8(bytes: Uint8Array): boolean {
  let [whole, spoilt] = [0, 0];
  for (let i = 0; i < bytes.length; i++) {
    const first = bytes[i]!;
    if (first < 0x80) continue;
    const more = first >= 0xf0 ? 3 : first >= 0xe0 ? 2 : first >= 0xc2 ? 1 : 0;
    const rest = bytes.subarray(i + 1, i + 1 + more);
    if (more > 0 && rest.length === more && rest.every((byte) => byte >> 6 === 2)) {
      whole += 1;
      i += more;
    } else spoilt += 1;
  }
  return whole > spoilt;
}

/** By its mark, else by where the zero bytes stand: digits and delimiters leave every other byte empty. */
function utf16Of(bytes: Uint8Array): 'utf-16le' | 'utf-16be' | undefined {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return 'utf-16le';
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return 'utf-16be';
  const probe = bytes.subarray(0, PROBE);
  const zeros = [0, 0];
  probe.forEach((byte, i) => {
    if (byte === 0) zeros[i % 2]! += 1;
  });
  const most = 0.35 * probe.length; // of half the bytes, most are empty
  const few = 0.02 * probe.length;
  if (zeros[1]! > most && zeros[0]! < few) return 'utf-16le';
  return zeros[0]! > most && zeros[1]! < few ? 'utf-16be' : undefined;
}
