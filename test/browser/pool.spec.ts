import type { Page } from '@playwright/test';
import { finished } from '../../engine/advise/finished.ts';
import { safeSpans } from '../../engine/advise/safe-span.ts';
import { defaultScenario } from '../../engine/scenario/library.ts';
import { expect, test } from './fixtures.ts';
import { openSheet } from './sheet.ts';

const PATIENCE = { timeout: 40_000 };
const COUNTED = /\d+ of\s100 runs keeps? the front discs/;
const SPAN = finished(safeSpans(defaultScenario()))[0]!.span_pct!;
const IN_WORDS = new RegExp(
  `Safe on counted laps from ${Math.ceil(SPAN[0])} to\\s${Math.floor(SPAN[1])}\\s%`,
);

test.beforeEach(() => test.setTimeout(120_000));

/** Puts the workers that the page starts into `window.started`, and what they are asked and say into `window.heard`. */
async function watchWorkers(page: Page, { cores = 2, breaks = 'false', late_ms = 0 } = {}): Promise<void> {
  await page.addInitScript(`{
    Object.defineProperty(navigator, 'hardwareConcurrency', { get: () => ${cores} });
    const Native = window.Worker;
    window.started = [];
    window.heard = [];
    window.Worker = class extends Native {
      constructor(...args) {
        super(...args);
        const at = window.started.push(this) - 1;
        const post = this.postMessage.bind(this);
        let asked = 0;
        const pending = new Set();
        this.addEventListener('message', ({ data }) => {
          if (pending.delete(data.id)) window.heard.push({ at, end: performance.now(), value: data.value });
        });
        this.postMessage = (message, ...rest) => {
          const path = (message.path ?? []).join('.');
          const breaks = (at, path, asked) => ${breaks};
          if (path === 'answer') asked += 1;
          if (breaks(at, path, asked)) {
            this.dispatchEvent(new ErrorEvent('error', { message: 'killed', cancelable: true }));
            return;
          }
          if (path === 'answer') {
            pending.add(message.id);
            window.heard.push({ at, begin: performance.now(), search: message.argumentList[0].value });
          }
          if (path === 'answer' && ${late_ms} > 0) setTimeout(() => post(message, ...rest), ${late_ms});
          else post(message, ...rest);
        };
      }
    };
  }`);
}

/** Waits for so many runs of searches to have begun. */
const runsBegun = (page: Page, count: number): Promise<unknown> =>
  page.evaluate(`new Promise((resolve) => {
    const look = () => (heard.filter(({ begin }) => begin).length >= ${count} ? resolve() : setTimeout(look, 5));
    look();
  })`);

const started = (page: Page): Promise<number> => page.evaluate('started.length');

test('how far the draws are is told calmly: to the eye, nothing moves, nothing is read out', async ({
  page,
}) => {
  // the draws take long enough to be told of, whatever the machine
  await watchWorkers(page, { cores: 1, late_ms: 20 });
  const { sentence } = await openSheet(page);
  await page.evaluate(`{
    window.told = [];
    window.read = new Set();
    window.moves = new Set();
    const line = document.querySelector('.sentence .drawn');
    const top = () => ['.driver', '.columns', '.plot'].map((one) => document.querySelector(one).getBoundingClientRect().top).join();
    window.moves.add(top());
    const note = () => {
      window.moves.add(top());
      if (line.textContent) window.told.push({ text: line.textContent.trim(), at: performance.now() });
    };
    new MutationObserver(note).observe(line, { childList: true, characterData: true, subtree: true });
    const status = document.querySelector('[role=status]');
    new MutationObserver(() => window.read.add(status.textContent)).observe(status, { childList: true, characterData: true, subtree: true });
  }`);
  await expect(sentence).toContainText(COUNTED, PATIENCE);
  const told = await page.evaluate<{ text: string; at: number }[]>('told');
  expect(told.length).toBeGreaterThan(0);
  const counts = told.map(({ text }) => Number(/^(\d+) of\s100 runs done\.$/.exec(text)?.[1]));
  expect(counts).toEqual(counts.toSorted((a, b) => a - b));
  expect(counts.every((count) => count > 0 && count <= 100)).toBe(true);
  for (const [i, { at }] of told.slice(1).entries()) expect(at - told[i]!.at).toBeGreaterThan(450);
  expect(await page.evaluate('[...read].filter((text) => /runs done/.test(text))')).toEqual([]);
  expect(await page.evaluate('moves.size')).toBe(1);
  await expect(page.locator('.sentence .drawn')).toHaveText('');
});

