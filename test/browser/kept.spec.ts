import type { BrowserContext, Page } from '@playwright/test';
import { expect, test } from './fixtures.ts';
import { withoutFileAccess } from './files.ts';
import { frontInStorage } from './storage.ts';
import { openSheet } from './sheet.ts';

/** Types a value. */
async function typed(page: Page, name: string, value: string): Promise<void> {
  const field = page.getByRole('spinbutton', { name: `${name}, typed`, exact: true });
  await field.fill(value);
  await field.press('Enter');
}

const standing = (page: Page) => page.getByRole('banner');
const news = (page: Page) => page.locator('.news');

const isKept = async (page: Page): Promise<void> => {
  await expect(standing(page)).toContainText(/saved \d\d:\d\d/i);
  // for the eye alone
  await expect(standing(page).getByRole('status')).not.toContainText(/saved/i);
};

const isAskedOnLeaving = (page: Page): Promise<boolean> =>
  page.evaluate(() => !window.dispatchEvent(new Event('beforeunload', { cancelable: true })));

/** Ends a page at once, as a crash does: nothing of it runs any more. */
async function crash(page: Page): Promise<void> {
  const devtools = await page.context().newCDPSession(page);
  const crashed = page.waitForEvent('crash');
  void devtools.send('Page.crash').catch(() => undefined);
  await crashed;
  await page.close();
}

test('after a crash the sheet is there as it was left: values, undo, pins, what was in view', async ({
  page,
  context,
}) => {
  const { cursor } = await openSheet(page);
  await page.getByRole('button', { name: 'Pin this run' }).click();
  await typed(page, 'Front blanking', '62');
  await typed(page, 'Front blanking', '44');
  await page.getByRole('radio', { name: 'rear', exact: true }).check();
  await page.getByRole('radio', { name: 'lap', exact: true }).check();
  await page.getByRole('slider', { name: 'Position in the stint' }).press('End');
  const left_s = await cursor();
  await expect.poll(() => frontInStorage(page)).toBe(44);
  await isKept(page);
  await page.waitForTimeout(1000); // the rest of what was done is written by then
  await crash(page);

  const next = await context.newPage();
  const { sentence, slider, cursor: cursorNow } = await openSheet(next);
  await expect(slider('Front blanking')).toHaveValue('44');
  await expect(sentence).toContainText(/Front 44\s% blanked/);
  await expect(next.getByRole('radio', { name: 'rear', exact: true })).toBeChecked();
  await expect(next.getByRole('radio', { name: 'lap', exact: true })).toBeChecked();
  expect(await cursorNow()).toBeCloseTo(left_s, 0);
  await expect(next.getByText(/Against pinned/).first()).toBeVisible();
  await isKept(next);
  const undo = next.getByRole('button', { name: 'Undo', exact: true });
  await expect(undo).toHaveAccessibleDescription(/front blanking 62 to 44/i);
  await undo.click();
  await expect(slider('Front blanking')).toHaveValue('62');
  await undo.click();
  await expect(slider('Front blanking')).toHaveValue('70');
});

test('what is changed before anything can be kept is kept as soon as it can', async ({ page }) => {
  await page.addInitScript(() => {
    const request = Reflect.get(LockManager.prototype, 'request') as (...args: unknown[]) => Promise<unknown>;
    LockManager.prototype.request = async function (this: LockManager, ...args: unknown[]): Promise<unknown> {
      await new Promise((resolve) => setTimeout(resolve, 1200));
      return request.apply(this, args);
    };
  });
  await openSheet(page);
  await typed(page, 'Front blanking', '43');
  await expect.poll(() => frontInStorage(page), { timeout: 20_000 }).toBe(43);
});

test('the first picture of a restored sheet is its own, not the default', async ({ page }) => {
  await openSheet(page);
  await typed(page, 'Front blanking', '31');
  await expect.poll(() => frontInStorage(page)).toBe(31);
  await page.addInitScript(() => {
    const said: string[] = [];
    Object.assign(window, { said });
    new MutationObserver(() => {
      const text = document.querySelector('.sentence')?.textContent ?? '';
      const share = /Front (\d+)/.exec(text)?.[1];
      if (share && said.at(-1) !== share) said.push(share);
    }).observe(document, { childList: true, subtree: true, characterData: true });
  });
  await page.reload();
  await isKept(page);
  expect(await page.evaluate(() => (window as unknown as { said: string[] }).said)).toEqual(['31']);
});

