import { describe, expect, it } from 'vitest';
import { answering } from '../../../engine/advise/answering.ts';
import { conditionsMap, type ConditionsMap, type MapAsked } from '../../../engine/advise/conditions-map.ts';
import { finished } from '../../../engine/advise/finished.ts';
import { weighed_K } from '../../../engine/advise/margin-doubt.ts';
import { safeSpans } from '../../../engine/advise/safe-span.ts';
import type { SetOfAxle } from '../../../engine/advise/map-panels.ts';
import type { Search } from '../../../engine/advise/search.ts';
import { supposing } from '../../../engine/advise/supposing.ts';
import type { Scenario } from '../../../engine/scenario/schema.ts';
import { changed } from '../../support/stints.ts';
import { toyStint } from '../../support/toy-stint.ts';

const toy = toyStint({ 'brakes.front.duct.recovery': [0.7, 0.9], 'brakes.rear.duct.recovery': [0.4, 0.6] });
const asked: MapAsked = {
  across: { key: 'conditions.ambient_C', values: [5, 15, 25, 35] },
  down: { key: 'traffic.gap_m', values: [null, 30, 8] },
  sample: { draws: 4, seed: 1 },
};
const map = finished(conditionsMap(toy, asked));

/** What every cell of a map is told of, by its own conditions. */
function eachCell(
  { corners, across, down }: ConditionsMap,
  told: (
    cell: ConditionsMap['corners'][number]['rows'][number][number],
    scenario: Scenario,
    corner: number,
  ) => void,
): void {
  for (const [c, { rows }] of corners.entries())
    for (const [r, row] of rows.entries())
      for (const [i, cell] of row.entries())
        told(cell, changed({ [across.key]: across.values[i]!, [down.key]: down.values[r]! }, toy), c);
}

/** How many runs a search asks for. */
function runsOf<T>({ ground, steps }: Search<T>): number {
  const answer = answering(ground, supposing);
  let [step, runs] = [steps.next(), 0];
  while (!step.done) {
    runs += step.value.length;
    step = steps.next(step.value.map((ask) => [...answer(ask)]));
  }
  return runs;
}

