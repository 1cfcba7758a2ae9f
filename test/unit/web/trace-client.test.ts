import { describe, expect, it } from 'vitest';
import { traceClient } from '../../../web/state/trace-client.ts';
import { fakeDoor, readingOf, settled } from '../../support/fake-trace-door.ts';

const file = new Blob(['']);
const silent = (): void => undefined;

function started() {
  const door = fakeDoor();
  return { ...door, client: traceClient(door.open, door.alarm) };
}

describe('reading a file in a worker of its own', () => {
  it('keeps the worker warm for the next choices', async () => {
    const { client, last, asked } = started();
    const first = client.read(file, {}, silent);
    last().answer();
    expect((await first).kind).toBe('read');
    void client.read(file, { decimal: ',' }, silent);
    expect(asked.map(({ worker }) => worker)).toEqual([0, 0]);
  });

  it('lets the latest choices win: the worker in the middle of others is ended', async () => {
    const { client, asked, closed, last } = started();
    const first = client.read(file, { lap: 0 }, silent);
    const second = client.read(file, { lap: 1 }, silent);
    expect(closed).toEqual([0]);
    asked[0]!.answer();
    expect(await first).toEqual({ kind: 'stopped' });
    last().answer();
    expect(await second).toEqual({ kind: 'read', reading: readingOf({ lap: 1 }) });
  });

  it('reads again once with the same choices when the worker dies', async () => {
    const { client, asked, last, closed } = started();
    const outcome = client.read(file, { decimal: ',' }, silent);
    last().die();
    await settled();
    expect(closed).toEqual([0]);
    expect(asked.map(({ choices, worker }) => ({ choices, worker }))).toEqual([
      { choices: { decimal: ',' }, worker: 0 },
      { choices: { decimal: ',' }, worker: 1 },
    ]);
    last().answer();
    expect((await outcome).kind).toBe('read');
  });

  it('says so when the worker dies twice, and starts anew when asked again', async () => {
    const { client, last } = started();
    const outcome = client.read(file, {}, silent);
    last().die();
    await settled();
    last().die();
    expect(await outcome).toEqual({ kind: 'dead', cause: 'out of memory' });
    void client.read(file, {}, silent);
    expect(last().worker).toBe(2);
  });

  it('takes a worker that shows no progress for dead', async () => {
    const { client, asked, waitLong } = started();
    void client.read(file, {}, silent);
    waitLong();
    await settled();
    expect(asked).toHaveLength(2);
  });

  it('waits anew at every progress, and for nothing once it is read', async () => {
    const { client, last, alarms } = started();
    const shares: number[] = [];
    const outcome = client.read(file, {}, (share) => shares.push(share));
    const [before] = alarms.keys();
    last().progress(0.5);
    expect(alarms.has(before!)).toBe(false);
    expect(alarms.size).toBe(1);
    last().answer();
    await outcome;
    expect(alarms.size).toBe(0);
    last().progress(1);
    expect(shares).toEqual([0.5]);
  });

  it('does not come back to life after it was stopped', async () => {
    const { client, asked, last } = started();
    const outcome = client.read(file, {}, silent);
    last().die();
    client.close();
    await settled();
    expect(asked).toHaveLength(1);
    expect(await outcome).toEqual({ kind: 'stopped' });
  });

  it('counts a worker that cannot be opened as dead', async () => {
    const client = traceClient(() => {
      throw new Error('no workers here');
    }, fakeDoor().alarm);
    expect(await client.read(file, {}, silent)).toEqual({ kind: 'dead', cause: 'no workers here' });
  });
});
