import { describe, expect, it } from 'vitest';
import { defaultScenario, withCar } from '../../../engine/scenario/library.ts';
import { keysUnknown } from '../../../engine/scenario/keys.ts';
import { override, type Changes } from '../../../engine/scenario/override.ts';
import { problemLine } from '../../../engine/scenario/problem.ts';
import type { Phase, Scenario } from '../../../engine/scenario/schema.ts';
import { summarise } from '../../../engine/report/summary.ts';
import { stintTable } from '../../../engine/report/table.ts';
import { printed } from '../../../engine/said.ts';
import type { StintResult } from '../../../engine/stint/result.ts';
import { celsius } from '../../../engine/units.ts';
import { changed, driven, withPhases } from '../../support/stints.ts';

const sidesOf = (result: StintResult): string[] => result.corners.map(({ axle, side }) => `${axle} ${side}`);
const apart = ['front left', 'front right', 'rear both'];
const refused = (changes: Changes, base: Scenario = defaultScenario()): string[] => {
  const result = override(base, changes);
  return result.ok ? [] : result.problems.map(problemLine);
};
const short: Changes = { 'stint.laps': 8 };

describe('a side of its own', () => {
  it.each<[string, Changes]>([
    ['blanking', { 'blanking_pct.front_left': 60 }],
    ['inlet pressure', { 'sides.front_left.duct.recovery': 0.6 }],
    ['hose', { 'sides.front_right.duct.hose_length_m': 2.5 }],
    ['wheel exit', { 'sides.front_left.wheel.exit_cp': -0.1 }],
    ['window', { 'sides.front_right.window.bite_C': 380 }],
  ])('in its %s makes two corners of the axle', (_, changes) => {
    expect(sidesOf(driven(changed({ ...short, ...changes })))).toEqual(apart);
  });

  it.each<[string, Changes]>([
    ['blanking', { 'blanking_pct.front_left': 70 }],
    ['both blankings', { 'blanking_pct.front_left': 55, 'blanking_pct.front_right': 55 }],
    ['inlet pressure', { 'sides.front_left.duct.recovery': 0.85 }],
    ['hose and disc', { 'sides.front_right.duct.hose_mm': 76, 'sides.front_left.disc.vanes': 60 }],
  ])('that equals its axle in %s is equal: one corner', (_, changes) => {
    expect(sidesOf(driven(changed({ ...short, ...changes })))).toEqual(['front both', 'rear both']);
  });

  it('that equals its axle changes nothing in the result', () => {
    const plain = driven(changed(short));
    const same = driven(changed({ ...short, 'sides.front_left.duct.recovery': 0.85 }));
    expect(summarise(same)).toEqual(summarise(plain));
  });

  it('with blanking on both sides runs as the axle with that blanking', () => {
    const both = changed({ ...short, 'blanking_pct.front_left': 55, 'blanking_pct.front_right': 55 });
    const axle = changed({ ...short, 'blanking_pct.front': 55 });
    expect(driven(both).corners[0]!.facePeak_K).toBe(driven(axle).corners[0]!.facePeak_K);
  });

  it('leaves the other side and the other axle as they were', () => {
    const plain = driven(changed(short));
    const left = driven(changed({ ...short, 'sides.front_left.duct.recovery': 0.6 }));
    expect(left.corners[0]!.facePeak_K).toBeGreaterThan(plain.corners[0]!.facePeak_K);
    expect(left.corners[1]!.facePeak_K).toBe(plain.corners[0]!.facePeak_K);
    expect(left.corners[2]!.facePeak_K).toBe(plain.corners[1]!.facePeak_K);
  });

  it('may come in a phase: tape pulled from one side only', () => {
    const phases: Phase[] = [
      { kind: 'push', laps: 5 },
      { kind: 'push', laps: 5, set: { 'blanking_pct.front_left': 20 } },
    ];
    const result = driven(withPhases(phases, 10));
    expect(sidesOf(result)).toEqual(apart);
    const [left, right] = result.corners;
    expect(left!.laps[4]!.faceMax_K).toBe(right!.laps[4]!.faceMax_K);
    expect(left!.laps[9]!.faceMax_K).toBeLessThan(right!.laps[9]!.faceMax_K - 10);
  });

  it('is refused out of range, in part where the axle has no duct, and where no key is', () => {
    expect(refused({ 'sides.front_left.duct.recovery': 7 })).toEqual([
      'sides.front_left.duct.recovery: expected 0.1 to 1, got 7',
    ]);
    expect(refused({ 'sides.middle.duct.recovery': 0.5 })).toHaveLength(1);
    expect(refused({ 'sides.front_left.duct.colour': 1 })).toHaveLength(1);
    const light = withCar(defaultScenario(), 'light');
    const partly = refused({ 'sides.rear_left.duct.recovery': 0.5 }, light);
    expect(partly.length).toBeGreaterThan(1);
    expect(partly.every((line) => line.startsWith('sides.rear_left.duct.'))).toBe(true);
  });

  it('with a key the schema does not know is told of', () => {
    const tree = { sides: { front_left: { duct: { recovery: 0.6, recovry: 0.6 } } } };
    expect(keysUnknown(tree)).toEqual(['sides.front_left.duct.recovry']);
  });
});