describe('a map of conditions', () => {
  it('has both axles, a row a value down and a cell a value across', () => {
    expect(map.corners.map(({ axle, side }) => `${axle} ${side}`)).toEqual(['front both', 'rear both']);
    for (const { rows } of map.corners) expect(rows.map((row) => row.length)).toEqual([4, 4, 4]);
  });

  it('has the safe span of each cell, in whole percent', () => {
    eachCell(map, ({ span_pct }, scenario, corner) => {
      const { span_pct: fine } = finished(safeSpans(scenario))[corner]!;
      const whole = fine && ([Math.max(0, Math.ceil(fine[0] - 0.05)), Math.floor(fine[1] + 0.05)] as const);
      expect(span_pct).toEqual(whole && whole[0] <= whole[1] ? whole : null);
    });
  });

  it('has the best blanking of each cell: no neighbour has a larger weighed margin', () => {
    eachCell(map, ({ best, span_pct }, scenario, corner) => {
      const { axle, doubt } = map.corners[corner]!;
      const answer = answering({ scenario });
      const weighedAt = (blanking_pct: number): number => {
        const [outcome] = [...answer({ at: [{ axle, blanking_pct }] })];
        return weighed_K(outcome!.verdict, doubt);
      };
      const at = best!.blanking_pct;
      expect(best!.weighed_K).toBeCloseTo(weighedAt(at), 9);
      const [low, high] = [span_pct?.[0] ?? 0, Math.min(85, span_pct?.[1] ?? 85)];
      for (const near of [at - 1, at + 1])
        if (near >= low && near <= high) expect(weighedAt(near)).toBeLessThanOrEqual(best!.weighed_K + 1e-9);
    });
  });

  const setOf = (shares: number[], right_by = 0): SetOfAxle['panels'] =>
    [0, ...shares].map((blanking_pct, i) => ({
      letter: i === 0 ? '' : 'ABCDE'[i - 1]!,
      blanking_pct,
      sides_pct: right_by && i > 0 ? { left: blanking_pct, right: blanking_pct + right_by } : null,
      step_K: 0,
    }));
  const uneven = changed(
    {
      'brakes.front.window.bite_C': 330,
      'sides.front_right.duct.recovery': 0.7,
      'sides.front_left.duct.leak_cm2': 12,
    },
    toy,
  );
  it.each<[string, Scenario, number[], number]>([
    ['few panels', toy, [40, 60], 0],
    ['many', toy, [25, 35, 45, 50, 55, 60, 65, 70, 90], 0],
    ['left and right that differ', uneven, [25, 40, 55, 70], 5],
  ])(
    'names in each cell the panel that all of them tried one by one show to be the best: %s',
    (_, scenario, shares, right_by) => {
      const sets = [
        { axle: 'front', panels: setOf(shares, right_by) },
        { axle: 'rear', panels: setOf(shares) },
      ] as const;
      const found = finished(conditionsMap(scenario, { ...asked, sets }));
      const fits = new Set<number | null>();
      for (const { axle, panels } of sets) {
        const corners = found.corners.filter((corner) => corner.axle === axle);
        const seen = (r: number, i: number): (readonly [inside: boolean, weighed: number])[] => {
          const changes = {
            [asked.across.key]: asked.across.values[i]!,
            [asked.down.key]: asked.down.values[r]!,
          };
          const answer = answering({ scenario: changed(changes, scenario) });
          return panels.map(({ blanking_pct, sides_pct }) => {
            const all = corners.map(({ side, doubt }) => {
              const [outcome] = [
                ...answer({ at: [{ axle, side, blanking_pct: sides_pct?.[side] ?? blanking_pct }] }),
              ];
              return { isIn: outcome!.verdict.status === 'in', K: weighed_K(outcome!.verdict, doubt) };
            });
            return [all.every(({ isIn }) => isIn), Math.min(...all.map(({ K }) => K))] as const;
          });
        };
        for (const [r, row] of corners[0]!.rows.entries())
          for (const [i] of row.entries()) {
            const inside = seen(r, i).map(([isIn, K]) => (isIn ? K : -Infinity));
            const most_K = Math.max(...inside);
            const best = most_K === -Infinity ? null : inside.indexOf(most_K);
            for (const { rows } of corners) expect(rows[r]![i]!.fit).toBe(best);
            fits.add(best);
          }
      }
      expect(fits.size).toBeGreaterThan(2);
    },
  );

  it('needs few runs more for the panels of a set', () => {
    const sets = (['front', 'rear'] as const).map((axle) => ({ axle, panels: setOf([40, 55, 70, 80]) }));
    const more = runsOf(conditionsMap(toy, { ...asked, sets })) - runsOf(conditionsMap(toy, asked));
    expect(more).toBeGreaterThan(0);
    expect(more / (2 * 4 * 3)).toBeLessThan(2.5);
  });

  it('needs few runs a cell: each begins where its neighbour ended', () => {
    const across = { ...asked.across, values: Array.from({ length: 12 }, (_, i) => 2 + 3 * i) };
    const runs = runsOf(conditionsMap(toy, { ...asked, across })) - asked.sample.draws - 1;
    expect(runs / (2 * 12 * 3)).toBeLessThan(8);
  });

  it('says why where nothing is judged, and where no blanking holds', () => {
    const rest = { ...asked, across: { key: 'brakes.front.window.from_lap', values: [2, 40] } };
    const [front] = finished(conditionsMap(toy, rest)).corners;
    expect(front!.rows[0]![1]).toEqual({ span_pct: null, best: null, why: 'not judged', fit: null });
    const limits = { ...asked, across: { key: 'brakes.front.window.face_peak_C', values: [420, 1200] } };
    const [narrow] = finished(conditionsMap(toy, limits)).corners;
    expect(narrow!.rows[0]![0]).toMatchObject({
      span_pct: null,
      why: expect.stringMatching(/hot when open|swing/),
    });
  });
});
