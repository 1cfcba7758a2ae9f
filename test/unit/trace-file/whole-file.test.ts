import { describe, expect, it } from 'vitest';
import { readTrace } from '../../../engine/trace-file/read-trace.ts';
import { typedTimes } from '../../../web/pages/stint/import/lap-times.ts';

const kmh = (i: number): number => 180 + 40 * Math.sin(i / 9);

/** Four laps of 98.4 s with a row every 0.2 s, and 50 s without rows in each of two of them. */
const holes = (): string => {
  const times_s = Array.from({ length: 1969 }, (_, i) => i / 5).filter(
    (t) => !(t > 120 && t < 170) && !(t > 220 && t < 270),
  );
  return ['Time (s),Speed (km/h)', ...times_s.map((t) => `${t.toFixed(1)},${kmh(t * 5).toFixed(1)}`)].join(
    '\n',
  );
};

describe('the whole file', () => {
  it('lasts from its first row to its last, whatever is missing between', () => {
    const { understood } = readTrace(holes());
    expect(understood?.duration_s).toBeCloseTo(393.6, 9);
  });

  it('takes the true starts of all its laps', () => {
    const { understood } = readTrace(holes());
    const typed = typedTimes('0, 98.4, 196.8, 295.2', understood!.duration_s);
    expect(typed).toEqual({ times_s: [0, 98.4, 196.8, 295.2], errors: [] });
    const cut = readTrace(holes(), { lapsBy: 'times', lapStarts_s: typed.times_s }).understood!;
    expect(cut.laps.map(({ start_s }) => start_s)).toEqual([0, 98.4, 196.8, 295.2]);
    expect(cut.duration_s).toBeCloseTo(393.6, 9);
  });

  it('lasts as long as distance and speed make it where no time is logged', () => {
    const rows = Array.from({ length: 401 }, (_, i) => `${i * 10},${kmh(i).toFixed(1)}`);
    const { understood } = readTrace(['Distance (m),Speed (km/h)', ...rows].join('\n'));
    const lap = understood!.laps[0]!;
    expect(understood!.duration_s).toBeCloseTo(lap.start_s + lap.duration_s, 9);
    expect(understood!.duration_s).toBeGreaterThan(70);
  });

  it('has no length where no lap can be sought', () => {
    const rows = Array.from({ length: 60 }, (_, i) => `${i},${i % 5}`);
    const { understood } = readTrace(['Time (s),Gear', ...rows].join('\n'));
    expect(understood).toMatchObject({ duration_s: NaN });
  });
});

describe('a unit that is unknown', () => {
  const text = ['Time (s),Speed (rpm)', ...Array.from({ length: 200 }, (_, i) => `${i / 2},${kmh(i)}`)].join(
    '\n',
  );

  it('is left open for a person to choose, the likely one too', () => {
    const { understood, problems } = readTrace(text);
    expect(problems).toHaveLength(1);
    expect(understood?.columns.map(({ unit }) => unit)).toEqual(['s', '']);
    expect(understood?.columns[1]?.unitReason).toBe('');
    const chosen = readTrace(text, { units: { 1: 'km/h' } });
    expect([chosen.problems, chosen.understood?.columns[1]?.unit]).toEqual([[], 'km/h']);
  });
});