/** The largest difference of the two fronts straight from the columns, over the counted laps. */
function largestApart({ corners, laps, clock }: StintResult): number {
  const [left, right] = [corners[0]!.columns!.face_K, corners[1]!.columns!.face_K];
  const differences = laps
    .filter(({ counted }) => counted)
    .flatMap(({ lap, firstSample, lastSample }) => {
      const top = (face: Float64Array): number => Math.max(...face.subarray(firstSample + 1, lastSample + 1));
      const starts = corners[0]!.stops
        .filter((stop) => stop.hard && stop.lap === lap)
        .map((stop) => clock.time_s.findIndex((t) => t >= stop.start_s - 1e-9));
      const cold = starts.reduce((a, b) =>
        Math.min(left[b]!, right[b]!) < Math.min(left[a]!, right[a]!) ? b : a,
      );
      return [top(left) - top(right), left[cold]! - right[cold]!];
    });
  return Math.max(...differences.map(Math.abs));
}

describe('left and right', () => {
  const result = driven(changed({ 'sides.front_left.duct.recovery': 0.3 }));

  it('part by what the columns say, the hotter side named', () => {
    expect(result.pulls).toHaveLength(1);
    const [pull] = result.pulls;
    expect(pull).toMatchObject({ axle: 'front', hotter: 'left' });
    // the columns hold samples, the laps the top between them
    expect(Math.abs(pull!.by_K - largestApart(result))).toBeLessThan(0.5);
  });

  it('name the right side when it is the hotter one', () => {
    const mirrored = driven(changed({ 'sides.front_right.duct.recovery': 0.3 }));
    expect(mirrored.pulls).toEqual([{ ...result.pulls[0], hotter: 'right' }]);
  });

  it('are not compared where they are equal', () => {
    expect(driven(changed(short)).pulls).toEqual([]);
  });

  // 40 K and 80 K: common practice, no source.
  it.each<[string, Changes, RegExp | null]>([
    ['nothing at less than 40 K', { 'sides.front_left.duct.recovery': 0.7 }, null],
    [
      'a caution above 40 K',
      { 'sides.front_left.duct.recovery': 0.3 },
      /^front: left runs \d+ K hotter than right on lap \d+; unequal brakes pull the car$/,
    ],
    [
      'a fault above 80 K',
      { 'blanking_pct.front_right': 100, 'blanking_pct.front_left': 20 },
      /^front: right runs \d+ K hotter than left on lap \d+; unequal brakes pull the car; more than 80 K apart is a fault$/,
    ],
  ])('call for %s', (_, changes, text) => {
    const { notices, pulls } = driven(changed(changes));
    const notice = notices.find(({ kind }) => kind === 'pull');
    if (text === null) expect([notice, pulls[0]!.by_K < 40]).toEqual([undefined, true]);
    else {
      expect(printed(notice!.said)).toMatch(text);
      expect(printed(notice!.said)).toContain(` ${Math.round(pulls[0]!.by_K)} K `);
      expect(printed(notice!.said)).toContain(`on lap ${pulls[0]!.lap}`);
    }
  });

  it('stand side by side in the table and apart in the record', () => {
    const record = summarise(result);
    expect(record.pulls).toEqual(result.pulls);
    const lines = stintTable(record).split('\n');
    const head = lines.find((line) => line.startsWith('lap  kind'))!;
    expect(head.match(/(front left|front right|rear) stop/g)).toEqual([
      'front left stop',
      'front right stop',
      'rear stop',
    ]);
    const lap = lines
      .find((line) => / push /.test(line))!
      .trim()
      .split(/\s{2,}/);
    const [left, right] = result.corners.map((corner) => celsius(corner.laps[1]!.faceMax_K));
    expect([lap[3], lap[7]]).toEqual([left!.toFixed(0), right!.toFixed(0)]);
    expect(lines.filter((line) => /^front left: (pad|start|standing)/.test(line))).toHaveLength(3);
  });
});
