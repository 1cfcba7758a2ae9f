/** The lines of a file of jobs, one after the other, however large the file is. */
import { problem, type Problem } from '../scenario/problem.ts';

/** The text of a line, or why it is none. */
export type JobLine = string | Problem;

/** What a longer line says belongs in a file that it names [bytes] */
const LONGEST = 10e6;
const NEWLINE = 0x0a;

/**
 * Only a newline ends a line: texts in JSON may hold the other marks that end lines elsewhere. Of a line that is too long no
 * more is kept than its length.
 */
export async function* linesOf(chunks: AsyncIterable<Uint8Array>): AsyncGenerator<JobLine> {
  let line = new Line();
  for await (const chunk of chunks) {
    let start = 0;
    for (let end; (end = chunk.indexOf(NEWLINE, start)) >= 0; start = end + 1) {
      line.add(chunk.subarray(start, end));
      yield line.text();
      line = new Line();
    }
    line.add(chunk.subarray(start));
  }
  if (line.size > 0) yield line.text();
}

class Line {
  size = 0;
  #parts: Uint8Array[] = [];

  add(part: Uint8Array): void {
    this.size += part.length;
    if (this.size > LONGEST) this.#parts = [];
    else this.#parts.push(part);
  }

  /** Without the mark of UTF-8 that some programs put in front. */
  text(): JobLine {
    if (this.size > LONGEST)
      return problem('line', `${Math.ceil(this.size / 1e6)} MB`, `at most ${LONGEST / 1e6} MB`);
    try {
      return new TextDecoder('utf-8', { fatal: true }).decode(Buffer.concat(this.#parts));
    } catch {
      return problem('line', 'other bytes', 'text in UTF-8');
    }
  }
}
