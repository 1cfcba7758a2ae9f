import { describe, expect, it } from 'vitest';
import { shippedStint } from '../../../engine/scenario/library.ts';
import type { Phase } from '../../../engine/scenario/schema.ts';
import { restartsOf, type Driven } from '../../../engine/stint/restarts.ts';
import type { LapKind, StintResult, Stop } from '../../../engine/stint/result.ts';
import { celsius } from '../../../engine/units.ts';
import { changed, corner, driven, withPhases } from '../../support/stints.ts';

const window = { bite_K: 670, facePeak_K: 920, bulk_K: 830, run_K: null };
const stint = (...kinds: (LapKind | 'stand')[]): Driven[] => {
  let lap = 0;
  return kinds.map((kind) => (kind === 'stand' ? { kind } : { kind, lap: ++lap }));
};
const stop = (lap: number, startFace_K: number, hard = true): Stop => ({
  lap,
  place: `turn ${startFace_K}`,
  distance_m: 0,
  start_s: 0,
  end_s: 1,
  hard,
  startFace_K,
  peakFace_K: startFace_K + 100,
  largestDifference_K: 150,
  pedal: { start: 1, lowest: 1, highest: 1 },
});
const first = (stops: Stop[], ...kinds: (LapKind | 'stand')[]) =>
  restartsOf(stint(...kinds), stops, window)[0]!;

// What counts as warm: common practice, no source.
describe('the discs are warm', () => {
  it('from the first hard stop at bite after which none starts more than 40 K under it', () => {
    const stops = [stop(1, 500), stop(1, 600, false), stop(2, 669), stop(2, 670), stop(2, 630)];
    expect(first(stops, 'push', 'push')).toMatchObject({
      firstStop_K: 500,
      underBite_K: 170,
      brakesToWarm: 3,
      lapsToWarm: 1,
      warmLap: 2,
      warmPlace: 'turn 670',
    });
  });

  it('not yet at a hard stop at bite when a later one starts more than 40 K under it', () => {
    const stops = [stop(1, 680), stop(1, 629), stop(2, 640), stop(2, 675)];
    expect(first(stops, 'push', 'push')).toMatchObject({ underBite_K: 0, brakesToWarm: 3, warmLap: 2 });
  });

  it('never, when no hard stop reaches bite before the next slow lap', () => {
    const stops = [stop(1, 600), stop(2, 660), stop(4, 700)];
    expect(first(stops, 'push', 'push', 'safety', 'push')).toMatchObject({
      brakesToWarm: null,
      lapsToWarm: null,
      warmLap: null,
      warmPlace: null,
    });
  });

  it('at once, when the first stop of all is hard and at bite', () => {
    expect(first([stop(1, 671)], 'push')).toMatchObject({ brakesToWarm: 0, lapsToWarm: 0, underBite_K: 0 });
  });

  it('whatever a slow lap does after the stretch', () => {
    const stops = [stop(1, 680), stop(2, 400), stop(3, 300)];
    expect(first(stops, 'push', 'in', 'stand').brakesToWarm).toBe(0);
  });
});

describe('a restart', () => {
  const every = (kinds: (LapKind | 'stand')[]) => {
    const laps = stint(...kinds);
    const stops = laps.flatMap((passage) => (passage.kind === 'stand' ? [] : [stop(passage.lap, 500)]));
    return restartsOf(laps, stops, window).map(({ lap, after }) => `${lap} ${after}`);
  };

  it.each<[string, (LapKind | 'stand')[], string[]]>([
    ['is the start', ['out', 'push', 'in', 'stand'], ['1 start']],
    ['is the start though the car stood before it', ['stand', 'push'], ['1 start']],
    ['comes after a safety car', ['push', 'safety', 'safety', 'push'], ['1 start', '4 safety car']],
    ['comes after a stop', ['push', 'stand', 'push'], ['1 start', '2 stop']],
    ['comes after an in-lap without a stop', ['push', 'in', 'out', 'push'], ['1 start', '3 stop']],
    ['is named after the last slow thing', ['push', 'stand', 'safety', 'push'], ['1 start', '3 safety car']],
    ['is not each of two out-laps', ['out', 'out', 'push'], ['1 start']],
    ['comes after a safety car at the very start', ['safety', 'push'], ['2 safety car']],
  ])('%s', (_, kinds, expected) => {
    expect(every(kinds)).toEqual(expected);
  });

  it('is left out without a hard stop', () => {
    expect(restartsOf(stint('out', 'push'), [stop(1, 500, false)], window)).toEqual([]);
  });
});

