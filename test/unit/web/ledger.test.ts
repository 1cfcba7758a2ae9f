import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Ledger, LapSummary } from '../../../engine/index.ts';
import { IN, ledgerView, OUT, type Account, type Part } from '../../../web/charts/ledger-parts.ts';
import {
  ledgerAt,
  ledgerChange,
  ledgerRows,
  ledgerSummary,
  ledgerTitle,
} from '../../../web/charts/ledger-words.ts';
import { corner } from '../../support/verdicts.ts';

const warming: Ledger = {
  brakeHeat: 2.25e6,
  stored: 0.11e6,
  vaneAir: 1.102e6,
  faceAir: 0.706e6,
  otherAir: 0.162e6,
  radiation: 0.142e6,
  conducted: 0.028e6,
  residual: 1e-8,
};
const cooling: Ledger = { ...warming, brakeHeat: 0.3e6, stored: -1.84e6 };

const laps = [
  { lap: 1, kind: 'out' },
  { lap: 2, kind: 'push' },
] as LapSummary[];
const front = corner('front', {}, { laps, ledger_J: warming, lapLedgers_J: [cooling, warming] });
const run = (ledger: Ledger, label = 'pinned 50 %') => ({
  label,
  dash: 0,
  laps: [],
  corner: corner('front', {}, { laps, ledger_J: ledger, lapLedgers_J: [cooling, ledger] }),
});
const plain = (text: string): string => text.replaceAll('\u00a0', ' ');

const heat = fc.double({ min: -1e6, max: 9e7, noNaN: true });
const anyLedger = fc
  .record({ stored: heat, vaneAir: heat, faceAir: heat, otherAir: heat, radiation: heat, conducted: heat })
  .map((parts): Ledger => {
    const brakeHeat = Object.values(parts).reduce((total, part) => total + part, 0);
    return { ...parts, brakeHeat, residual: 0 };
  })
  .filter(({ brakeHeat }) => brakeHeat >= 0);

const printed = ({ steps }: Account, parts: readonly Part[], of: 'units' | 'pct'): number =>
  parts.reduce((total, part) => total + steps[part][of], 0);

