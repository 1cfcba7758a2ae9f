import { beforeEach, describe, expect, it } from 'vitest';
import { Offline, type Registrar } from '../../../web/offline/offline.svelte.ts';

/** A service worker whose life the test tells. */
class FakeRegistrar {
  #heard = new Map<string, () => void>();
  skipped = 0;
  isActive = false;
  fails = false;

  addEventListener = (name: string, heard: () => void): void => void this.#heard.set(name, heard);
  register = (): Promise<{ active: object | null }> =>
    this.fails ? Promise.reject(new Error('denied')) : Promise.resolve({ active: this.isActive ? {} : null });
  messageSkipWaiting = (): void => void (this.skipped += 1);
  update = (): Promise<void> => Promise.reject(new Error('no network'));
  tell(name: string): void {
    this.#heard.get(name)?.();
  }
}

describe('the page without network', () => {
  let registrar: FakeRegistrar;
  let reloads: number;
  const opened = (isServed: boolean): Offline =>
    new Offline(registrar as unknown as Registrar, {
      isServed: () => isServed,
      reload: () => void (reloads += 1),
    });

  beforeEach(() => {
    [registrar, reloads] = [new FakeRegistrar(), 0];
  });

  it('is ready once all its files are in the browser', async () => {
    const offline = opened(false);
    await offline.begin();
    expect(offline.isReady).toBe(false);
    registrar.tell('activated');
    expect(offline.isReady).toBe(true);
  });

  it('is ready at once on the next visit', async () => {
    registrar.isActive = true;
    const offline = opened(true);
    await offline.begin();
    expect(offline.isReady).toBe(true);
  });

  it('goes on with the network alone where the browser allows no more', async () => {
    registrar.fails = true;
    const offline = opened(false);
    await offline.begin();
    offline.look();
    expect(offline.isReady).toBe(false);
  });

  it('does not take the first version for a new one', () => {
    const offline = opened(false);
    registrar.tell('controlling');
    expect([offline.isRenewed, reloads]).toEqual([false, 0]);
  });

  it('offers a new version, and reloads only when it is taken', () => {
    const offline = opened(true);
    registrar.tell('waiting');
    expect([offline.isOffered, registrar.skipped]).toEqual([true, 0]);
    offline.take();
    expect([registrar.skipped, reloads]).toEqual([1, 0]);
    registrar.tell('controlling');
    expect(reloads).toBe(1);
  });

  it('does not ask again when the answer was "later"', () => {
    const offline = opened(true);
    registrar.tell('waiting');
    offline.later();
    expect([offline.isOffered, registrar.skipped, reloads]).toEqual([false, 0, 0]);
  });

  it('says that another tab took the new version, and leaves it to the person to reload this one', () => {
    const offline = opened(true);
    registrar.tell('waiting');
    registrar.tell('controlling');
    expect([offline.isOffered, offline.isRenewed, reloads]).toEqual([false, true, 0]);
    offline.take();
    expect(reloads).toBe(1);
  });

  it('notices that another tab took a new version since the first was brought here', () => {
    const offline = opened(false);
    registrar.tell('controlling');
    registrar.tell('controlling');
    expect(offline.isRenewed).toBe(true);
  });
});
