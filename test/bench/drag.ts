/** The gaps between frames while a slider is dragged for five seconds, on the built page. */
import type { Page } from '@playwright/test';
import { withBuiltPage } from './built-page.ts';
import { rowOf, type Row } from './rows.ts';

const DRAG_MS = 5000;
// as text: the runner's compiler would add a helper to the function that the page does not have
const RECORD_FRAMES =
  'window.frames = []; window.isNoting ??= requestAnimationFrame(function note(now) { frames.push(now); requestAnimationFrame(note); })';

export const drag = (): Promise<Row[]> =>
  withBuiltPage(async (page) => [
    rowOf('gap between frames, ambient dragged, which leaves each span', await dragGaps(page, 'Ambient'), {
      unit: 'ms',
    }),
  ]);

/** Moves the mouse to and fro on a slider and records every frame. */
export async function dragGaps(page: Page, name: string): Promise<number[]> {
  const box = await page.getByRole('slider', { name, exact: true }).boundingBox();
  if (!box) throw new Error('bench: no slider');
  const y = box.y + box.height / 2;
  const xAt = (share: number): number => box.x + box.width * share;
  await page.evaluate(RECORD_FRAMES);
  await page.waitForTimeout(700); // a search may begin: the drag must take it away
  await page.mouse.move(xAt(0.7), y);
  await page.mouse.down();
  const start_ms = Date.now();
  for (let i = 0; Date.now() - start_ms < DRAG_MS; i++)
    await page.mouse.move(xAt(0.5 + 0.4 * Math.sin(i / 12)), y);
  await page.mouse.up();
  const frames = await page.evaluate(() => (window as unknown as { frames: number[] }).frames);
  return frames.slice(1).map((now, i) => now - (frames[i] ?? now));
}
