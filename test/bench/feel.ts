/** How a drag feels on the built page: frames, tasks, and how soon the picture and the page answer the hand. */
import type { CDPSession, Page } from '@playwright/test';
import { withBuiltPage } from './built-page.ts';
import { rowOf, type Row } from './rows.ts';

const DRAG_MS = 5000;
/** A tablet against a desk computer, as page testers have it [times] */
const SLOWER = 4;
/** Waits until the searches that follow the first stint are under way, as they are for whoever touches the page early [ms] */
const LOOK_MS = 700;

/** What the page noted while it was dragged. */
interface Felt {
  /** When each frame began [ms] */
  frames: number[];
  /** Value of the control and the next frame after it was set. */
  inputs: { value: number; frame: number }[];
  /** Value that the picture says it shows, in the frame that first showed it. */
  shown: { value: number; frame: number }[];
  /** From the event to the next paint [ms] */
  paints: number[];
  tasks: number[];
}

export const feel = (): Promise<Row[]> =>
  withBuiltPage(async (page, { address, scriptOf }) => {
    await page.addInitScript(NOTE);
    const free = await dragged(page, address);
    await slowWorker(page, scriptOf('worker'));
    const cdp = await page.context().newCDPSession(page);
    await slowPage(cdp);
    const slowed = await dragged(page, address);
    return [...rowsOf('blanking dragged', free), ...rowsOf(`the same, all ${SLOWER} times slower`, slowed)];
  });

function rowsOf(name: string, felt: Felt): Row[] {
  const isSlow = name.includes('slower');
  const gaps = felt.frames.slice(1).map((at, i) => at - felt.frames[i]!);
  const wanted = (text: string) => (isSlow ? {} : { wanted: text });
  return [
    rowOf(`${name}: gap between frames`, gaps, { unit: 'ms', ...wanted('17, 99 % 34') }),
    rowOf(`${name}: tasks over 50 ms`, [felt.tasks.length], { unit: '', ...wanted('0') }),
    rowOf(`${name}: from input to its picture`, framesToPicture(felt), { unit: 'frames', ...wanted('2') }),
    rowOf(`${name}: from input to the next paint`, felt.paints, { unit: 'ms', wanted: '99 % 100' }),
  ];
}

/** For each value set, how many frames went by until it or a later one was shown. */
export function framesToPicture({ inputs, shown }: Pick<Felt, 'inputs' | 'shown'>): number[] {
  const delays: number[] = [];
  let from = 0;
  for (const picture of shown) {
    // the newest input of that value: older ones were overtaken, and are answered by it too
    let last = inputs.length - 1;
    while (last >= from && !(inputs[last]!.frame <= picture.frame && inputs[last]!.value === picture.value))
      last -= 1;
    for (const { frame } of inputs.slice(from, last + 1)) delays.push(picture.frame - frame + 1);
    from = Math.max(from, last + 1);
  }
  return delays;
}

async function dragged(page: Page, address: string): Promise<Felt> {
  await page.goto(address);
  const slider = page.getByRole('slider', { name: 'Front blanking', exact: true });
  await page.waitForTimeout(LOOK_MS);
  const box = await slider.boundingBox();
  if (!box) throw new Error('bench: no slider');
  const y = box.y + box.height / 2;
  const xAt = (share: number): number => box.x + box.width * share;
  await page.mouse.move(xAt(0.7), y);
  await page.evaluate('felt.begin()');
  await page.mouse.down();
  const start_ms = Date.now();
  for (let i = 0; Date.now() - start_ms < DRAG_MS; i++) {
    await page.mouse.move(xAt(0.5 + 0.4 * Math.sin((Date.now() - start_ms) / 400)), y);
  }
  await page.mouse.up();
  await page.waitForTimeout(LOOK_MS);
  return await page.evaluate<Felt>('felt.end()');
}

/** The devtools slow the page's own thread only; they refuse it for workers. */
const slowPage = (cdp: CDPSession) => cdp.send('Emulation.setCPUThrottlingRate', { rate: SLOWER });

/** So a worker computes on for as long again as often as it takes to be so much slower, before it answers. */
async function slowWorker(page: Page, script: string): Promise<void> {
  if (!script) throw new Error('bench: no script of the worker');
  await page.route(`**/${script}`, async (route) => {
    const response = await route.fetch();
    await route.fulfill({ response, body: `${DAWDLE}\n${await response.text()}` });
  });
}

const DAWDLE = `{
  let heard_ms = 0;
  const asleep = new Int32Array(new WebAssembly.Memory({ initial: 1, maximum: 1, shared: true }).buffer);
  const answer = self.postMessage.bind(self);
  self.addEventListener('message', () => (heard_ms = performance.now()));
  self.postMessage = (...message) => {
    Atomics.wait(asleep, 0, 0, (${SLOWER} - 1) * (performance.now() - heard_ms));
    answer(...message);
  };
}`;

// as text: the runner's compiler would add a helper to the functions that the page does not have
const NOTE = `{
  let noted = null;
  let frame = 0;
  // the sentence is of the same result as the drawing beside it, and says of which blanking
  const shownNow = () => Number(/Front (\\d+(?:\\.\\d+)?)\\s%/.exec(document.querySelector('.sentence')?.textContent)?.[1]);
  const note = (now) => {
    frame += 1;
    if (noted) {
      noted.frames.push(now);
      const value = shownNow();
      if (value !== noted.shown.at(-1)?.value) noted.shown.push({ value, frame });
    }
    requestAnimationFrame(note);
  };
  requestAnimationFrame(note);
  let moved_ms = 0;
  addEventListener('pointermove', ({ timeStamp }) => (moved_ms = timeStamp), true);
  addEventListener('input', ({ target }) => {
    const from_ms = moved_ms;
    noted?.inputs.push({ value: target.valueAsNumber, frame: frame + 1 });
    requestAnimationFrame(() => setTimeout(() => noted?.paints.push(performance.now() - from_ms)));
  }, true);
  const observe = (type, options, see) =>
    new PerformanceObserver((list) => noted && list.getEntries().forEach(see)).observe({ type, ...options });
  // moves are no interaction in the browser's own account, presses and releases are
  observe('event', { durationThreshold: 16 }, ({ interactionId, duration }) => interactionId && noted.paints.push(duration));
  observe('longtask', {}, ({ duration }) => noted.tasks.push(duration));
  window.felt = {
    begin: () => { noted = { frames: [], inputs: [], shown: [], paints: [], tasks: [] }; },
    end: () => noted,
  };
}`;
