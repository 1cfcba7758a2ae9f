import { describe, expect, it } from 'vitest';
import type {
  BlankingMap,
  CornerSensitivity,
  Findings,
  Question,
  SafeSpan,
  Scenario,
  Sought,
  Spread,
} from '../../../engine/index.ts';
import { defaultScenario } from '../../../engine/scenario/library.ts';
import { Adviser } from '../../../web/state/adviser.svelte.ts';
import type { Finder, Found, Watch } from '../../../web/state/finder.ts';
import { changed } from '../../support/stints.ts';

interface Asked {
  question: Question;
  watch: Watch;
  answer: (found: Found<Sought>) => void;
}

/** Under the test's hand: what was looked for, the way to answer, and how many workers may be busy. */
class FakeFinder implements Finder {
  asked: Asked[] = [];
  most: number | undefined;
  isClosed = false;
  find<What extends Sought>(question: Question<What>, watch: Watch): Promise<Found<What>> {
    return new Promise((resolve) => {
      this.asked.push({ question, watch, answer: resolve as (found: Found<Sought>) => void });
    });
  }
  limit(most?: number): void {
    this.most = most;
  }
  close(): void {
    this.isClosed = true;
  }
  get sought(): Sought[] {
    return this.asked.map(({ question }) => question.sought);
  }
}

const settledDown = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));

function bench() {
  const finder = new FakeFinder();
  let alarms: { after_ms: number; ring: () => void; isOff: boolean }[] = [];
  const adviser = new Adviser(finder, (after_ms, ring) => {
    const alarm = { after_ms, ring, isOff: false };
    alarms.push(alarm);
    return () => void (alarm.isOff = true);
  });
  /** Lets so much time pass. */
  const pass = (ms: number): void => {
    const due = alarms.filter(({ after_ms }) => after_ms <= ms);
    alarms = alarms.filter(({ after_ms }) => after_ms > ms);
    for (const alarm of due) if (!alarm.isOff) alarm.ring();
  };
  const found = async <What extends Sought>(what: What, value: Findings[What]): Promise<void> => {
    finder.asked
      .findLast(({ question }) => question.sought === what)!
      .answer({ kind: 'found', found: value });
    await settledDown();
  };
  const failed = async (message: string): Promise<void> => {
    finder.asked.at(-1)!.answer({ kind: 'failure', message });
    await settledDown();
  };
  const follow = (scenario: Scenario, isBusy = false): void => {
    adviser.follow(scenario, isBusy);
    if (!isBusy) pass(300);
  };
  return { finder, adviser, pass, found, failed, follow };
}

const spans = [{ axle: 'front', side: 'both', span_pct: [54, 61] }] as SafeSpan[];
const spread = { draws: 100, seed: 1, unknowns: 3, corners: [] } as Spread;
const maps = [{ axle: 'front', side: 'both', rows: [] }] as unknown as BlankingMap[];
const corners = [{ axle: 'front', side: 'both', measureFirst: null }] as unknown as CornerSensitivity[];
const warmer = (): Scenario => changed({ 'conditions.ambient_C': 31 });
const dragged = (): Scenario => changed({ 'blanking_pct.front': 33, 'blanking_pct.rear': 10 });