/** The brakings of a stretch of laps straight from the columns: on above 2 kW, hard by the window's definition. */
function brakingsIn({ clock, corners, laps }: StintResult, from: number, to: number) {
  const { face_K } = corners[0]!.columns!;
  const top = Math.max(...laps.filter(({ kind }) => kind === 'push').map(topSpeedOn(clock)));
  const found: { lap: number; face_K: number; hard: boolean }[] = [];
  for (const { lap, firstSample, lastSample } of laps.slice(from - 1, to)) {
    for (let i = firstSample + 1; i <= lastSample; i++) {
      if (!(clock.brakePower_W[i]! > 2000)) continue;
      const start = i - 1;
      while (i < lastSample && clock.brakePower_W[i + 1]! > 2000) i++;
      const [v0, v1] = [clock.speed_mps[start]!, clock.speed_mps[i]!];
      const hard = v0 > 120 / 3.6 && (v0 ** 2 - v1 ** 2) / top ** 2 >= 0.3;
      found.push({ lap, face_K: face_K[start]!, hard });
    }
  }
  return found;
}

const topSpeedOn =
  (clock: StintResult['clock']) =>
  ({ firstSample, lastSample }: { firstSample: number; lastSample: number }): number =>
    Math.max(...clock.speed_mps.subarray(firstSample + 1, lastSample + 1));

describe('the shipped restart', () => {
  const result = driven(shippedStint('restart'));
  const front = corner(result, 'front');
  const [start, restart] = front.restarts;

  it('tells the start and the restart after the safety car', () => {
    expect(front.restarts.map(({ lap, after }) => [lap, after])).toEqual([
      [1, 'start'],
      [14, 'safety car'],
    ]);
  });

  it.each([
    ['start', 0, 1, 10],
    ['restart', 1, 14, 21],
  ] as const)('agrees with the columns at its %s', (_, which, from, to) => {
    const told = front.restarts[which]!;
    const { bite_K } = front.window;
    const brakings = brakingsIn(result, from, to);
    const hard = brakings.filter((one) => one.hard);
    expect(told.firstStop_K).toBeCloseTo(hard[0]!.face_K, 9);
    expect(told.underBite_K).toBeCloseTo(bite_K - hard[0]!.face_K, 9);
    let warm = brakings.length;
    for (
      let i = brakings.length - 1;
      i >= 0 && !(brakings[i]!.hard && brakings[i]!.face_K < bite_K - 40);
      i--
    )
      if (brakings[i]!.hard && brakings[i]!.face_K >= bite_K) warm = i;
    expect(told.brakesToWarm).toBe(warm);
    expect(told.warmLap).toBe(brakings[warm]!.lap);
    expect(told.lapsToWarm).toBe(brakings[warm]!.lap - from);
  });

  it('is colder at the restart than the trade would like: 115 to 230 °C (common practice, no source)', () => {
    expect(celsius(restart!.firstStop_K)).toBeGreaterThan(115);
    expect(celsius(restart!.firstStop_K)).toBeLessThan(230);
  });

  it('is colder still from ambient at its start', () => {
    expect(start!.firstStop_K).toBeLessThan(restart!.firstStop_K);
  });
});

describe('what comes before a restart decides how cold it is', () => {
  const phases = (slow: number): Phase[] => [
    { kind: 'out', laps: 1 },
    { kind: 'push', laps: 8 },
    { kind: 'safety', laps: slow },
    { kind: 'push', laps: 6 },
  ];
  const after = (slow: number) => corner(driven(withPhases(phases(slow), 15 + slow)), 'front').restarts[1]!;

  it('each slow lap makes it colder, and longer to warm', () => {
    const [one, three] = [after(1), after(3)];
    expect(three.firstStop_K).toBeLessThan(one.firstStop_K - 50);
    expect(three.brakesToWarm!).toBeGreaterThan(one.brakesToWarm!);
  });

  it('a stop between laps is a restart as well, and a stint set off hot starts at bite', () => {
    const halves: Phase[] = [
      { kind: 'push', laps: 8 },
      { kind: 'stand', duration_s: 300, brake_held: false },
      { kind: 'push', laps: 6 },
    ];
    const hot = changed({ 'initial.front.disc_C': 500, 'initial.front.pad_C': 400 });
    const { restarts } = corner(driven(withPhases(halves, 14, hot)), 'front');
    expect(restarts.map(({ lap, after: what }) => [lap, what])).toEqual([
      [1, 'start'],
      [9, 'stop'],
    ]);
    expect(restarts[0]!.underBite_K).toBe(0);
    expect(restarts[1]!.underBite_K).toBeGreaterThan(0);
  });
});
