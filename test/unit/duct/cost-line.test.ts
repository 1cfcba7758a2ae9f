import { describe, expect, it } from 'vitest';
import { costLine } from '../../../engine/report/cost-line.ts';
import { summarise } from '../../../engine/report/summary.ts';
import { shippedStint } from '../../../engine/scenario/library.ts';
import { compile } from '../../../engine/stint/compile.ts';
import { run } from '../../../engine/stint/run.ts';

const { axles } = summarise(run(compile(shippedStint('club-evening')), 'summary'));

describe('the cost of cooling air in a report', () => {
  it('is told of both corners together where they are alike', () => {
    const row = axles.front.air.find(({ speed_kmh }) => speed_kmh === 200)!;
    const [line] = costLine('front', axles.front);
    expect(line).toContain(`at most ${(2 * row.drag_N).toFixed(0)} N`);
    expect(line).toContain('both corners together');
    expect(row.dragPower_kW).toBeCloseTo((row.drag_N * 200) / 3.6 / 1000, 9);
  });

  it('is that of one corner where sides differ', () => {
    const [line] = costLine('front left', { ...axles.front, side: 'left' });
    expect(line).toMatch(/of top speed$/);
  });

  it('is not told without a duct', () => {
    expect(axles.rear.ductCost).toBeNull();
    expect(costLine('rear', axles.rear)).toEqual([]);
  });
});