describe('the adviser', () => {
  it('asks only when the page is idle and the hand has rested', () => {
    const { finder, adviser, pass } = bench();
    adviser.follow(defaultScenario(), true);
    pass(300);
    expect(finder.asked).toHaveLength(0);
    adviser.follow(defaultScenario(), false);
    expect(finder.asked).toHaveLength(0);
    pass(300);
    expect(finder.sought).toEqual(['spans']);
  });

  it('asks for the spans, then for the spread, what it proposes, and what matters most', async () => {
    const { finder, adviser, follow, found } = bench();
    follow(defaultScenario());
    await found('spans', spans);
    expect(finder.asked[1]!.question).toMatchObject({ sought: 'spread', sample: { draws: 100, seed: 1 } });
    expect(adviser.foundSpread(defaultScenario())).toBeNull();
    await found('spread', spread);
    expect(adviser.foundSpread(defaultScenario())).toEqual(spread);
    await found('weighed', spans);
    await found('sensitivity', corners);
    expect(adviser.foundSensitivity(defaultScenario())).toEqual(corners);
    follow(defaultScenario());
    expect(finder.sought).toEqual(['spans', 'spread', 'weighed', 'sensitivity']);
  });

  it('knows the spans of the scenario it asked for, and of no other', async () => {
    const { adviser, follow, found } = bench();
    follow(defaultScenario());
    expect(adviser.foundSpans(defaultScenario())).toBeNull();
    await found('spans', spans);
    expect(adviser.spansOf(defaultScenario())).toEqual(spans);
    expect(adviser.spansOf(warmer())).toBeNull();
  });

  it('keeps the spans while only the blanking moves, and does not look for them again', async () => {
    const { finder, adviser, follow, found } = bench();
    follow(defaultScenario());
    await found('spans', spans);
    expect(adviser.spansOf(dragged())).toEqual(spans);
    follow(dragged());
    expect(finder.sought).toEqual(['spans', 'spread', 'spread']);
    expect(finder.asked[2]!.question.scenario.blanking_pct.front).toBe(33);
  });

  it('asks anew when sides that have their own blanking move against each other', async () => {
    const { adviser, follow, found } = bench();
    const uneven = changed({ 'blanking_pct.front_left': 40, 'blanking_pct.front_right': 50 });
    follow(uneven);
    await found('spans', spans);
    expect(adviser.spansOf(changed({ 'blanking_pct.front_left': 50 }, uneven))).toBeNull();
  });

  it('leaves a search at once when its question is gone, and begins again when the hand rests', async () => {
    const { finder, adviser, follow, found } = bench();
    follow(defaultScenario());
    const { signal } = finder.asked[0]!.watch;
    expect(signal.aborted).toBe(false);
    follow(warmer(), true);
    expect(signal.aborted).toBe(true);
    await found('spans', spans);
    expect(adviser.spansOf(defaultScenario())).toBeNull();
    follow(warmer());
    expect(finder.asked.map(({ question }) => question.scenario.conditions.ambient_C)).toEqual([26, 31]);
  });

  it('passes on a failure, goes on to the next search, and tries again when something changes', async () => {
    const { finder, adviser, follow, failed } = bench();
    follow(defaultScenario());
    await failed('something broke');
    await failed('this too');
    expect(adviser.foundSpans(defaultScenario())).toBe('No safe span: something broke.');
    expect(adviser.foundSpread(defaultScenario())).toBe('Its doubt could not be computed: this too.');
    expect(finder.sought).toEqual(['spans', 'spread', 'sensitivity']);
    follow(warmer());
    expect(adviser.foundSpans(warmer())).toBeNull();
    expect(finder.sought.at(-1)).toBe('spans');
  });

  it('shuts its workers when it is closed', () => {
    const { finder, adviser, follow } = bench();
    follow(defaultScenario());
    adviser.close();
    expect(finder.asked[0]!.watch.signal.aborted).toBe(true);
    expect(finder.isClosed).toBe(true);
  });
});

