import { describe, expect, it } from 'vitest';
import type {
  CornerSensitivity,
  SafeSpan,
  Scenario,
  SensitivityReply,
  SpanReply,
  SpanRequest,
  Spread,
  SpreadReply,
  SpreadRequest,
} from '../../../engine/index.ts';
import { defaultScenario } from '../../../engine/scenario/library.ts';
import { Adviser, type AdviceDoor } from '../../../web/state/adviser.svelte.ts';
import { changed } from '../../support/stints.ts';

interface Asked<Request, Reply> {
  request: Request;
  answer: (reply: Reply) => void;
  break: (cause: Error) => void;
}

/** A worker under the test's hand: what was asked of it, and the way to answer or to break it. */
class FakeDoor implements AdviceDoor {
  asked: Asked<SpanRequest, SpanReply>[] = [];
  askedSpread: Asked<SpreadRequest, SpreadReply>[] = [];
  askedSensitivity: Asked<SpanRequest, SensitivityReply>[] = [];
  left = 0;
  isClosed = false;
  findSpans(request: SpanRequest): Promise<SpanReply> {
    return new Promise((answer, fail) => this.asked.push({ request, answer, break: fail }));
  }
  findSpread(request: SpreadRequest): Promise<SpreadReply> {
    return new Promise((answer, fail) => this.askedSpread.push({ request, answer, break: fail }));
  }
  findSensitivity(request: SpanRequest): Promise<SensitivityReply> {
    return new Promise((answer, fail) => this.askedSensitivity.push({ request, answer, break: fail }));
  }
  leaveSearch(): void {
    this.left += 1;
  }
  close(): void {
    this.isClosed = true;
  }
}

function bench() {
  const doors: FakeDoor[] = [];
  const alarms: { after_ms: number; ring: () => void; isOff: boolean }[] = [];
  const adviser = new Adviser(
    () => {
      doors.push(new FakeDoor());
      return doors.at(-1)!;
    },
    (after_ms, ring) => {
      const alarm = { after_ms, ring, isOff: false };
      alarms.push(alarm);
      return () => void (alarm.isOff = true);
    },
  );
  /** Lets the time pass that the hand must rest. */
  const rest = (): void => {
    for (const alarm of alarms.splice(0)) if (!alarm.isOff && alarm.after_ms < 1000) alarm.ring();
  };
  /** Rings what would ring only when a worker has hung. */
  const hang = (): void => {
    for (const alarm of alarms.splice(0)) if (!alarm.isOff && alarm.after_ms > 1000) alarm.ring();
  };
  return { doors, adviser, rest, hang };
}

const settledDown = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));
const spans = [{ axle: 'front', side: 'both', span_pct: [54, 61] }] as SafeSpan[];
const spread = { draws: 100, seed: 1, unknowns: 3, corners: [] } as Spread;
const corners = [{ axle: 'front', side: 'both', measureFirst: null }] as unknown as CornerSensitivity[];
const warmer = (): Scenario => changed({ 'conditions.ambient_C': 31 });

