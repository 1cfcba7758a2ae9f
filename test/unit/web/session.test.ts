import { beforeEach, describe, expect, it } from 'vitest';
import type { RunReply, RunRequest } from '../../../engine/index.ts';
import { loadChecks } from '../../../web/state/checks.ts';
import { Session } from '../../../web/state/session.svelte.ts';
import { sampleResult } from '../../support/sample-result.ts';

await loadChecks();

const tick = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));
const result = sampleResult({ samplesPerLap: 40 });

describe('the session', () => {
  let asked: RunRequest[];
  let reply: (request: RunRequest) => RunReply;
  let session: Session;

  beforeEach(async () => {
    asked = [];
    reply = ({ id }) => ({ id, kind: 'result', result, elapsed_ms: 1 });
    const run = (request: RunRequest): Promise<RunReply> => {
      asked.push(request);
      return Promise.resolve(reply(request));
    };
    session = new Session(
      () => ({ run, close: () => undefined }),
      () => () => undefined,
    );
    await tick();
  });

  it('opens with the default stint and its picture', () => {
    expect(session.scenario.name).toBe('Twenty laps of Sorrelby');
    expect(session.shown?.scenario).toBe(session.scenario);
  });

  it('never mutates a scenario', () => {
    const before = session.scenario;
    session.change({ 'blanking_pct.front': 31 }, 'front blanking');
    expect(before.blanking_pct.front).toBe(70);
    expect(session.scenario.blanking_pct.front).toBe(31);
  });

  it('leaves the parts that a change does not touch the same objects, so that nothing is drawn of them', () => {
    const before = session.scenario;
    session.change({ 'blanking_pct.front': 31 }, 'front blanking');
    expect(session.scenario).not.toBe(before);
    expect(session.scenario.brakes).toBe(before.brakes);
    expect(session.scenario.circuit).toBe(before.circuit);
  });

  it('keeps the track that is driven again, and takes another one', async () => {
    const { track } = session.shown!.result;
    const another = { ...track, length_m: track.length_m + 1 };
    reply = ({ id }) => ({ id, kind: 'result', result: structuredClone(result), elapsed_ms: 1 });
    session.change({ 'conditions.ambient_C': 30 }, 'ambient');
    await tick();
    expect(session.shown!.result.track).toBe(track);
    reply = ({ id }) => ({ id, kind: 'result', result: { ...result, track: another }, elapsed_ms: 1 });
    session.change({ 'conditions.ambient_C': 31 }, 'ambient');
    await tick();
    expect(session.shown!.result.track).toBe(another);
  });

  it('refuses a bad value, says what was expected and changes nothing', () => {
    const before = session.scenario;
    expect(session.change({ 'blanking_pct.front': 120 }, 'front blanking')[0]?.expected).toBe('0 to 100');
    expect(session.scenario).toBe(before);
    expect(asked).toHaveLength(1);
  });

  it('keeps the last good picture when a run fails, and says so', async () => {
    const before = session.shown;
    reply = ({ id }) => ({ id, kind: 'failure', message: 'the root has no bracket' });
    session.change({ 'conditions.ambient_C': 30 }, 'ambient');
    await tick();
    expect(session.shown).toBe(before);
    expect(session.complaints).toEqual([
      'The stint could not be computed: the root has no bracket. The last good picture stays.',
    ]);
  });

  it('speaks of no picture before there is one, and takes that back when one comes', async () => {
    let run = (): Promise<RunReply> => Promise.reject(new Error('it could not be started'));
    const late = new Session(
      () => ({ run: () => run(), close: () => undefined }),
      () => () => undefined,
    );
    await tick();
    expect(late.shown).toBeNull();
    expect(late.complaints).toEqual(['The simulator did not start. Reload the page.']);
    run = () => Promise.resolve({ id: 2, kind: 'result', result, elapsed_ms: 1 });
    late.change({ 'conditions.ambient_C': 30 }, 'ambient');
    await tick();
    expect(late.shown?.result).toBe(result);
    expect(late.complaints).toEqual([]);
  });

  it('undoes one drag as one step', () => {
    for (const share of [60, 50, 40]) session.change({ 'blanking_pct.front': share }, 'front blanking');
    session.settle();
    session.undo();
    expect(session.scenario.blanking_pct.front).toBe(70);
    session.redo();
    expect(session.scenario.blanking_pct.front).toBe(40);
  });

  it('brings brakes, window and shipped blanking along with another car', async () => {
    await session.chooseCar('light');
    expect(session.scenario.brakes.rear.duct).toBeNull();
    expect(session.scenario.blanking_pct.front).toBe(55);
    expect(session.undoName).toBe('car');
  });

  it('leaves a trace behind when a circuit is chosen', async () => {
    const ramp = Array.from({ length: 60 }, (_, i) => i + 1);
    const trace = { name: 'log.csv', time_s: ramp, distance_m: ramp, speed_kmh: ramp };
    expect(session.driveTrace(trace)).toEqual([]);
    expect(session.scenario.trace?.name).toBe('log.csv');
    await session.chooseCircuit('slow');
    expect(session.scenario.trace).toBeNull();
  });

  it('refuses a trace that goes back in time and changes nothing', () => {
    const ramp = Array.from({ length: 60 }, (_, i) => i + 1);
    const trace = { name: 'log.csv', time_s: ramp.toReversed(), distance_m: ramp, speed_kmh: ramp };
    expect(session.driveTrace(trace)[0]?.key).toBe('trace.time_s.1');
    expect(session.scenario.trace).toBeNull();
  });

  it('makes left and right equal again as one step, which undo takes back', () => {
    session.change({ 'blanking_pct.front_left': 60, 'blanking_pct.front_right': 40 }, 'front left and right');
    session.change({ 'sides.front_left.duct.recovery': 0.6 }, 'front left inlet recovery');
    const parted = session.scenario;
    session.equalSides('front');
    expect(session.scenario.blanking_pct).toEqual({ front: 70, rear: 50 });
    expect(session.scenario.sides).toEqual({});
    session.undo();
    expect(session.scenario).toBe(parted);
  });

  it('fits another set of panels as one step, and refuses one that is none', () => {
    expect(session.fitPanels('rear', [0, 50])).toEqual([]);
    expect(session.scenario.brakes.rear.duct?.panels_pct).toEqual([0, 50]);
    expect(session.undoName).toBe('rear panels');
    const before = session.scenario;
    expect(session.fitPanels('rear', [0, 150])[0]?.expected).toBe('0 to 100');
    expect(session.scenario).toBe(before);
    session.undo();
    expect(session.scenario.brakes.rear.duct?.panels_pct).toEqual([0, 40, 60, 75, 85]);
    session.change({ 'brakes.rear.duct.blank': 'hole', 'blanking_pct.rear': 75 }, 'rear blank');
    const [unfit, ...others] = session.fitPanels('rear', [10, 60, 75]);
    expect(unfit).toMatchObject({ key: 'brakes.rear.duct.panels_pct.0', value: '10' });
    expect(others).toEqual([]);
    expect(session.scenario.brakes.rear.duct?.panels_pct).toEqual([0, 40, 60, 75, 85]);
  });

  it('names a step by what it changed, from what to what, and back', () => {
    const plain = (name: string | null): string | undefined => name?.replaceAll('\u00a0', ' ');
    for (const share of [60, 40]) session.change({ 'blanking_pct.front': share }, 'front blanking');
    session.settle();
    expect(plain(session.undoName)).toBe('front blanking 70 to 40 %');
    session.undo();
    expect(plain(session.redoName)).toBe('front blanking 70 to 40 %');
    session.change({ 'traffic.gap_m': 8, 'traffic.gap_s': null }, 'gap');
    expect(plain(session.undoName)).toBe('gap clear air to 8 m');
    session.change({ 'conditions.wet': true }, 'track');
    expect(session.undoName).toBe('track dry to wet');
    session.change({ 'blanking_pct.front_left': 60, 'blanking_pct.front_right': 40 }, 'front sides');
    expect(session.undoName).toBe('front sides');
  });
});