describe('the staircase of a ledger', () => {
  it('goes up and comes down by the same, drawn and printed, whatever the sign of each part', () => {
    fc.assert(
      fc.property(anyLedger, ({ ...ledger }) => {
        const { now, digits } = ledgerView(ledger, null);
        for (const side of [IN, OUT]) {
          const last = now.steps[side.at(-1)!];
          expect(Math.abs(last.to_J - now.total_J)).toBeLessThanOrEqual(1e-9 * (1 + now.total_J));
          expect(printed(now, side, 'units')).toBe(now.units);
          if (now.total_J > 1) expect(printed(now, side, 'pct')).toBe(100);
        }
        expect(digits).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 1000 },
    );
  });

  it('shows changes that are the differences of what is printed, and balance', () => {
    fc.assert(
      fc.property(anyLedger, anyLedger, (one, other) => {
        const { rows, now, pinned } = ledgerView(one, other);
        const change = (isIn: boolean): number =>
          rows.filter((row) => row.isIn === isIn).reduce((total, row) => total + row.change!, 0);
        expect(change(true)).toBe(now.units - pinned!.units);
        expect(change(false)).toBe(now.units - pinned!.units);
      }),
      { numRuns: 500 },
    );
  });

  it('counts heat that a cooling brake gives back among what went in', () => {
    const { rows } = ledgerView(cooling, null);
    expect(rows.map(({ part }) => part)).toEqual([
      'friction',
      'givenBack',
      'vanes',
      'faces',
      'others',
      'radiation',
      'conducted',
    ]);
    expect(rows[1]!.now).toMatchObject({ from_J: 0.3e6, to_J: 2.14e6, pct: 86 });
  });

  it('has a line for each way that the store went, now or in the pinned run', () => {
    const parts = ledgerView(warming, cooling).rows.map(({ part, change }) => [part, change]);
    expect(parts).toContainEqual(['givenBack', -184]);
    expect(parts).toContainEqual(['kept', 11]);
  });

  it('leaves the vanes out of a disc that has none', () => {
    const solid = { ...warming, vaneAir: 0, faceAir: 1.808e6 };
    expect(ledgerView(solid, null).rows.map(({ part }) => part)).not.toContain('vanes');
  });

  it.each([
    [212e6, 0],
    [44e6, 1],
    [2.25e6, 2],
    [3e4, 3],
    [0, 3],
  ])('prints %d J with %d decimals of a megajoule', (brakeHeat, digits) => {
    expect(ledgerView({ ...warming, brakeHeat, stored: 0 }, null).digits).toBe(digits);
  });
});

describe('the words of a ledger', () => {
  const title = (lap: number | null): string =>
    plain(ledgerTitle(front, lap, ledgerView(ledgerAt(front, lap)!, null)));

  it('name the two that took most', () => {
    expect(title(2)).toBe('Front on lap 2: of 2.25 MJ, the vanes’ air took 49 %, the faces’ air 32 %');
    expect(title(null)).toMatch(/^Front over 2 laps: of 2\.25 MJ/);
  });

  it('say what the brake kept where that is most', () => {
    const keeping = { ...warming, stored: 1.212e6, vaneAir: 0 };
    const view = ledgerView(keeping, null);
    expect(plain(ledgerTitle(front, 2, view))).toContain(
      'the brake itself kept 54 %, the faces’ air took 32 %',
    );
  });

  it('do not divide by a heat that is not there', () => {
    const none = Object.fromEntries(Object.keys(warming).map((key) => [key, 0])) as unknown as Ledger;
    const view = ledgerView(none, null);
    expect(plain(ledgerTitle(front, 2, view))).toBe('Front on lap 2: no heat to speak of');
    expect(ledgerSummary(front, 2, view)).not.toMatch(/NaN|Air took/);
  });

  it('speak of one of two alike, or of the side in hand', () => {
    const left = { ...front, side: 'left' as const };
    const view = ledgerView(warming, null);
    expect(ledgerSummary(front, 2, view)).toMatch(/^One front brake, disc to fluid, on a push lap\./);
    expect(ledgerSummary(left, null, view)).toMatch(
      /^The front left brake, disc to fluid, standing included\./,
    );
  });

  it('say that the books close only where they do', () => {
    const view = (residual: number) => ledgerView({ ...warming, residual }, null);
    expect(ledgerSummary(front, 2, view(1e-8))).toContain('All heat is accounted for.');
    expect(plain(ledgerSummary(front, 2, view(4e4)))).toContain('0.040 MJ is not accounted for.');
  });

  it('name the largest changes against the pinned run, and which way', () => {
    const before = run({ ...warming, vaneAir: 1.402e6, radiation: 0.092e6, brakeHeat: 2.5e6 });
    const view = ledgerView(warming, ledgerAt(before.corner, 2)!);
    expect(plain(ledgerChange(view, before, 2))).toBe(
      'Dashed: pinned 50 %. Against it the vanes’ air took 0.30 MJ less, friction made 0.25 MJ less, radiation took 0.05 MJ more.',
    );
    expect(plain(ledgerChange(ledgerView(warming, warming), before, 2))).toBe(
      'Dashed: pinned 50 %; the same, to 0.01 MJ.',
    );
  });

  it('say that the pinned run has no such lap', () => {
    const before = run(warming);
    expect(ledgerAt(before.corner, 3)).toBeUndefined();
    expect(plain(ledgerChange(ledgerView(warming, null), before, 3))).toBe(
      'The run pinned 50 % has no lap 3.',
    );
  });

  it('make a file whose columns name their units and whose parts add up', () => {
    const [head, ...rows] = ledgerRows(ledgerView(warming, cooling), run(cooling));
    expect(head).toEqual(['Part', 'Way', 'Heat, MJ', 'Share, %', 'pinned 50 %, MJ', 'Change, MJ']);
    const out = rows.filter(([, way]) => way === 'out').reduce((total, row) => total + Number(row[2]), 0);
    expect(out).toBeCloseTo(2.25, 9);
  });
});
