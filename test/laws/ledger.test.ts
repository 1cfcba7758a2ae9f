import { describe, expect, it } from 'vitest';
import type { StintResult } from '../../engine/stint/result.ts';
import { unexplained } from '../support/ledger.ts';
import { shipped } from '../support/shipped.ts';
import { stand } from '../support/standing.ts';
import { changed, driven, onTrace } from '../support/stints.ts';

const CLOSES = 1e-9;
const hot = { 'initial.front.disc_C': 600, 'initial.rear.disc_C': 450, 'initial.front.caliper_C': 120 };

function expectClosed({ corners }: StintResult): void {
  for (const { axle, side, ledger_J } of corners) {
    expect(unexplained(ledger_J), `${axle} ${side}`).toBeLessThanOrEqual(CLOSES);
    const through = ledger_J.brakeHeat + Math.abs(ledger_J.stored);
    expect(Math.abs(ledger_J.residual), `${axle} ${side}`).toBeLessThanOrEqual(CLOSES * 3 * through);
  }
}

describe('heat in is heat stored and heat lost', () => {
  it.each(shipped)('in %s', (_, scenario) => expectClosed(driven(scenario)));

  it('with left and right unlike', () => {
    expectClosed(driven(changed({ 'blanking_pct.front_left': 100, 'blanking_pct.rear_right': 0 })));
  });

  it('on a wet track behind another car', () => {
    expectClosed(driven(changed({ 'conditions.wet': true, 'traffic.gap_m': 8 })));
  });

  it('with no braking at all', () => {
    const result = onTrace(new Array<number>(400).fill(50), 0.1, hot);
    expectClosed(result);
    expect(result.brakeEnergyPerLap_J).toBe(0);
    expect(result.corners[0]!.ledger_J.stored).toBeLessThan(-1e5);
  });

  it.each([true, false])('with the car only standing, brake held: %s', (brakeHeld) => {
    for (const { ledger } of stand(changed(hot), 1800, brakeHeld)) {
      expect(unexplained(ledger)).toBeLessThanOrEqual(CLOSES);
      expect(ledger.brakeHeat).toBe(0);
    }
  });
});

describe('no heat flows at equal temperatures', () => {
  const days = [{}, { 'conditions.ambient_C': -25, 'conditions.wet': true }, { 'conditions.ambient_C': 50 }];

  it.each(days.flatMap((day) => [true, false].map((held) => [day, held] as const)))(
    'in a car that stands at ambient: %j, brake held: %s',
    (day, brakeHeld) => {
      for (const { before_K, after_K } of stand(changed(day), 3600, brakeHeld)) {
        after_K.forEach((T, i) => expect(Math.abs(T - before_K[i]!)).toBeLessThanOrEqual(1e-9));
      }
    },
  );
});
