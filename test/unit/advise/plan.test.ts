import { describe, expect, it } from 'vitest';
import { finished } from '../../../engine/advise/finished.ts';
import { planFor, type Plan } from '../../../engine/advise/plan.ts';
import { withCar } from '../../../engine/scenario/library.ts';
import { compile } from '../../../engine/stint/compile.ts';
import { run } from '../../../engine/stint/run.ts';
import { smallEvent } from '../../support/events.ts';
import { changed, corner } from '../../support/stints.ts';
import { toyStint } from '../../support/toy-stint.ts';

const toy = toyStint({ 'brakes.front.duct.recovery': [0.7, 0.9], 'brakes.rear.duct.recovery': [0.4, 0.6] });
const plan = finished(planFor(toy, smallEvent));

describe('the plan of an event', () => {
  it('has a set for each axle, of steps of 5 % between the least and the most', () => {
    expect(plan.axles.map(({ axle }) => axle)).toEqual(['front', 'rear']);
    for (const { panels } of plan.axles) {
      expect(panels).toHaveLength(3);
      for (const { blanking_pct } of panels.slice(1)) {
        expect(blanking_pct % 5).toBe(0);
        expect(blanking_pct).toBeGreaterThanOrEqual(40);
        expect(blanking_pct).toBeLessThanOrEqual(80);
      }
    }
  });

  it('tells of each day and panel what a plain run gives', () => {
    for (const { axle, panels, days } of plan.axles)
      for (const { condition, fitted } of days)
        for (const [i, { blanking_pct }] of panels.entries()) {
          const { changes } = plan.conditions[condition]!;
          const stint = changed({ ...changes, [`blanking_pct.${axle}`]: blanking_pct }, toy);
          const { verdict } = corner(run(compile(stint), 'summary'), axle);
          const { status, hotMargin_K, coldMargin_K } = fitted[i]!;
          expect({ status, hotMargin_K, coldMargin_K }).toEqual({
            status: verdict.status,
            hotMargin_K: verdict.hotMargin_K,
            coldMargin_K: verdict.coldMargin_K,
          });
        }
  });

  it('is the same to the byte when it is made again', () => {
    const again: Plan = finished(planFor(toy, smallEvent));
    expect(JSON.stringify(again)).toBe(JSON.stringify(plan));
  });

  it('does not depend on how the mouths are blanked now, but for the doubt that weighs', () => {
    const sure = toyStint({});
    const other = changed({ 'blanking_pct.front': 5, 'blanking_pct.rear': 95 }, sure);
    expect(finished(planFor(other, smallEvent))).toEqual(finished(planFor(sure, smallEvent)));
  });

  it('leaves an axle without a duct alone and says so', () => {
    const { axles, withoutDuct } = finished(planFor(withCar(toy, 'light'), smallEvent));
    expect(axles.map(({ axle }) => axle)).toEqual(['front']);
    expect(withoutDuct).toEqual(['rear']);
  });
});
