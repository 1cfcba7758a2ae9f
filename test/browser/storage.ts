import type { Page } from '@playwright/test';

/** What the browser holds of the sheet's front blanking, read past the page. */
export const frontInStorage = (page: Page): Promise<number | undefined> =>
  page.evaluate(
    () =>
      new Promise((resolve) => {
        const asked = indexedDB.open('emberlap sheet');
        asked.onsuccess = () => {
          const got = asked.result.transaction('kept').objectStore('kept').get('sheet');
          got.onsuccess = () => {
            asked.result.close();
            const sheet = got.result as { scenario: { blanking_pct: { front: number } } } | undefined;
            resolve(sheet?.scenario.blanking_pct.front);
          };
        };
      }),
  );