describe('the adviser', () => {
  it('asks only when the page is idle and the hand has rested', () => {
    const { doors, adviser, rest } = bench();
    adviser.follow(defaultScenario(), true);
    rest();
    expect(doors).toHaveLength(0);
    adviser.follow(defaultScenario(), false);
    expect(doors).toHaveLength(0);
    rest();
    expect(doors[0]!.asked).toHaveLength(1);
  });

  it('knows the spans of the scenario it asked for, and of no other', async () => {
    const { doors, adviser, rest } = bench();
    adviser.follow(defaultScenario(), false);
    rest();
    expect(adviser.foundSpans(defaultScenario())).toBeNull();
    doors[0]!.asked[0]!.answer({ kind: 'spans', spans });
    await settledDown();
    expect(adviser.spansOf(defaultScenario())).toEqual(spans);
    expect(adviser.spansOf(warmer())).toBeNull();
  });

  it('keeps the spans while only the blanking moves, and does not look for them again', async () => {
    const { doors, adviser, rest } = bench();
    adviser.follow(defaultScenario(), false);
    rest();
    doors[0]!.asked[0]!.answer({ kind: 'spans', spans });
    await settledDown();
    const dragged = changed({ 'blanking_pct.front': 33, 'blanking_pct.rear': 10 });
    expect(adviser.spansOf(dragged)).toEqual(spans);
    adviser.follow(dragged, false);
    rest();
    expect(doors[0]!.asked).toHaveLength(1);
  });

  it('asks anew when sides that have their own blanking move against each other', async () => {
    const { doors, adviser, rest } = bench();
    const uneven = changed({ 'blanking_pct.front_left': 40, 'blanking_pct.front_right': 50 });
    adviser.follow(uneven, false);
    rest();
    doors[0]!.asked[0]!.answer({ kind: 'spans', spans });
    await settledDown();
    expect(adviser.spansOf(changed({ 'blanking_pct.front_left': 50 }, uneven))).toBeNull();
  });

  it('leaves a search at once when anything moves, and begins again when it rests', async () => {
    const { doors, adviser, rest } = bench();
    adviser.follow(defaultScenario(), false);
    rest();
    adviser.follow(warmer(), true);
    expect(doors[0]!.left).toBe(1);
    doors[0]!.asked[0]!.answer({ kind: 'spans', spans });
    await settledDown();
    expect(adviser.spansOf(defaultScenario())).toBeNull();
    adviser.follow(warmer(), false);
    rest();
    expect(doors[0]!.asked.map(({ request }) => request.scenario.conditions.ambient_C)).toEqual([26, 31]);
  });

  it('begins again on a fresh worker when its own is killed, and has lost nothing', async () => {
    const { doors, adviser, rest } = bench();
    adviser.follow(defaultScenario(), false);
    rest();
    doors[0]!.asked[0]!.break(new Error('killed'));
    await settledDown();
    expect(doors[0]!.isClosed).toBe(true);
    doors[1]!.asked[0]!.answer({ kind: 'spans', spans });
    await settledDown();
    expect(adviser.foundSpans(defaultScenario())).toEqual(spans);
  });

  it('begins the newest search again when the worker of an older one turns out to be dead', async () => {
    const { doors, adviser, rest } = bench();
    adviser.follow(defaultScenario(), false);
    rest();
    adviser.follow(warmer(), false);
    rest();
    doors[0]!.asked[0]!.break(new Error('killed'));
    await settledDown();
    expect(doors).toHaveLength(2);
    doors[1]!.asked[0]!.answer({ kind: 'spans', spans });
    await settledDown();
    expect(adviser.spansOf(warmer())).toEqual(spans);
  });

  it('waits for no search that it has left', () => {
    const { doors, adviser, rest, hang } = bench();
    adviser.follow(defaultScenario(), false);
    rest();
    adviser.follow(warmer(), true);
    hang();
    expect(doors).toHaveLength(1);
    expect(doors[0]!.isClosed).toBe(false);
  });

  it('takes a worker that gives no answer for dead', async () => {
    const { doors, adviser, rest, hang } = bench();
    adviser.follow(defaultScenario(), false);
    rest();
    hang();
    await settledDown();
    expect(doors.map(({ isClosed }) => isClosed)).toEqual([true, false]);
    expect(doors[1]!.asked).toHaveLength(1);
  });

  it('gives up after three deaths with a sentence, until something changes', async () => {
    const { doors, adviser, rest } = bench();
    adviser.follow(defaultScenario(), false);
    rest();
    for (let life = 0; life < 3; life++) {
      doors[life]!.asked[0]!.break(new Error('killed'));
      await settledDown();
    }
    expect(doors).toHaveLength(3);
    expect(adviser.foundSpans(defaultScenario())).toBe('No safe span: its worker stopped, killed.');
    adviser.follow(warmer(), false);
    rest();
    expect(adviser.foundSpans(warmer())).toBeNull();
    expect(doors).toHaveLength(4);
  });

  it('passes on a failure of the search', async () => {
    const { doors, adviser, rest } = bench();
    adviser.follow(defaultScenario(), false);
    rest();
    doors[0]!.asked[0]!.answer({ kind: 'failure', message: 'something broke' });
    await settledDown();
    expect(adviser.foundSpans(defaultScenario())).toBe('No safe span: something broke.');
  });

  it('shuts its worker when it is closed', () => {
    const { doors, adviser, rest } = bench();
    adviser.follow(defaultScenario(), false);
    rest();
    adviser.close();
    expect(doors[0]!.isClosed).toBe(true);
  });

  it('asks for the spans, then for the spread, then for what matters most', async () => {
    const { doors, adviser, rest } = bench();
    adviser.follow(defaultScenario(), false);
    rest();
    const [door] = doors;
    expect(door!.askedSpread).toHaveLength(0);
    door!.asked[0]!.answer({ kind: 'spans', spans });
    await settledDown();
    expect(door!.askedSpread.map(({ request }) => [request.draws, request.seed])).toEqual([[100, 1]]);
    expect(adviser.foundSpread(defaultScenario())).toBeNull();
    door!.askedSpread[0]!.answer({ kind: 'spread', spread });
    await settledDown();
    expect(adviser.foundSpread(defaultScenario())).toEqual(spread);
    door!.askedSensitivity[0]!.answer({ kind: 'sensitivity', corners });
    await settledDown();
    expect(adviser.foundSensitivity(defaultScenario())).toEqual(corners);
    adviser.follow(defaultScenario(), false);
    rest();
    expect([door!.asked.length, door!.askedSpread.length, door!.askedSensitivity.length]).toEqual([1, 1, 1]);
  });

  it('draws anew when the blanking moves, though its span is known', async () => {
    const { doors, adviser, rest } = bench();
    adviser.follow(defaultScenario(), false);
    rest();
    const [door] = doors;
    door!.asked[0]!.answer({ kind: 'spans', spans });
    await settledDown();
    door!.askedSpread[0]!.answer({ kind: 'spread', spread });
    await settledDown();
    const dragged = changed({ 'blanking_pct.front': 33 });
    adviser.follow(dragged, true);
    expect(door!.left).toBe(1);
    expect(adviser.foundSpread(dragged)).toBeNull();
    door!.askedSensitivity[0]!.answer({ kind: 'left' });
    adviser.follow(dragged, false);
    rest();
    expect(door!.asked).toHaveLength(1);
    expect(door!.askedSpread.map(({ request }) => request.scenario.blanking_pct.front)).toEqual([70, 33]);
  });

  it('goes on to the doubt where there is no span, and says which is missing', async () => {
    const { doors, adviser, rest } = bench();
    adviser.follow(defaultScenario(), false);
    rest();
    doors[0]!.asked[0]!.answer({ kind: 'failure', message: 'something broke' });
    await settledDown();
    doors[0]!.askedSpread[0]!.answer({ kind: 'failure', message: 'this too' });
    await settledDown();
    expect(adviser.foundSpans(defaultScenario())).toBe('No safe span: something broke.');
    expect(adviser.foundSpread(defaultScenario())).toBe('Its doubt could not be computed: this too.');
    expect(doors[0]!.askedSensitivity).toHaveLength(1);
  });

  it('begins the draws again on a fresh worker, and keeps the spans', async () => {
    const { doors, adviser, rest } = bench();
    adviser.follow(defaultScenario(), false);
    rest();
    doors[0]!.asked[0]!.answer({ kind: 'spans', spans });
    await settledDown();
    doors[0]!.askedSpread[0]!.break(new Error('killed'));
    await settledDown();
    expect(doors[1]!.asked).toHaveLength(0);
    expect(doors[1]!.askedSpread).toHaveLength(1);
    expect(adviser.spansOf(defaultScenario())).toEqual(spans);
  });
});
