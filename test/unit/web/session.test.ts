import { beforeEach, describe, expect, it } from 'vitest';
import type { RunReply, RunRequest } from '../../../engine/index.ts';
import { Session } from '../../../web/state/session.svelte.ts';
import { sampleResult } from '../../support/sample-result.ts';

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
  });

  it('holds a pinned run while the scenario goes on', async () => {
    session.pin();
    session.change({ 'blanking_pct.front': 31 }, 'front blanking');
    await tick();
    expect(session.pinned?.scenario.blanking_pct.front).toBe(70);
    expect(session.shown?.scenario.blanking_pct.front).toBe(31);
  });
});
