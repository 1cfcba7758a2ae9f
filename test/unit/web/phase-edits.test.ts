import { describe, expect, it } from 'vitest';
import { shippedStint } from '../../../engine/scenario/library.ts';
import { checkScenario } from '../../../engine/scenario/parse.ts';
import type { PhaseList } from '../../../web/display/phase-plan.ts';
import {
  added,
  duplicated,
  moved,
  removed,
  split,
  withFields,
  withLaps,
  withSet,
} from '../../../web/state/phase-edits.ts';

const scenario = shippedStint('sorrelby-20');
/** out 1, push with what remains, in 1, stand; 20 laps */
const open: PhaseList = scenario.stint;
const fixed = withLaps(open, 1, 18);

const kinds = ({ phases }: PhaseList): string => phases.map(({ kind }) => kind).join(' ');
const laps = ({ phases }: PhaseList): (number | null)[] =>
  phases.flatMap((phase) => (phase.kind === 'stand' ? [] : [phase.laps]));
const isValid = (list: PhaseList): boolean =>
  checkScenario({ ...scenario, stint: { ...scenario.stint, ...list } }).ok;

describe('editing phases', () => {
  it('puts a pit stop in as in-lap, stop and out-lap and looks at the stop', () => {
    const { list, at } = added(open, 1, 'pit');
    expect(kinds(list)).toBe('out push in stand out in stand');
    expect(list.phases[at]).toEqual({ kind: 'stand', duration_s: 45, brake_held: false });
  });

  it('takes new laps from the open phase and keeps the stint as long as it was', () => {
    const { list } = added(open, 2, 'safety');
    expect(list.laps).toBe(20);
    expect(laps(list)).toEqual([1, null, 1, 3]);
  });

  it('lengthens a stint whose open phase would be left without a lap', () => {
    const short = { ...open, laps: 4 };
    expect(added(short, 1, 'push').list.laps).toBe(8);
  });

  it('makes the stint as long as its phases where none is open', () => {
    expect(fixed.laps).toBe(20);
    expect(added(fixed, 1, 'safety').list.laps).toBe(23);
    expect(removed(fixed, 2).list.laps).toBe(19);
    expect(withLaps(fixed, 1, 4).laps).toBe(6);
  });

  it('lets one phase at most take what the stint leaves: the other keeps the laps it has', () => {
    const two = added(open, 1, 'push').list;
    const handed = withLaps(two, 2, null);
    expect(laps(handed)).toEqual([1, 13, null, 1]);
    expect(handed.laps).toBe(20);
  });

  it('splits a phase in halves, and what the first sets is not set again', () => {
    const wet = withSet(fixed, 1, { 'conditions.wet': true });
    const { list, at } = split(withLaps(wet, 1, 9), 1);
    expect(laps(list)).toEqual([1, 5, 4, 1]);
    expect(list.phases[1]?.set).toEqual({ 'conditions.wet': true });
    expect(list.phases[at]?.set).toBeUndefined();
  });

  it('splits the open phase and leaves the second half open', () => {
    expect(laps(split(open, 1).list)).toEqual([1, 9, null, 1]);
  });

  it('leaves a single lap and a stop whole', () => {
    expect(split(open, 0).list).toBe(open);
    expect(split(open, 3).list).toBe(open);
  });

  it('duplicates the open phase with the laps it has now', () => {
    const { list, at } = duplicated(open, 1);
    expect(laps(list)).toEqual([1, null, 18, 1]);
    expect(list.laps).toBe(38);
    expect(at).toBe(2);
  });

  it('gives an open phase without a lap one when it is duplicated or handed on', () => {
    const empty = { ...open, laps: 2 };
    const twice = duplicated(empty, 1).list;
    expect(laps(twice)).toEqual([1, null, 1, 1]);
    expect(twice.laps).toBe(4);
    const handed = withLaps(empty, 2, null);
    expect(laps(handed)).toEqual([1, 1, null]);
    expect([twice, handed].every(isValid)).toBe(true);
  });

  it('moves a phase by one place and not beyond the ends', () => {
    expect(kinds(moved(open, 2, -1).list)).toBe('out in push stand');
    expect(moved(open, 0, -1)).toEqual({ list: open, at: 0 });
    expect(moved(open, 3, 1)).toEqual({ list: open, at: 3 });
  });

  it('looks at the next phase after one is removed, at the last after the last', () => {
    expect(removed(open, 1).at).toBe(1);
    expect(removed(open, 3).at).toBe(2);
  });

  it('sets and takes away a field and a key', () => {
    const gap = withFields(open, 1, { gap_s: 0.8, traffic_share: 0.5 });
    expect(gap.phases[1]).toMatchObject({ gap_s: 0.8, traffic_share: 0.5 });
    expect(withFields(gap, 1, { gap_s: undefined, traffic_share: undefined })).toEqual(open);
    const wet = withSet(open, 1, { 'conditions.wet': true });
    expect(withSet(wet, 1, { 'conditions.wet': undefined })).toEqual(open);
  });

  it('changes nothing in the list it was given', () => {
    const before = structuredClone(open);
    withLaps(withSet(added(open, 1, 'pit').list, 1, { 'conditions.wet': true }), 1, 3);
    expect(open).toEqual(before);
  });

  it('gives valid stints whatever is added, moved, split or removed in turn', () => {
    let list = open;
    for (const kind of ['pit', 'safety', 'push', 'out', 'in', 'stand'] as const) {
      list = added(list, 1, kind).list;
      expect(isValid(list)).toBe(true);
    }
    for (let at = 0; at < list.phases.length; at++) {
      expect(isValid(split(list, at).list)).toBe(true);
      expect(isValid(duplicated(list, at).list)).toBe(true);
      expect(isValid(moved(list, at, 1).list)).toBe(true);
      expect(isValid(removed(list, at).list)).toBe(true);
    }
  });
});
