import type { Page } from '@playwright/test';
import { expect, test } from './fixtures.ts';
import { openSheet } from './sheet.ts';

const alerts = (page: Page) => page.getByRole('alert');

test('a worker that dies while it computes is begun again: nothing is lost, and the page says so', async ({
  page,
}) => {
  await page.addInitScript(() => {
    const Native = window.Worker;
    let isDoomed = false;
    let first: Worker | null = null;
    Object.assign(window, { doom: () => (isDoomed = true) });
    window.Worker = class extends Native {
      constructor(url: string | URL, options?: WorkerOptions) {
        super(url, options);
        // the one of the picture; the others bring what follows from it
        first ??= this as Worker;
      }
      override postMessage(...sent: unknown[]): void {
        // it takes the work and is gone before it answers
        Reflect.apply(Native.prototype.postMessage, this, sent);
        if (!isDoomed || this !== first) return;
        isDoomed = false;
        this.terminate();
        this.dispatchEvent(new ErrorEvent('error', { message: 'gone', cancelable: true }));
      }
    };
  });
  const { slider, sentence } = await openSheet(page);
  await slider('Ambient').fill('31');
  await page.evaluate('window.doom()');
  await slider('Front blanking').fill('42');
  await expect(sentence).toContainText(/42\s%/);
  await expect(page.getByText('Calculation was restarted, nothing is lost')).toBeVisible();
  await expect(slider('Front blanking')).toHaveValue('42');
  await expect(slider('Ambient')).toHaveValue('31');
  await expect(alerts(page)).toHaveCount(0);
  await slider('Front blanking').fill('43');
  await expect(page.getByText('Calculation was restarted')).toHaveCount(0);
});

/** However long the disk takes: how soon it is kept is measured elsewhere. */
const isSavedAt = (page: Page, words: RegExp): Promise<void> =>
  expect(page.getByText(words)).toBeVisible({ timeout: 20_000 });

test('a tab that slept for an hour goes on where it was', async ({ page }) => {
  await page.clock.install({ time: new Date('2026-06-01T14:30:00') });
  const { slider, sentence, cursor } = await openSheet(page);
  await slider('Front blanking').fill('44');
  await isSavedAt(page, /saved 14:3\d/i);
  await page.getByRole('button', { name: 'Play' }).click();
  await expect.poll(cursor).toBeGreaterThan(0);
  const before_s = await cursor();
  await page.clock.fastForward('01:00:00');
  const after_s = await cursor();
  // at most the longest frame of a play at twenty times, and what a slow machine plays meanwhile
  expect(after_s - before_s).toBeLessThan(120);
  await page.getByRole('button', { name: 'Pause' }).click();
  await expect(slider('Front blanking')).toHaveValue('44');
  await expect(alerts(page)).toHaveCount(0);
  await slider('Front blanking').fill('45');
  await expect(sentence).toContainText(/45\s%/);
  await isSavedAt(page, /saved 15:3\d/i);
});

test('a run that was under way as the tab fell asleep is done after it', async ({ page }) => {
  await page.clock.install({ time: new Date('2026-06-01T14:30:00') });
  const { slider, sentence } = await openSheet(page);
  await slider('Ambient').fill('12');
  await page.clock.fastForward('01:00:00');
  await expect(sentence).toContainText(/alibrated/);
  await slider('Front blanking').fill('46');
  await expect(sentence).toContainText(/46\s%/);
  await expect(slider('Ambient')).toHaveValue('12');
  await expect(alerts(page)).toHaveCount(0);
});

test('a clock that is set back loses nothing, and what is kept is told by the new time', async ({ page }) => {
  await page.clock.install({ time: new Date('2026-06-01T14:30:00') });
  const { slider } = await openSheet(page);
  await slider('Front blanking').fill('47');
  await isSavedAt(page, /saved 14:3\d/i);
  await page.clock.setSystemTime(new Date('2026-06-01T12:10:00'));
  await slider('Front blanking').fill('48');
  await isSavedAt(page, /saved 12:1\d/i);
  await page.reload();
  await expect(page.locator('.sentence')).toContainText(/alibrated/);
  await expect(slider('Front blanking')).toHaveValue('48');
  await expect(alerts(page)).toHaveCount(0);
});
