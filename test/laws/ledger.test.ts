import { describe, expect, it } from 'vitest';
import type { Phase } from '../../engine/scenario/schema.ts';
import type { Ledger, StintResult } from '../../engine/stint/result.ts';
import { unexplained } from '../support/ledger.ts';
import { shipped } from '../support/shipped.ts';
import { stand } from '../support/standing.ts';
import { changed, driven, onTrace, withPhases } from '../support/stints.ts';

const CLOSES = 1e-9;
const hot = { 'initial.front.disc_C': 600, 'initial.rear.disc_C': 450, 'initial.front.caliper_C': 120 };

function expectClosed({ corners }: StintResult): void {
  for (const { axle, side, ledger_J } of corners) {
    expect(unexplained(ledger_J), `${axle} ${side}`).toBeLessThanOrEqual(CLOSES);
    const through = ledger_J.brakeHeat + Math.abs(ledger_J.stored);
    expect(Math.abs(ledger_J.residual), `${axle} ${side}`).toBeLessThanOrEqual(CLOSES * 3 * through);
  }
}

const parts = [
  'brakeHeat',
  'stored',
  'vaneAir',
  'faceAir',
  'otherAir',
  'radiation',
  'conducted',
] as const satisfies (keyof Ledger)[];

/** Each lap's books close against the lap's own heat, and those of laps and stands make the stint's. */
function expectLapsClosed({ corners, laps }: StintResult): void {
  for (const { axle, side, ledger_J, lapLedgers_J, standLedger_J } of corners) {
    const name = `${axle} ${side}`;
    expect(lapLedgers_J.length, name).toBe(laps.length);
    lapLedgers_J.forEach((ledger, i) => {
      expect(unexplained(ledger), `${name}, lap ${i + 1}`).toBeLessThanOrEqual(CLOSES);
      expect(Math.abs(ledger.residual), `${name}, lap ${i + 1}`).toBeLessThanOrEqual(
        CLOSES * Math.max(ledger.brakeHeat, Math.abs(ledger.stored)),
      );
    });
    for (const part of parts) {
      const sum = [...lapLedgers_J, standLedger_J].reduce((total, ledger) => total + ledger[part], 0);
      const through = Math.max(ledger_J.brakeHeat, Math.abs(ledger_J.stored));
      expect(Math.abs(sum - ledger_J[part]), `${name}, ${part}`).toBeLessThanOrEqual(1e-12 * through);
    }
  }
}

const interrupted: Phase[] = [
  { kind: 'out', laps: 1 },
  { kind: 'push', laps: 3 },
  { kind: 'in', laps: 1 },
  { kind: 'stand', duration_s: 240, brake_held: true },
  { kind: 'out', laps: 1 },
  { kind: 'push', laps: 2 },
  { kind: 'safety', laps: 2 },
  { kind: 'push', laps: null },
];

describe('heat in is heat stored and heat lost', () => {
  it.each(shipped)('in %s', (_, scenario) => expectClosed(driven(scenario)));

  it.each(shipped)('lap by lap, in %s', (_, scenario) => expectLapsClosed(driven(scenario)));

  it('lap by lap, with a stand and a safety car between the laps', () => {
    const result = driven(withPhases(interrupted, 12));
    expectLapsClosed(result);
    const [front] = result.corners;
    expect(front!.standLedger_J.brakeHeat).toBe(0);
    expect(front!.standLedger_J.stored).toBeLessThan(-1e5);
    expect(front!.lapLedgers_J[8]!.stored, 'behind the safety car').toBeLessThan(0);
  });

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