describe('what is proposed', () => {
  const weighed = [
    { axle: 'front', side: 'both', span_pct: [54, 61], candidates: [] },
  ] as unknown as SafeSpan[];
  const doubted = (): Scenario => ({ ...defaultScenario(), doubt: {} });

  it('is by the margins until the draws are made, of these spans, and then by those', async () => {
    const { finder, adviser, follow, found } = bench();
    follow(defaultScenario());
    await found('spans', spans);
    await found('spread', spread);
    expect(finder.asked[2]!.question).toMatchObject({
      sought: 'weighed',
      sample: { draws: 100, seed: 1, spans },
    });
    expect(adviser.spansOf(defaultScenario())).toEqual(spans);
    expect(adviser.foundWeighed(defaultScenario())).toBeNull();
    await found('weighed', weighed);
    expect(adviser.spansOf(defaultScenario())).toEqual(weighed);
    expect(adviser.foundSpans(defaultScenario())).toEqual(weighed);
    expect(adviser.foundWeighed(defaultScenario())).toEqual(weighed);
  });

  it('stays while only the blanking moves, and goes with another day or another doubt', async () => {
    const { finder, adviser, follow, found } = bench();
    follow(defaultScenario());
    await found('spans', spans);
    await found('spread', spread);
    await found('weighed', weighed);
    await found('sensitivity', corners);
    follow(dragged());
    expect(adviser.spansOf(dragged())).toEqual(weighed);
    await found('spread', spread);
    expect(finder.sought.slice(4)).toEqual(['spread', 'sensitivity']);
    expect(adviser.spansOf(warmer())).toBeNull();
    expect(adviser.spansOf(doubted())).toEqual(spans);
  });

  it('that comes when the hand has moved on leaves no other draws out', async () => {
    const { finder, follow, found } = bench();
    follow(defaultScenario());
    await found('spans', spans);
    await found('spread', spread);
    follow(dragged());
    await found('weighed', weighed);
    expect(finder.sought.slice(3)).toEqual(['spread']);
    expect(finder.asked[3]!.question.scenario.blanking_pct.front).toBe(33);
  });

  it('is still looked for under a blanking that is dragged, and left with the day', async () => {
    const { finder, adviser, follow, found } = bench();
    follow(defaultScenario());
    await found('spans', spans);
    await found('spread', spread);
    adviser.follow(dragged(), true);
    const { signal } = finder.asked[2]!.watch;
    expect(signal.aborted).toBe(false);
    adviser.follow(warmer(), true);
    expect(signal.aborted).toBe(true);
  });

  it('stays by the margins where the draws cannot be made, and that is said', async () => {
    const { adviser, follow, found, failed } = bench();
    follow(defaultScenario());
    await found('spans', spans);
    await found('spread', spread);
    await failed('something broke');
    expect(adviser.foundSpans(defaultScenario())).toEqual(spans);
    expect(adviser.foundWeighed(defaultScenario())).toBe(
      'How sure that is could not be computed: something broke.',
    );
  });
});

describe('while the hand moves', () => {
  it('one worker may be busy, and all when it rests', () => {
    const { finder, adviser, pass } = bench();
    adviser.follow(defaultScenario(), true);
    expect(finder.most).toBe(1);
    adviser.follow(defaultScenario(), false);
    expect(finder.most).toBe(1);
    pass(300);
    expect(finder.most).toBeUndefined();
  });

  it('a search for spans goes on under a blanking that is dragged, for they do not depend on it', async () => {
    const { finder, adviser, follow, found, pass } = bench();
    follow(defaultScenario());
    adviser.follow(dragged(), true);
    expect(finder.asked[0]!.watch.signal.aborted).toBe(false);
    expect(finder.most).toBe(1);
    await found('spans', spans);
    expect(adviser.spansOf(dragged())).toEqual(spans);
    expect(finder.sought).toEqual(['spans']);
    adviser.follow(dragged(), false);
    pass(300);
    expect(finder.sought).toEqual(['spans', 'spread']);
  });

  it('draws are left, for they are of one blanking', async () => {
    const { finder, adviser, follow, found } = bench();
    follow(defaultScenario());
    await found('spans', spans);
    adviser.follow(dragged(), true);
    expect(finder.asked[1]!.watch.signal.aborted).toBe(true);
  });
});

