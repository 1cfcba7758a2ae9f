import { describe, expect, it } from 'vitest';
import type { SafeSpan, Scenario, SpanReply, SpanRequest } from '../../../engine/index.ts';
import { defaultScenario } from '../../../engine/scenario/library.ts';
import { SpanFinder, type SpanDoor } from '../../../web/state/span-finder.svelte.ts';
import { changed } from '../../support/stints.ts';

/** A worker under the test's hand: what was asked of it, and the way to answer or to break it. */
class FakeDoor implements SpanDoor {
  asked: { request: SpanRequest; answer: (reply: SpanReply) => void; break: (cause: Error) => void }[] = [];
  left = 0;
  isClosed = false;
  findSpans(request: SpanRequest): Promise<SpanReply> {
    return new Promise((answer, fail) => this.asked.push({ request, answer, break: fail }));
  }
  leaveSpans(): void {
    this.left += 1;
  }
  close(): void {
    this.isClosed = true;
  }
}

function bench() {
  const doors: FakeDoor[] = [];
  const alarms: { after_ms: number; ring: () => void; isOff: boolean }[] = [];
  const finder = new SpanFinder(
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
  return { doors, finder, rest, hang };
}

const settledDown = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));
const spans = [{ axle: 'front', side: 'both', span_pct: [54, 61] }] as SafeSpan[];
const warmer = (): Scenario => changed({ 'conditions.ambient_C': 31 });

describe('the span finder', () => {
  it('asks only when the page is idle and the hand has rested', () => {
    const { doors, finder, rest } = bench();
    finder.follow(defaultScenario(), true);
    rest();
    expect(doors).toHaveLength(0);
    finder.follow(defaultScenario(), false);
    expect(doors).toHaveLength(0);
    rest();
    expect(doors[0]!.asked).toHaveLength(1);
  });

  it('knows the spans of the scenario it asked for, and of no other', async () => {
    const { doors, finder, rest } = bench();
    finder.follow(defaultScenario(), false);
    rest();
    expect(finder.found(defaultScenario())).toBeNull();
    doors[0]!.asked[0]!.answer({ kind: 'spans', spans });
    await settledDown();
    expect(finder.spansOf(defaultScenario())).toEqual(spans);
    expect(finder.spansOf(warmer())).toBeNull();
  });

  it('keeps the spans while only the blanking moves, and asks nothing', async () => {
    const { doors, finder, rest } = bench();
    finder.follow(defaultScenario(), false);
    rest();
    doors[0]!.asked[0]!.answer({ kind: 'spans', spans });
    await settledDown();
    const dragged = changed({ 'blanking_pct.front': 33, 'blanking_pct.rear': 10 });
    expect(finder.spansOf(dragged)).toEqual(spans);
    finder.follow(dragged, false);
    rest();
    expect(doors[0]!.asked).toHaveLength(1);
    expect(doors[0]!.left).toBe(0);
  });

  it('asks anew when sides that have their own blanking move against each other', async () => {
    const { doors, finder, rest } = bench();
    const uneven = changed({ 'blanking_pct.front_left': 40, 'blanking_pct.front_right': 50 });
    finder.follow(uneven, false);
    rest();
    doors[0]!.asked[0]!.answer({ kind: 'spans', spans });
    await settledDown();
    expect(finder.spansOf(changed({ 'blanking_pct.front_left': 50 }, uneven))).toBeNull();
  });

  it('leaves a search at once when anything moves, and begins again when it rests', async () => {
    const { doors, finder, rest } = bench();
    finder.follow(defaultScenario(), false);
    rest();
    finder.follow(warmer(), true);
    expect(doors[0]!.left).toBe(1);
    doors[0]!.asked[0]!.answer({ kind: 'spans', spans });
    await settledDown();
    expect(finder.spansOf(defaultScenario())).toBeNull();
    finder.follow(warmer(), false);
    rest();
    expect(doors[0]!.asked.map(({ request }) => request.scenario.conditions.ambient_C)).toEqual([26, 31]);
  });

  it('begins again on a fresh worker when its own is killed, and has lost nothing', async () => {
    const { doors, finder, rest } = bench();
    finder.follow(defaultScenario(), false);
    rest();
    doors[0]!.asked[0]!.break(new Error('killed'));
    await settledDown();
    expect(doors[0]!.isClosed).toBe(true);
    doors[1]!.asked[0]!.answer({ kind: 'spans', spans });
    await settledDown();
    expect(finder.found(defaultScenario())).toEqual(spans);
  });

  it('begins the newest search again when the worker of an older one turns out to be dead', async () => {
    const { doors, finder, rest } = bench();
    finder.follow(defaultScenario(), false);
    rest();
    finder.follow(warmer(), false);
    rest();
    doors[0]!.asked[0]!.break(new Error('killed'));
    await settledDown();
    expect(doors).toHaveLength(2);
    doors[1]!.asked[0]!.answer({ kind: 'spans', spans });
    await settledDown();
    expect(finder.spansOf(warmer())).toEqual(spans);
  });

  it('waits for no search that it has left', () => {
    const { doors, finder, rest, hang } = bench();
    finder.follow(defaultScenario(), false);
    rest();
    finder.follow(warmer(), true);
    hang();
    expect(doors).toHaveLength(1);
    expect(doors[0]!.isClosed).toBe(false);
  });

  it('takes a worker that gives no answer for dead', async () => {
    const { doors, finder, rest, hang } = bench();
    finder.follow(defaultScenario(), false);
    rest();
    hang();
    await settledDown();
    expect(doors.map(({ isClosed }) => isClosed)).toEqual([true, false]);
    expect(doors[1]!.asked).toHaveLength(1);
  });

  it('gives up after three deaths with a sentence, until something changes', async () => {
    const { doors, finder, rest } = bench();
    finder.follow(defaultScenario(), false);
    rest();
    for (let life = 0; life < 3; life++) {
      doors[life]!.asked[0]!.break(new Error('killed'));
      await settledDown();
    }
    expect(doors).toHaveLength(3);
    expect(finder.found(defaultScenario())).toBe('No safe span: its worker stopped, killed.');
    finder.follow(warmer(), false);
    rest();
    expect(finder.found(warmer())).toBeNull();
    expect(doors).toHaveLength(4);
  });

  it('passes on a failure of the search', async () => {
    const { doors, finder, rest } = bench();
    finder.follow(defaultScenario(), false);
    rest();
    doors[0]!.asked[0]!.answer({ kind: 'failure', message: 'something broke' });
    await settledDown();
    expect(finder.found(defaultScenario())).toBe('No safe span: something broke.');
  });

  it('shuts its worker when it is closed', () => {
    const { doors, finder, rest } = bench();
    finder.follow(defaultScenario(), false);
    rest();
    finder.close();
    expect(doors[0]!.isClosed).toBe(true);
  });
});
