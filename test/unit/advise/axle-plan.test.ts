import { describe, expect, it } from 'vitest';
import { axlePlan, type AxlePlan } from '../../../engine/advise/axle-plan.ts';
import { cellBorders, likelyConditions } from '../../../engine/advise/likely-conditions.ts';
import type { CornerTable, Fitted, Side } from '../../../engine/advise/panel-table.ts';
import type { Session } from '../../../engine/scenario/event-schema.ts';
import { sessionOf } from '../../support/events.ts';

const CANDIDATES = [0, 40, 50, 60, 70];
const LIMIT_K = 900;

/** A disc that runs 1 K hotter a degree and 2 K a percent; the window is 60 K wide. */
function fitted(ambient_C: number, pct: number, shift_K = 0): Fitted {
  const hottest_K = 760 + ambient_C + 2 * pct + shift_K;
  const hotMargin_K = LIMIT_K - hottest_K;
  const coldMargin_K = 60 - hotMargin_K;
  const status = hotMargin_K < 0 ? 'hot' : coldMargin_K < 0 ? 'cold' : 'in';
  return { status, hotMargin_K, coldMargin_K, weighed_K: Math.min(hotMargin_K, coldMargin_K), hottest_K };
}

function planOf(
  sessions: readonly Session[],
  sides: Partial<Record<Side, number>> = { both: 0 },
  panels = 3,
): AxlePlan {
  const conditions = likelyConditions(sessions);
  const borders_C = cellBorders(sessions);
  const tables = (Object.entries(sides) as [Side, number][]).map(([side, shift_K]): CornerTable => ({
    side,
    doubt: { axle: 'front', side, hot_K: 10, cold_K: 10 },
    rows: conditions.map(({ ambient_C, gap_m, isWet }) => {
      const by_K = shift_K + (gap_m === null ? 0 : 40) - (isWet ? 40 : 0);
      return CANDIDATES.map((pct) => fitted(ambient_C, pct, by_K));
    }),
  }));
  const set = { panels, least_pct: 40, most_pct: 70 };
  return axlePlan(
    { axle: 'front', sides: tables },
    { candidates: CANDIDATES, conditions, borders_C, sessions, set },
  );
}

describe('the plan of an axle', () => {
  it('letters the panels from the most open on, with an open mouth before them', () => {
    const { panels } = planOf([sessionOf()]);
    expect(panels.map(({ letter }) => letter)).toEqual(['', 'A', 'B', 'C']);
    const percents = panels.map(({ blanking_pct }) => blanking_pct);
    expect(percents).toEqual([...percents].sort((a, b) => a - b));
    for (const [i, { step_K }] of panels.entries())
      expect(step_K).toBeCloseTo(i === 0 ? 0 : 2 * (percents[i]! - percents[i - 1]!), 6);
  });

  it('says what no panel covers, how far it is out, and with which', () => {
    const { uncovered, covered } = planOf([sessionOf({ wet_pct: 100 })], { both: -80 });
    expect(uncovered.length).toBeGreaterThan(0);
    for (const { status, panel, coldMargin_K } of uncovered) {
      expect(status).toBe('cold');
      expect(panel).toBe(3);
      expect(coldMargin_K).toBeLessThan(0);
    }
    expect(covered).toBeLessThan(1);
  });

  it('adds up to the share it covers with what it does not', () => {
    const sessions = [sessionOf({ wet_pct: 30, traffic_pct: { low: 0, likely: 20, high: 40 } })];
    const plan = planOf(sessions, { both: 25 }, 2);
    const all = likelyConditions(sessions);
    const lost = plan.uncovered.reduce((sum, { condition }) => sum + all[condition]!.weight, 0);
    const missed = plan.rule.missed.reduce((sum, { condition }) => sum + all[condition]!.weight, 0);
    expect(plan.covered + lost).toBeCloseTo(1, 9);
    expect(plan.rule.covered + missed + lost).toBeCloseTo(1, 9);
  });

  it('starts one panel more closed where a stop is planned, unless that would be too hot', () => {
    const mild = { ambient_C: { low: 20, likely: 20, high: 20 } };
    const wide = planOf([sessionOf({ ...mild, stops: true })], { both: -20 });
    const [only] = wide.sessions[0]!.fits;
    expect(only!.start).toBe(only!.panel + 1);
    expect(only!.closerTooHot_K).toBeNull();
    const narrow = planOf([sessionOf({ ...mild, stops: true })], { both: 25 });
    const [held] = narrow.sessions[0]!.fits;
    expect(held!.start).toBe(held!.panel);
    expect(held!.closerTooHot_K).toBeGreaterThan(0);
  });

  it('starts with what the rule says where no stop is planned', () => {
    const { sessions } = planOf([sessionOf()], { both: -10 });
    expect(sessions[0]!.beforeStop).toBeNull();
    for (const { panel, start } of sessions[0]!.fits) expect(start).toBe(panel);
  });

  it('regrets nothing with the best of the set, and kelvin with every other', () => {
    for (const { fitted: all } of planOf([sessionOf()]).days) {
      expect(all.filter(({ isBest }) => isBest)).toHaveLength(1);
      for (const { isBest, regret_K } of all) expect(regret_K > 0).toBe(!isBest);
    }
  });

  it('tells a cold, a likely and a hot day of every kind of running', () => {
    const sessions = [sessionOf({ wet_pct: 20, traffic_pct: { low: 10, likely: 20, high: 30 } })];
    const conditions = likelyConditions(sessions);
    const days = planOf(sessions).days.map(({ condition }) => conditions[condition]!);
    for (const isWet of [false, true])
      for (const gap_m of [null, 20]) {
        const own = days.filter((day) => day.isWet === isWet && day.gap_m === gap_m);
        expect(own.map(({ ambient_C }) => ambient_C)).toEqual(
          [13.2, 19.1, 25].map((near) => expect.closeTo(near, -1)),
        );
      }
  });
});

describe('sides that differ', () => {
  it('get panels that run alike, one step apart at most', () => {
    const { panels } = planOf([sessionOf()], { left: 0, right: -20 });
    for (const { sides_pct, blanking_pct } of panels.slice(1)) {
      if (blanking_pct === 70) continue;
      expect(sides_pct).toEqual({ left: blanking_pct, right: blanking_pct + 10 });
    }
    const far = planOf([sessionOf()], { left: 0, right: -45 });
    for (const { sides_pct } of far.panels.slice(1))
      expect(Math.abs((sides_pct?.right ?? 0) - (sides_pct?.left ?? 0))).toBeLessThanOrEqual(10);
  });

  it('are covered only where both are in', () => {
    const narrow = planOf([sessionOf()], { left: 0, right: -130 });
    expect(narrow.covered).toBe(0);
    expect(narrow.uncovered.every(({ status }) => status !== 'in')).toBe(true);
  });

  it('leave both open where the axle is', () => {
    expect(planOf([sessionOf()], { left: 0, right: -20 }).panels[0]).toMatchObject({
      blanking_pct: 0,
      sides_pct: null,
    });
  });
});
