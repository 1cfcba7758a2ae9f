import { describe, expect, it } from 'vitest';
import type { MeasureFirstRecord, SpreadRecord } from '../../../engine/report/doubt-record.ts';
import { doubtLines } from '../../../engine/report/doubt-lines.ts';
import type { StintRecord } from '../../../engine/report/summary.ts';
import { stint } from '../../support/terminal.ts';

describe('--spread with --json', () => {
  const { stdout, status } = stint(['--json', '--spread', '6', '--seed', '2', '--set', 'stint.laps=8']);
  const record = JSON.parse(stdout) as StintRecord & {
    spread: SpreadRecord;
    measureFirst: MeasureFirstRecord[];
  };

  it('adds the draws of every corner', () => {
    expect(status).toBe(0);
    const { spread } = record;
    expect(spread).toMatchObject({ draws: 6, seed: 2, distribution: 'triangular', calibrated: false });
    expect(spread.unknowns).toBeGreaterThan(50);
    expect(spread.corners.map(({ axle }) => axle)).toEqual(['front', 'rear']);
    for (const corner of spread.corners) {
      expect(corner.draws).toHaveLength(6);
      expect(Object.values(corner.count).reduce((sum, n) => sum + n, 0)).toBe(6);
      expect(corner.laps).toHaveLength(8);
      expect(corner.hottest_C.p95).toBeGreaterThan(corner.hottest_C.p5 + 10);
      expect(corner.laps[5]!.coldestStop_C!.p50).toBeLessThan(corner.laps[5]!.facePeak_C.p50);
    }
  });

  it('lies around the run that is printed beside it', () => {
    const { facePeak_C } = record.spread.corners[0]!.laps[5]!;
    const likely = record.axles.front.laps[5]!.faceMax_C;
    expect(likely).toBeGreaterThan(facePeak_C.p5 - 30);
    expect(likely).toBeLessThan(facePeak_C.p95 + 30);
  });

  it('proposes what most of the same draws keep in but for chance, and counts the others', () => {
    const { candidates, proposal } = record.axles.rear.span!;
    expect(candidates.length).toBeGreaterThan(1);
    const many = candidates.map(({ count }) => count!.in);
    expect(Math.max(...many) - proposal!.count!.in).toBeLessThanOrEqual(Math.sqrt(6));
    expect(candidates).toContainEqual(proposal);
    expect(record.axles.rear.span).not.toHaveProperty('drawn');
  });

  it('ranks what to measure first, with key, name, range and reason', () => {
    const [front] = record.measureFirst;
    const [top] = front!.ranked;
    expect(front!.first).toEqual({ name: top!.name, moves_K: top!.moves_K });
    expect(top!.low).toBeLessThan(top!.high);
    expect(top!.reason).not.toBe('');
    expect(front!.ranked.at(-1)!.moves_K).toBeLessThanOrEqual(top!.moves_K);
  });
});

describe('what cannot be', () => {
  it.each([
    [['--spread=none'], "spread.draws: expected a whole number, 1 to 10000, got 'none'"],
    [['--spread', '0'], 'spread.draws: expected a whole number, 1 to 10000, got 0'],
    [['--spread', '--seed', '1.5'], 'spread.seed: expected a whole number, 0 to 2147483647, got 1.5'],
    [['--seed', '3'], 'command line: --seed goes with --spread'],
    [['--spread', '9', '--csv', 'x.csv'], 'command line: either --spread or --csv, not both'],
  ])('%j is refused with its reason', (args, line) => {
    const { status, stdout, stderr } = stint(args);
    expect([status, stdout, stderr.split('\n')[0]]).toEqual([2, '', line]);
  });
});

describe('the lines under the table', () => {
  const hottest_C = { p5: 641.2, p10: 645, p25: 655, p50: 668, p75: 680, p90: 692, p95: 701.8 };
  const count = { in: 64, hot: 31, cold: 5, both: 0, notJudged: 0 };
  const front = { axle: 'front', side: 'both', count, hottest_C } as SpreadRecord['corners'][number];
  const spread = {
    draws: 100,
    seed: 1,
    unknowns: 61,
    calibrated: false,
    corners: [front],
  } as unknown as SpreadRecord;
  const measure = [
    { axle: 'front', side: 'both', first: { name: 'inlet recovery', moves_K: 28.6 } },
  ] as MeasureFirstRecord[];

  it('count, tell the range and name what to measure first', () => {
    expect(doubtLines(spread, measure)).toEqual([
      'front: 64 of 100 runs stay in, 31 too hot, 5 too cold; hottest lap 641 to 702 °C (5 to 95 %); measure first: inlet recovery (±29 K)',
      '100 runs with 61 unsure values varied, seed 1; not calibrated',
    ]);
  });

  it('name a side, and say nothing of what does not matter', () => {
    const left = { ...front, side: 'left' as const, count: { ...count, hot: 30, both: 1 } };
    const calm = [{ ...measure[0]!, side: 'left' as const, first: null }];
    expect(doubtLines({ ...spread, calibrated: true, corners: [left] }, calm)).toEqual([
      'front left: 64 of 100 runs stay in, 30 too hot, 5 too cold, 1 both; hottest lap 641 to 702 °C (5 to 95 %)',
      '100 runs with 61 unsure values varied, seed 1',
    ]);
  });

  it('say so where nothing is judged', () => {
    const none = { ...front, count: { in: 0, hot: 0, cold: 0, both: 0, notJudged: 100 } };
    expect(doubtLines({ ...spread, corners: [none] }, [])[0]).toMatch(
      /^front: no run is judged; hottest lap/,
    );
  });
});
