/** The browser's door to logged files: reads them in a worker of its own, which the first view does not load. */
import { expose, transfer } from 'comlink';
import type { TraceChoices, TraceReading } from '../circuit/understood.ts';
import { tooLarge } from '../scenario/file-size.ts';
import { readTrace } from '../trace-file/read-trace.ts';
import { decodeText } from './decode-text.ts';
import type { ReaderDoor, TraceBytes } from './protocol.ts';

async function traceFrom(
  file: TraceBytes,
  choices: TraceChoices,
  progress: (share: number) => void,
): Promise<TraceReading> {
  const problem = tooLarge(file.size);
  const decoded = problem ? { problem } : decodeText(await file.arrayBuffer());
  if (!('text' in decoded)) return { problems: [decoded.problem], understood: null, columns: null };
  const reading = readTrace(decoded.text, choices, progress);
  return transfer(reading, columnsOf(reading));
}

/** Columns and thumbnails of a reading: moved to the page, not copied. */
function columnsOf({ columns, understood }: TraceReading): ArrayBuffer[] {
  const thumbnails = understood?.columns.map(({ thumbnail }) => thumbnail) ?? [];
  const all = [...(Object.values(columns ?? {}) as Float64Array[]), ...thumbnails];
  return all.map((column) => column.buffer as ArrayBuffer);
}

const door: ReaderDoor = { readTrace: traceFrom };
expose(door);