test.describe('where the browser stores nothing', () => {
  const ways: Record<string, () => void> = {
    throws: () => {
      IDBFactory.prototype.open = () => {
        throw new DOMException('denied', 'SecurityError');
      };
    },
    refuses: () => {
      IDBFactory.prototype.open = () => {
        const request = new EventTarget() as IDBOpenDBRequest;
        setTimeout(() => request.onerror?.(new Event('error')));
        return request;
      };
    },
    'never answers': () => {
      IDBFactory.prototype.open = () => new EventTarget() as IDBOpenDBRequest;
    },
  };
  for (const [how, deny] of Object.entries(ways)) {
    test(`because it ${how}, all works, one sentence says so, and a file is offered`, async ({ page }) => {
      await page.addInitScript(deny);
      await withoutFileAccess(page);
      const { sentence, slider } = await openSheet(page);
      await expect(news(page)).toContainText(
        'Nothing is kept: this browser does not let the page store anything. Save a file instead.',
        { timeout: 15_000 },
      );
      await expect(standing(page)).toContainText('Not kept');
      await typed(page, 'Front blanking', '44');
      await expect(sentence).toContainText(/Front 44\s% blanked/);
      const download = page.waitForEvent('download');
      await news(page).getByRole('button', { name: 'Save a file' }).click();
      expect((await download).suggestedFilename()).toMatch(/^heavy-closed-car-sorrelby-.*\.json$/);
      await expect(slider('Front blanking')).toHaveValue('44');
      // what is in a file may be left, what is nowhere is asked for
      expect(await isAskedOnLeaving(page)).toBe(false);
      await typed(page, 'Front blanking', '45');
      expect(await isAskedOnLeaving(page)).toBe(true);
    });
  }
});

test('when the storage is full, one sentence says so, and it is kept again when there is room', async ({
  page,
}) => {
  await page.addInitScript(() => {
    const put = IDBObjectStore.prototype.put;
    Object.assign(window, { full: true });
    IDBObjectStore.prototype.put = function (...args) {
      if ((window as unknown as { full: boolean }).full)
        throw new DOMException('no room', 'QuotaExceededError');
      return put.apply(this, args);
    };
  });
  const { sentence } = await openSheet(page);
  await typed(page, 'Front blanking', '44');
  await expect(news(page)).toContainText(
    'Nothing more is kept: the storage of the browser is full. Save a file instead.',
  );
  await expect(sentence).toContainText(/Front 44\s% blanked/);
  await page.evaluate(() => Object.assign(window, { full: false }));
  await typed(page, 'Front blanking', '45');
  await isKept(page);
  await expect(news(page).getByText('Nothing more is kept')).toHaveCount(0);
  expect(await frontInStorage(page)).toBe(45);
});

test('what another version kept and this one cannot read is not lost: it is offered as a file', async ({
  page,
}) => {
  await withoutFileAccess(page);
  await openSheet(page);
  await typed(page, 'Front blanking', '44');
  await expect.poll(() => frontInStorage(page)).toBe(44);
  await page.waitForTimeout(1000); // nothing more is written then
  await page.evaluate(
    () =>
      new Promise((resolve) => {
        const asked = indexedDB.open('emberlap sheet');
        asked.onsuccess = () => {
          const all = asked.result.transaction('kept', 'readwrite').objectStore('kept');
          const got = all.get('sheet');
          got.onsuccess = () => {
            const sheet = got.result as { scenario: Record<string, unknown> };
            sheet.scenario['version'] = 9;
            all.put(sheet, 'sheet').onsuccess = resolve;
          };
        };
      }),
  );
  await page.reload();
  await expect(news(page)).toContainText('What was kept here cannot be read by this version.');
  await expect(news(page)).toContainText('version: expected at most 1, got 9');
  const download = page.waitForEvent('download');
  await news(page).getByRole('button', { name: 'Save what was kept as a file' }).click();
  await download;
});

test.describe('two tabs', () => {
  /** The same sheet once more. */
  async function secondTab(context: BrowserContext): Promise<Page> {
    const page = await context.newPage();
    await openSheet(page);
    await expect(news(page)).toContainText('The sheet is open in another tab: this one is not kept.');
    return page;
  }

  test('the second says that it is not kept and writes nothing', async ({ page, context }) => {
    await openSheet(page);
    await typed(page, 'Front blanking', '44');
    await isKept(page);
    const second = await secondTab(context);
    await typed(second, 'Front blanking', '55');
    await second.waitForTimeout(1500);
    expect(await frontInStorage(page)).toBe(44);
    await expect(standing(second)).toContainText('Not kept');
  });

  test('the second takes over when a person says so, and the first says that it is not kept any more', async ({
    page,
    context,
  }) => {
    await openSheet(page);
    await typed(page, 'Front blanking', '44');
    await isKept(page);
    const second = await secondTab(context);
    await typed(second, 'Front blanking', '55');
    await news(second).getByRole('button', { name: 'Keep this one instead' }).click();
    await isKept(second);
    expect(await frontInStorage(second)).toBe(55);
    await expect(news(page)).toContainText('Another tab keeps the sheet now: this one is not kept any more.');
    await typed(page, 'Front blanking', '33');
    await page.waitForTimeout(1500);
    expect(await frontInStorage(page)).toBe(55);
    await news(page).getByRole('button', { name: 'Keep this one instead' }).click();
    await isKept(page);
    expect(await frontInStorage(page)).toBe(33);
    await expect(news(second)).toContainText('Another tab keeps the sheet now');
  });
});
