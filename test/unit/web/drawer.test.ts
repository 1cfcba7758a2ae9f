import { expect, test } from 'vitest';
import type { CutReply, CutRequest } from '../../../engine/index.ts';
import { Drawer, type Door } from '../../../web/pages/cut/drawer.svelte.ts';

/** Answers when it is told to. */
class SlowDoor implements Door {
  readonly asked: { request: CutRequest; answer: (reply: CutReply) => void; fail: (why: Error) => void }[] =
    [];
  closed = 0;
  drawCut = (request: CutRequest) =>
    new Promise<CutReply>((answer, fail) => this.asked.push({ request, answer, fail }));
  run = () => Promise.reject(new Error('not asked here'));
  close = () => void this.closed++;
}
const wish = (by: string) => ({ by }) as CutRequest;
const sheets = (title: string) => ({ kind: 'cut', facts: [], cautions: [title] }) as unknown as CutReply;
const settled = () => new Promise((done) => setTimeout(done));

test('the latest wish is drawn, and until then nobody is to cut by what is there', async () => {
  const door = new SlowDoor();
  const drawer = new Drawer(() => door);
  for (const by of ['first', 'second', 'third']) drawer.ask(wish(by));
  expect(drawer.isStale).toBe(true);
  door.asked[0]!.answer(sheets('first'));
  await settled();
  expect([drawer.sheets?.cautions, drawer.isStale]).toEqual([['first'], true]);
  door.asked[1]!.answer(sheets('third'));
  await settled();
  expect(door.asked.map(({ request }) => request.by)).toEqual(['first', 'third']);
  expect([drawer.sheets?.cautions, drawer.isStale]).toEqual([['third'], false]);
});

test('sheets of an earlier wish stay in sight where the latest could not be drawn, but not to be cut by', async () => {
  const door = new SlowDoor();
  const drawer = new Drawer(() => door);
  drawer.ask(wish('first'));
  door.asked[0]!.answer(sheets('first'));
  await settled();
  drawer.ask(wish('second'));
  door.asked[1]!.fail(new Error('the worker is gone'));
  await settled();
  expect([drawer.sheets?.cautions, drawer.failure, drawer.isBusy, drawer.isStale]).toEqual([
    ['first'],
    'the worker is gone',
    false,
    true,
  ]);
  expect(door.closed).toBe(1);
  drawer.ask(wish('third'));
  door.asked[2]!.answer(sheets('third'));
  await settled();
  expect([drawer.failure, drawer.isStale]).toEqual(['', false]);
});
