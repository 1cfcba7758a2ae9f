import { describe, expect, it } from 'vitest';
import { cuttable } from '../../../engine/advise/cuttable.ts';
import { finished } from '../../../engine/advise/finished.ts';
import type { Fitted } from '../../../engine/advise/panel-table.ts';
import { planFor } from '../../../engine/advise/plan.ts';
import { planRecord } from '../../../engine/report/plan-record.ts';
import { leastCovered } from '../../../engine/duct/blank.ts';
import { blankOf, mouthOutline } from '../../../engine/scenario/mouth.ts';
import { smallEvent } from '../../support/events.ts';
import { changed } from '../../support/stints.ts';
import { toyStint } from '../../support/toy-stint.ts';

const CANDIDATES = [0, 5, 20, 40, 60, 80];
const row = CANDIDATES.map((pct): Fitted => {
  return { status: 'in', hotMargin_K: pct, coldMargin_K: pct, weighed_K: pct, hottest_K: pct };
});
const tables = {
  axle: 'front' as const,
  sides: [
    {
      side: 'both' as const,
      doubt: { axle: 'front' as const, side: 'both' as const, hot_K: 1, cold_K: 1 },
      rows: [row],
    },
  ],
};

const perforated = changed(
  { 'blanking_pct.front': 85, 'brakes.front.duct.blank': 'perforated' },
  toyStint({}),
);
const { duct } = perforated.brakes.front;
const least_pct = leastCovered(mouthOutline(duct!), blankOf(duct!));

describe('what can be cut', () => {
  it('is every step where a straight edge covers', () => {
    expect(cuttable(toyStint({}), tables, CANDIDATES)).toEqual({
      tables,
      candidates: CANDIDATES,
      least_pct: 0,
    });
  });

  it('is an open mouth and what leaves a rim and bars, with the rows that go with it', () => {
    const { candidates, tables: kept } = cuttable(perforated, tables, CANDIDATES);
    expect(least_pct).toBeGreaterThan(20);
    expect(candidates).toEqual(CANDIDATES.filter((pct) => pct === 0 || pct >= least_pct));
    expect(kept.sides[0]!.rows[0]!.map(({ hottest_K }) => hottest_K)).toEqual(candidates);
  });

  it('is all that a plan brings, however many were asked for', () => {
    const { axles, uncut } = finished(planFor(perforated, smallEvent));
    const [front] = axles;
    expect(uncut).toEqual([{ axle: 'front', least_pct, isShort: false }]);
    for (const { blanking_pct } of front!.panels.slice(1))
      expect(blanking_pct).toBeGreaterThanOrEqual(least_pct);
    const few = { ...smallEvent, set: { panels: 5, least_pct: 25, most_pct: 50 } };
    const plan = finished(planFor(perforated, few));
    const [scarce] = plan.axles;
    const steps = [25, 30, 35, 40, 45, 50].filter((pct) => pct >= least_pct);
    expect(scarce!.panels).toHaveLength(1 + Math.min(5, steps.length));
    expect(plan.uncut).toEqual([{ axle: 'front', least_pct, isShort: steps.length < 5 }]);
    expect(planRecord('', plan, []).notices[0]).toMatch(/^front: its blank covers at least \d+ %.*smaller/);
  });
});
