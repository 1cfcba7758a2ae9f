/** All that a file needs that is opened on the sheet, loaded with the first one: a speed trace, or the sheet's own. */
import { browserMemory } from '../../../state/remembered.ts';
import type { Session } from '../../../state/session.svelte.ts';
import { actsOn } from '../../../state/sheet-acts.svelte.ts';
import { isSheetFile } from '../../../state/sheet-file.ts';
import { TraceReader } from '../../../state/trace-reader.svelte.ts';
import { openReader } from '../../../state/worker-door.ts';
import TraceFile from './TraceFile.svelte';

/** What reads a file, and the panel that shows a speed trace. */
export interface TraceImport {
  reader: TraceReader;
  open(file: File, others: readonly string[]): Promise<void>;
  TraceFile: typeof TraceFile;
}

export function traceImport(session: Session): TraceImport {
  const reader = new TraceReader(openReader, browserMemory);
  const open = async (file: File, others: readonly string[]): Promise<void> =>
    (await isSheetFile(file)) ? actsOn(session).openFile(file) : reader.open(file, others);
  return { reader, open, TraceFile };
}