describe('how far the draws are', () => {
  it('is told after a while and then now and then, and no more when they are done', async () => {
    const { finder, adviser, follow, found, pass } = bench();
    follow(defaultScenario());
    await found('spans', spans);
    const { progress } = finder.asked[1]!.watch;
    progress!(1, 101);
    progress!(20, 101);
    expect(adviser.drawn).toBeNull();
    pass(500);
    expect(adviser.drawn).toEqual({ done: 19, of: 100 });
    progress!(40, 101);
    expect(adviser.drawn).toEqual({ done: 19, of: 100 });
    pass(500);
    expect(adviser.drawn).toEqual({ done: 39, of: 100 });
    progress!(101, 101);
    await found('spread', spread);
    pass(500);
    expect(adviser.drawn).toBeNull();
  });

  it('is not told of draws that were left, nor of a search for spans', async () => {
    const { finder, adviser, follow, found, pass } = bench();
    follow(defaultScenario());
    finder.asked[0]!.watch.progress!(9, 10);
    pass(500);
    expect(adviser.drawn).toBeNull();
    await found('spans', spans);
    const { progress } = finder.asked[1]!.watch;
    progress!(50, 101);
    pass(500);
    adviser.follow(warmer(), true);
    expect(adviser.drawn).toBeNull();
    progress!(51, 101);
    pass(500);
    expect(adviser.drawn).toBeNull();
  });
});

describe('all blankings', () => {
  it('are looked for only while they are in view, after the spans and before the draws', async () => {
    const { finder, adviser, follow, found } = bench();
    follow(defaultScenario());
    const leave = adviser.viewBlankings();
    await found('spans', spans);
    expect(finder.sought).toEqual(['spans', 'blankings']);
    await found('blankings', maps);
    expect(adviser.foundBlankings(defaultScenario())).toEqual(maps);
    expect(finder.sought).toEqual(['spans', 'blankings', 'spread']);
    leave();
    follow(warmer());
    await found('spans', spans);
    expect(finder.sought.slice(3)).toEqual(['spans', 'spread']);
    expect(adviser.foundBlankings(warmer())).toBeNull();
  });

  it('come before draws that are under way, which are then begun anew', async () => {
    const { finder, adviser, follow, found } = bench();
    follow(defaultScenario());
    await found('spans', spans);
    adviser.viewBlankings();
    expect(finder.asked[1]!.watch.signal.aborted).toBe(true);
    expect(finder.sought).toEqual(['spans', 'spread', 'blankings']);
    await found('blankings', maps);
    expect(finder.sought.slice(3)).toEqual(['spread']);
  });

  it('are left when nobody looks at them any more', async () => {
    const { finder, adviser, follow, found } = bench();
    follow(defaultScenario());
    const leave = adviser.viewBlankings();
    await found('spans', spans);
    leave();
    expect(finder.asked[1]!.watch.signal.aborted).toBe(true);
    expect(finder.sought).toEqual(['spans', 'blankings', 'spread']);
  });

  it('stay while only the blanking moves, and go with another day', async () => {
    const { finder, adviser, follow, found } = bench();
    follow(defaultScenario());
    adviser.viewBlankings();
    await found('spans', spans);
    await found('blankings', maps);
    follow(dragged());
    expect(adviser.foundBlankings(dragged())).toEqual(maps);
    expect(finder.sought.slice(2)).toEqual(['spread', 'spread']);
    follow(warmer());
    expect(adviser.foundBlankings(warmer())).toBeNull();
  });

  it('that could not be run say why, and are tried again when they are looked at again', async () => {
    const { finder, adviser, follow, found, failed } = bench();
    follow(defaultScenario());
    const leave = adviser.viewBlankings();
    await found('spans', spans);
    await failed('something broke');
    expect(adviser.foundBlankings(defaultScenario())).toBe(
      'All blankings could not be run: something broke.',
    );
    leave();
    adviser.viewBlankings();
    expect(adviser.foundBlankings(defaultScenario())).toBeNull();
    expect(finder.sought.at(-1)).toBe('blankings');
  });
});
