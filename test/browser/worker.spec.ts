import { expect, test } from './fixtures.ts';
import { openSheet } from './sheet.ts';

test.beforeEach(async ({ page }) => {
  await page.addInitScript(() => {
    const started: Worker[] = [];
    const Native = window.Worker;
    Object.assign(window, { started });
    new PerformanceObserver((list) => {
      if (list.getEntriesByName('first stint').length > 0) Object.assign(window, { atFirst: started.length });
    }).observe({ type: 'mark', buffered: true });
    window.Worker = class extends Native {
      constructor(url: string | URL, options?: WorkerOptions) {
        super(url, options);
        started.push(this);
      }
    };
  });
});

const workers = (): Worker[] => (window as unknown as { started: Worker[] }).started;

test('one warm worker serves the stint, and at most one a core the advice, whatever changes', async ({
  page,
}) => {
  const { slider, sentence } = await openSheet(page);
  const count = (): Promise<number> => page.evaluate(`(${workers.toString()})().length`);
  // counted by the page itself as it shows the first stint: a moment later the search for spans opens its own
  await expect.poll(() => page.evaluate('window.atFirst')).toBe(1);
  await expect(sentence).toContainText(/Safe on counted laps/);
  for (const share of ['20', '40', '60']) await slider('Front blanking').fill(share);
  for (const ambient of ['10', '20', '30']) await slider('Ambient').fill(ambient);
  await expect(sentence).toContainText(/60\s%/);
  await expect(sentence).toContainText(/Safe on counted laps|No blanking/);
  const cores = await page.evaluate(() => navigator.hardwareConcurrency);
  expect(await count()).toBe(1 + Math.min(cores, 4));
});

test('a worker that is killed is started again and the run repeated', async ({ page }) => {
  const { slider, sentence } = await openSheet(page);
  await page.evaluate(`(${workers.toString()})()[0].terminate()`);
  await slider('Front blanking').fill('33');
  await expect(sentence).toContainText(/33\s%/, { timeout: 20_000 });
});

test('a worker that breaks while it computes is started again at once', async ({ page }) => {
  const { slider, sentence } = await openSheet(page);
  await page.evaluate(`{
    const worker = (${workers.toString()})()[0];
    worker.postMessage = () => worker.dispatchEvent(new ErrorEvent('error', { message: 'broken', cancelable: true }));
  }`);
  await slider('Front blanking').fill('34');
  await expect(sentence).toContainText(/34\s%/, { timeout: 3_000 });
});

test('an engine that cannot be loaded is said not to start, and nothing is computing any more', async ({
  page,
}) => {
  await page.route(/worker-[^/]*\.js$/, (route) => route.abort());
  await page.goto('/');
  await expect(page.getByRole('alert')).toHaveText('The simulator did not start. Reload the page.');
  await expect(page.getByText('Computing the first stint')).toHaveCount(0);
});

test('a first script that runs twice, as it does in WebKit, answers once', async ({ page }) => {
  const url = page.waitForRequest(/worker-[^/]*\.js$/).then((request) => request.url());
  await openSheet(page);
  const script = await url;
  await page.route('**/twice.js', (route) =>
    route.fulfill({
      contentType: 'text/javascript',
      body: `await import('${script}'); await import('${script}?again'); postMessage('ready');`,
    }),
  );
  const answers = await page.evaluate(async () => {
    const worker = new Worker('/twice.js', { type: 'module' });
    const heard: { id?: string }[] = [];
    worker.onmessage = ({ data }: MessageEvent<{ id?: string }>) => heard.push(data);
    const until = async (many: number): Promise<void> => {
      while (heard.length < many) await new Promise((resolve) => setTimeout(resolve, 20));
    };
    await until(1);
    const ask = (id: string) => worker.postMessage({ id, type: 'APPLY', path: ['forget'], argumentList: [] });
    ask('a');
    await until(2);
    ask('b');
    await until(3);
    return heard.slice(1).map(({ id }) => id);
  });
  expect(answers).toEqual(['a', 'b']);
});
