/** A text as a file of its own, where the person says or where the browser puts what it loads down. */
import { fileSave } from 'browser-fs-access';

const TYPES = { svg: 'image/svg+xml', dxf: 'image/vnd.dxf' };

/** What went wrong; empty: nothing, or the person has closed the window. */
export async function saveDrawing(text: string, fileName: string, ending: 'svg' | 'dxf'): Promise<string> {
  const type = TYPES[ending];
  const blob = new Blob([text], { type });
  try {
    await fileSave(blob, {
      description: 'Drawing',
      mimeTypes: [type],
      extensions: [`.${ending}`],
      fileName,
      id: 'cut',
    });
    return '';
  } catch (error) {
    if (error instanceof DOMException && error.name === 'AbortError') return '';
    return `The file could not be written: ${error instanceof Error ? error.message : String(error)}`;
  }
}
