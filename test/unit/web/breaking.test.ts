import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { expect, it } from 'vitest';
import { breaking } from '../../../web/state/breaking.ts';

const event = (message: string): ErrorEvent => ({ message, preventDefault: () => undefined }) as ErrorEvent;
const never = new Promise<never>(() => undefined);

it('what is asked of a worker is answered as long as it lives', async () => {
  const orBroken = breaking({ onerror: null, onmessageerror: null });
  expect(await orBroken(Promise.resolve(1))).toBe(1);
  await expect(orBroken(Promise.reject(new Error('refused')))).rejects.toThrow('refused');
});

it('all that waits and all that comes after is rejected when it breaks', async () => {
  const worker: Parameters<typeof breaking>[0] = { onerror: null, onmessageerror: null };
  const orBroken = breaking(worker);
  const asked = [orBroken(never), orBroken(never)];
  worker.onerror!.call(worker as Worker, event('killed'));
  for (const each of [...asked, orBroken(never)]) await expect(each).rejects.toThrow('killed');
});

it('one that does not start or cannot be read breaks in words', async () => {
  const worker: Parameters<typeof breaking>[0] = { onerror: null, onmessageerror: null };
  const asked = breaking(worker)(never);
  worker.onerror!.call(worker as Worker, event(''));
  await expect(asked).rejects.toThrow('it could not be started');
  const unread = breaking(worker)(never);
  worker.onmessageerror!.call(worker as Worker, {} as MessageEvent);
  await expect(unread).rejects.toThrow('its answer could not be read');
});

it('nothing that was answered is kept', async () => {
  setFlagsFromString('--expose-gc');
  const collect = runInNewContext('gc') as () => void;
  const orBroken = breaking({ onerror: null, onmessageerror: null });
  const answers: WeakRef<object>[] = [];
  for (let i = 0; i < 5; i++) {
    const answer = { i };
    answers.push(new WeakRef(answer));
    await orBroken(Promise.resolve(answer));
  }
  await new Promise((resolve) => setTimeout(resolve, 0));
  collect();
  expect(answers.slice(0, 4).map((answer) => answer.deref())).toEqual(Array(4).fill(undefined));
});