describe('pinned runs', () => {
  let session: Session;
  let opened: number;

  beforeEach(async () => {
    opened = 0;
    session = new Session(
      () => {
        opened += 1;
        return {
          run: ({ id }) => Promise.resolve({ id, kind: 'result', result: { ...result }, elapsed_ms: 1 }),
          close: () => undefined,
        };
      },
      () => () => undefined,
    );
    await tick();
  });

  const blank = async (share: number): Promise<void> => {
    session.change({ 'blanking_pct.front': share }, 'front blanking');
    session.settle();
    await tick();
  };
  const pinned = (): number[] => session.pins.map(({ scenario }) => scenario.blanking_pct.front);

  it('stay while the scenario goes on', async () => {
    session.pin();
    await blank(31);
    expect(session.pinned?.scenario.blanking_pct.front).toBe(70);
    expect(session.shown?.scenario.blanking_pct.front).toBe(31);
  });

  it('are three at most, and a fourth takes the place and the dash of the oldest', async () => {
    for (const share of [60, 50, 40, 30]) {
      await blank(share);
      session.pin();
    }
    expect(pinned()).toEqual([50, 40, 30]);
    expect(session.pins.map(({ dash }) => dash)).toEqual([1, 2, 0]);
    expect(session.madeRoom?.scenario.blanking_pct.front).toBe(60);
    expect(session.undoName).toBe('pinning');
    session.undo();
    expect(pinned()).toEqual([60, 50, 40]);
    expect(session.madeRoom).toBeNull();
  });

  it('go one by one, come back by undo, and the scenario stays', async () => {
    session.pin();
    await blank(50);
    session.pin();
    session.unpin(session.pins[0]!);
    expect(pinned()).toEqual([50]);
    expect(session.undoName).toBe('unpinning');
    session.undo();
    expect(pinned()).toEqual([70, 50]);
    expect(session.scenario.blanking_pct.front).toBe(50);
    expect(opened).toBe(1);
  });

  it('are told against by the one chosen, else by the newest', async () => {
    session.pin();
    await blank(50);
    session.pin();
    expect(session.pinned?.scenario.blanking_pct.front).toBe(50);
    session.compareWith(session.pins[0]!);
    expect(session.pinned?.scenario.blanking_pct.front).toBe(70);
    session.unpin(session.pins[0]!);
    expect(session.pinned?.scenario.blanking_pct.front).toBe(50);
  });

  it('are one run once, however often it is pinned', () => {
    session.pin();
    session.pin();
    expect(pinned()).toEqual([70]);
    session.undo();
    expect(pinned()).toEqual([]);
  });

  it('can be set from scenarios, which are run beside the page', async () => {
    const base = session.scenario;
    const other = { ...base, blanking_pct: { ...base.blanking_pct, front: 20 } };
    await session.holdPins([base, other]);
    expect(pinned()).toEqual([70, 20]);
    expect(opened).toBe(2);
    expect(session.undoName).toBeNull();
    expect(session.shown?.scenario).toBe(base);
  });
});
