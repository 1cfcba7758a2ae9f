import type { Page } from '@playwright/test';

/** As in a browser that cannot write to a file itself: it loads down instead, and a file is chosen in a field. */
export async function withoutFileAccess(page: Page): Promise<void> {
  await page.addInitScript(() => {
    for (const name of ['showOpenFilePicker', 'showSaveFilePicker']) Reflect.deleteProperty(window, name);
  });
}

interface Disk {
  /** Names of the files that a person was asked for. */
  asked: string[];
  /** What was written, the last at the end. */
  written: string[];
}

/** As in a browser that can: whoever is asked takes the name that is proposed. No real window of the system opens in a test. */
export async function withFileAccess(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const disk: Disk = { asked: [], written: [] };
    const handleOf = (name: string) => ({
      kind: 'file',
      name,
      getFile: () => Promise.resolve(new File([disk.written.at(-1) ?? ''], name)),
      createWritable: () => {
        let text = '';
        return Promise.resolve(
          new WritableStream({
            write: async (chunk: Uint8Array | Blob) => void (text += await new Blob([chunk as Blob]).text()),
            close: () => void disk.written.push(text),
          }),
        );
      },
    });
    Object.assign(window, {
      disk,
      showSaveFilePicker: ({ suggestedName }: { suggestedName: string }) => {
        disk.asked.push(suggestedName);
        return Promise.resolve(handleOf(suggestedName));
      },
      showOpenFilePicker: () => Promise.resolve([handleOf('last-written.json')]),
    });
  });
}

export const diskOf = (page: Page): Promise<Disk> =>
  page.evaluate(() => (window as unknown as { disk: Disk }).disk);
