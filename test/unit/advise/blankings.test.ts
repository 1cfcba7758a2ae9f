import { describe, expect, it } from 'vitest';
import { blankings, type BlankingMap } from '../../../engine/advise/blankings.ts';
import { finished } from '../../../engine/advise/finished.ts';
import { safeSpans } from '../../../engine/advise/safe-span.ts';
import { shippedStint } from '../../../engine/scenario/library.ts';
import type { Scenario } from '../../../engine/scenario/schema.ts';
import { compile } from '../../../engine/stint/compile.ts';
import { run } from '../../../engine/stint/run.ts';
import { changed, withPhases } from '../../support/stints.ts';
import { toyStint } from '../../support/toy-stint.ts';

const toy = toyStint({});

function at(maps: BlankingMap[], axle: 'front' | 'rear', side: BlankingMap['side'] = 'both'): BlankingMap {
  const found = maps.find((map) => map.axle === axle && map.side === side);
  if (!found) throw new Error(`no map: ${axle} ${side}`);
  return found;
}

const percentsOf = ({ rows }: BlankingMap): number[] => rows.map(({ blanking_pct }) => blanking_pct);

/** Every row of a map against the stint compiled and run with that blanking from the start. */
function expectPlainRuns(scenario: Scenario, map: BlankingMap, key: string): void {
  for (const { blanking_pct, verdict, laps } of map.rows) {
    const plain = run(compile(changed({ [key]: blanking_pct }, scenario)), 'summary');
    const corner = plain.corners.find(
      ({ axle, side }) => axle === map.axle && (side === map.side || side === 'both'),
    )!;
    expect(verdict, `${blanking_pct} %`).toEqual(corner.verdict);
    for (const [i, lap] of laps.entries()) expect(corner.laps[i]).toMatchObject(withoutMargins(lap));
  }
}

const withoutMargins = ({
  hotMargin_K: _hot,
  coldMargin_K: _cold,
  ...lap
}: BlankingMap['rows'][number]['laps'][number]) => lap;

describe('all blankings', () => {
  it('are what a plain run gives at each, on both axles', () => {
    const maps = finished(blankings(toy));
    expectPlainRuns(toy, at(maps, 'front'), 'blanking_pct.front');
    expectPlainRuns(toy, at(maps, 'rear'), 'blanking_pct.rear');
  });

  it('leave what phases set as it is', () => {
    const stint = withPhases(
      [
        { kind: 'push', laps: 2 },
        { kind: 'push', laps: 2, set: { 'blanking_pct.front': 40 } },
      ],
      4,
      toy,
    );
    expectPlainRuns(stint, at(finished(blankings(stint)), 'front'), 'blanking_pct.front');
  });

  it('are of each side where the sides differ, and move that side alone', () => {
    const uneven = changed({ 'blanking_pct.front_left': 30, 'blanking_pct.front_right': 60 }, toy);
    const maps = finished(blankings(uneven));
    expect(maps.map(({ axle, side }) => `${axle} ${side}`)).toEqual([
      'front left',
      'front right',
      'rear both',
    ]);
    expectPlainRuns(uneven, at(maps, 'front', 'left'), 'blanking_pct.front_left');
  });

  it('do not depend on how the mouths are blanked now', () => {
    const other = changed({ 'blanking_pct.front': 12, 'blanking_pct.rear': 88 }, toy);
    expect(finished(blankings(other))).toEqual(finished(blankings(toy)));
  });

  it('go by 5 %, and by 1 % only where a counted lap begins or ends to be out', () => {
    const { rows } = at(finished(blankings(shippedStint('sorrelby-20'))), 'front');
    const percents = rows.map(({ blanking_pct }) => blanking_pct);
    expect(percents).toEqual([...new Set(percents)].sort((a, b) => a - b));
    for (let pct = 0; pct <= 100; pct += 5) expect(percents).toContain(pct);
    for (let low = 0; low < 100; low += 5) {
      const [below, above] = [low, low + 5].map((pct) => rows.find((row) => row.blanking_pct === pct)!);
      const turns = below!.laps.some(
        (lap, i) =>
          lap.in !== null &&
          (lap.tooHot !== above!.laps[i]!.tooHot || lap.tooCold !== above!.laps[i]!.tooCold),
      );
      expect(percents.filter((pct) => pct > low && pct < low + 5)).toHaveLength(turns ? 4 : 0);
    }
  });

  it('are in at the whole percents of the safe span and at no other', () => {
    const stint = shippedStint('sorrelby-20');
    const maps = finished(blankings(stint));
    for (const { axle, side, span_pct } of finished(safeSpans(stint))) {
      const inside = at(maps, axle, side).rows.filter(({ verdict }) => verdict.status === 'in');
      expect(inside[0]!.blanking_pct).toBe(Math.ceil(span_pct![0]));
      expect(inside.at(-1)!.blanking_pct).toBe(Math.floor(span_pct![1]));
    }
  });

  it('give each lap its own margins, of which the smallest is the verdict’s', () => {
    for (const { verdict, laps } of at(finished(blankings(toy)), 'front').rows) {
      const counted = laps.filter((lap) => lap.in !== null);
      expect(Math.min(...counted.map((lap) => lap.hotMargin_K))).toBe(verdict.hotMargin_K);
      expect(Math.min(...counted.map((lap) => lap.coldMargin_K))).toBe(verdict.coldMargin_K);
    }
  });

  it('are not of a corner without a duct', () => {
    const bare = { ...toy, brakes: { ...toy.brakes, rear: { ...toy.brakes.rear, duct: null } } };
    const maps = finished(blankings(bare));
    expect(maps.map(({ axle }) => axle)).toEqual(['front']);
    expect(percentsOf(maps[0]!)[0]).toBe(0);
  });
});
