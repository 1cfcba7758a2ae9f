import { describe, expect, it } from 'vitest';
import { defaultScenario } from '../../../engine/scenario/library.ts';
import { override } from '../../../engine/scenario/override.ts';
import { checkScenario } from '../../../engine/scenario/parse.ts';
import {
  blankingKey,
  ductAt,
  equalised,
  isSplit,
  shareAt,
  sideInHand,
  splitChanges,
} from '../../../web/state/sides.ts';
import type { Changes, Scenario } from '../../../engine/index.ts';

const chosen = { front: 'right', rear: 'left' } as const;

function changed(scenario: Scenario, changes: Changes): Scenario {
  const parsed = override(scenario, changes);
  if (!parsed.ok) throw new Error(`changes: ${JSON.stringify(parsed.problems)}`);
  return parsed.scenario;
}

const equal = defaultScenario();
const parted = changed(equal, splitChanges(equal, 'front'));

describe('left and right of an axle', () => {
  it('are equal in the default stint, and the lever moves both', () => {
    expect([isSplit(equal, 'front'), sideInHand(equal, 'front', chosen)]).toEqual([false, null]);
    expect(blankingKey('front', null)).toBe('blanking_pct.front');
  });

  it('start where they stood when they are parted; the other axle stays whole', () => {
    expect([shareAt(parted, 'front', 'left'), shareAt(parted, 'front', 'right')]).toEqual([70, 70]);
    expect([sideInHand(parted, 'front', chosen), sideInHand(parted, 'rear', chosen)]).toEqual([
      'right',
      null,
    ]);
  });

  it('have a key each', () => {
    const moved = changed(parted, { [blankingKey('front', 'right')]: 40 });
    expect([shareAt(moved, 'front', 'left'), shareAt(moved, 'front', 'right')]).toEqual([70, 40]);
  });

  it('differ by a duct alone as well, and what a side does not say is as its axle', () => {
    const own = changed(equal, { 'sides.front_left.duct.recovery': 0.6 });
    expect(isSplit(own, 'front')).toBe(true);
    expect(ductAt(own, 'front', 'left')).toMatchObject({ recovery: 0.6, mouth_width_mm: 110 });
    expect(ductAt(own, 'front', 'right')).toEqual(own.brakes.front.duct);
    expect(shareAt(own, 'front', 'left')).toBe(70);
  });

  it('are made equal without a trace of either side; the other axle keeps its own', () => {
    const both = changed(parted, {
      'blanking_pct.front_right': 40,
      'sides.front_right.duct.leak_cm2': 30,
      'blanking_pct.rear_left': 20,
      'sides.rear_left.duct.hose_mm': 60,
    });
    const again = equalised(both, 'front');
    expect(isSplit(again, 'front')).toBe(false);
    expect(again.blanking_pct).toEqual({ ...equal.blanking_pct, rear_left: 20 });
    expect(Object.keys(again.sides)).toEqual(['rear_left']);
    expect(checkScenario(again).ok).toBe(true);
  });
});
