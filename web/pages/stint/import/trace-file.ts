/** All that a speed trace needs, loaded with the first file that is opened. */
import { browserMemory } from '../../../state/remembered.ts';
import { TraceReader } from '../../../state/trace-reader.svelte.ts';
import { openReader } from '../../../state/worker-door.ts';
import TraceFile from './TraceFile.svelte';

/** What reads a file, and the panel that shows it. */
export interface TraceImport {
  reader: TraceReader;
  TraceFile: typeof TraceFile;
}

export const traceImport = (): TraceImport => ({
  reader: new TraceReader(openReader, browserMemory),
  TraceFile,
});