test('a search that is not wanted any more is left: no run of it begins, and the next search does', async ({
  page,
}) => {
  await watchWorkers(page);
  const { sentence, slider } = await openSheet(page);
  await expect(sentence).toContainText(IN_WORDS, PATIENCE);
  await runsBegun(page, 60);
  await page.evaluate(`document.addEventListener('input', () => (window.moved ??= performance.now()), true)`);
  await slider('Ambient').fill('12');
  await expect(sentence).toContainText(COUNTED, PATIENCE);
  const begun = await page.evaluate<{ old: number; next: number }>(`(() => {
    const begun = heard.filter(({ begin }) => begin);
    const old = Math.max(...begun.filter(({ begin }) => begin < moved).map(({ search }) => search));
    const after = begun.filter(({ begin }) => begin > moved);
    const next = after.filter(({ search }) => search > old).length;
    return { old: after.length - next, next };
  })()`);
  // how soon is told by the benchmark
  expect(begun.old).toBe(0);
  expect(begun.next).toBeGreaterThan(0);
});

test('while the blanking is dragged the search for its span goes on, in one worker', async ({ page }) => {
  // the search lasts longer than it takes to begin the drag, whatever the machine
  await watchWorkers(page, { late_ms: 50 });
  const { sentence, slider } = await openSheet(page);
  const lever = slider('Front blanking');
  await lever.evaluate(
    (input: HTMLInputElement) =>
      new Promise<void>((resolve) => {
        let start_ms = 0;
        const isBegun = (): boolean =>
          (window as unknown as { heard: { begin?: number }[] }).heard.some(({ begin }) => begin);
        const move = (): void => {
          if (!isBegun()) return void setTimeout(move, 5);
          start_ms ||= performance.now();
          input.value = String(30 + (Math.round(performance.now() - start_ms) % 30));
          input.dispatchEvent(new Event('input', { bubbles: true }));
          const isFound = /Safe on counted laps/.test(document.querySelector('.sentence')?.textContent ?? '');
          Object.assign(window, { moved: [start_ms, performance.now()] });
          if (isFound) resolve();
          else setTimeout(move, 30);
        };
        move();
      }),
  );
  await expect(sentence).toContainText(IN_WORDS);
  const both = await page.evaluate<number>(`(() => {
    // what was under way as the hand began to move may end
    const [from, to] = moved;
    const busy = new Set();
    let most = 0;
    for (const { at, begin, end } of heard) {
      if (begin) busy.add(at);
      else busy.delete(at);
      if (begin > from && begin < to) most = Math.max(most, busy.size);
    }
    return most;
  })()`);
  expect(both).toBe(1);
});

test('a worker that dies in the middle of a search is replaced, and nothing is lost', async ({ page }) => {
  await watchWorkers(page, { breaks: "at === 1 && path === 'answer' && asked === 3" });
  const { sentence, slider } = await openSheet(page);
  await expect(sentence).toContainText(IN_WORDS, PATIENCE);
  await expect(sentence).toContainText(COUNTED, PATIENCE);
  expect(await started(page)).toBe(4);
  await expect(slider('Front blanking')).toHaveValue('70');
});

test('where every worker of the pool dies the sentence says so, and the stint goes on', async ({ page }) => {
  await watchWorkers(page, { breaks: 'at > 0' });
  const { sentence, slider } = await openSheet(page);
  await expect(sentence).toContainText(/No safe span: its worker stopped, killed\./, PATIENCE);
  await expect(sentence).toContainText(
    /Its doubt could not be computed: its worker stopped, killed\./,
    PATIENCE,
  );
  await slider('Front blanking').fill('33');
  await expect(sentence).toContainText(/Front 33\s%/);
});

test('on one core one worker brings all', async ({ page }) => {
  await watchWorkers(page, { cores: 1 });
  const { sentence } = await openSheet(page);
  await expect(sentence).toContainText(COUNTED, PATIENCE);
  expect(await started(page)).toBe(2);
});

test('a page that is frozen in the background in the middle of a search goes on where it was', async ({
  page,
}) => {
  await watchWorkers(page);
  const { sentence } = await openSheet(page);
  await runsBegun(page, 60);
  const cdp = await page.context().newCDPSession(page);
  await cdp.send('Page.setWebLifecycleState', { state: 'frozen' });
  await new Promise((resolve) => setTimeout(resolve, 1500));
  await cdp.send('Page.setWebLifecycleState', { state: 'active' });
  await expect(sentence).toContainText(COUNTED, PATIENCE);
  expect(await started(page)).toBe(3);
});
