import { beforeEach, describe, expect, it } from 'vitest';
import { Keeper } from '../../../web/state/keeper.ts';

const tick = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));

describe('the keeper', () => {
  let now_ms: number;
  let alarms: { at_ms: number; ring: () => void }[];
  let written: string[];
  let heard: string[];
  let write: (sheet: string) => Promise<void>;
  let keeper: Keeper<string>;

  /** Lets time pass, with every alarm in it. */
  async function pass(by_ms: number): Promise<void> {
    const end_ms = now_ms + by_ms;
    for (;;) {
      const next = alarms.filter(({ at_ms }) => at_ms <= end_ms).sort((a, b) => a.at_ms - b.at_ms)[0];
      if (!next) break;
      alarms = alarms.filter((alarm) => alarm !== next);
      now_ms = next.at_ms;
      next.ring();
      await tick();
    }
    now_ms = end_ms;
  }

  beforeEach(() => {
    now_ms = 0;
    [alarms, written, heard] = [[], [], []];
    write = (sheet) => Promise.resolve(void written.push(sheet));
    keeper = new Keeper<string>({
      write: (sheet) => write(sheet),
      kept: (sheet) => heard.push(`kept ${sheet}`),
      failed: (cause) => heard.push(`failed ${String(cause)}`),
      alarm: (after_ms, ring) => {
        const alarm = { at_ms: now_ms + after_ms, ring };
        alarms.push(alarm);
        return () => (alarms = alarms.filter((each) => each !== alarm));
      },
      now: () => now_ms,
    });
  });

  it('writes a change within a second, and once', async () => {
    keeper.change(() => 'a');
    await pass(1000);
    expect(written).toEqual(['a']);
    await pass(60_000);
    expect(heard).toEqual(['kept a']);
  });

  it('writes what is there when it writes, not what was there at the change', async () => {
    let sheet = 'early';
    keeper.change(() => sheet);
    sheet = 'late';
    await pass(1000);
    expect(written).toEqual(['late']);
  });

  it('waits while the hand moves, but not for ever', async () => {
    for (let i = 0; i < 50; i++) {
      keeper.change(() => `${i}`);
      await pass(100);
    }
    expect(written).toHaveLength(1);
    await pass(1000);
    expect(written).toHaveLength(2);
    expect(written.at(-1)).toBe('49');
  });

  it('tells of a failure and tries again with the next change', async () => {
    write = () => Promise.reject(new Error('full'));
    keeper.change(() => 'a');
    await pass(1000);
    expect(heard).toEqual(['failed Error: full']);
    write = (sheet) => Promise.resolve(void written.push(sheet));
    keeper.change(() => 'b');
    await pass(1000);
    expect(heard.at(-1)).toBe('kept b');
  });

  it('never writes two at once: what changes in the meantime is written after', async () => {
    let done: () => void = () => undefined;
    write = (sheet) => new Promise((resolve) => ((done = resolve), written.push(sheet)));
    keeper.change(() => 'a');
    await pass(1000);
    keeper.change(() => 'b');
    await pass(1000);
    expect(written).toEqual(['a']);
    done();
    await tick();
    expect(written).toEqual(['a', 'b']);
  });

  it('writes at once when the page is about to go, and nothing where nothing has changed', async () => {
    keeper.flush();
    expect(written).toEqual([]);
    keeper.change(() => 'a');
    keeper.flush();
    expect(written).toEqual(['a']);
    await pass(5000);
    expect(written).toEqual(['a']);
  });

  it('writes nothing more once it is stopped, and tells nothing of what was under way', async () => {
    keeper.change(() => 'a');
    keeper.flush();
    keeper.change(() => 'b');
    keeper.stop();
    keeper.change(() => 'c');
    await pass(5000);
    expect(written).toEqual(['a']);
    expect(heard).toEqual([]);
  });

  it('goes on when the clock is set back an hour', async () => {
    keeper.change(() => 'a');
    now_ms -= 3_600_000;
    alarms = [];
    keeper.change(() => 'b');
    await pass(1000);
    expect(written).toEqual(['b']);
  });
});
