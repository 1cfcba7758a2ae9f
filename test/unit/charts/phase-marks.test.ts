import { describe, expect, it } from 'vitest';
import type { LapKind, Phase } from '../../../engine/index.ts';
import { driverChanges, shippedStint } from '../../../engine/scenario/library.ts';
import { phaseChain } from '../../../web/charts/phase-chain.ts';
import { isMarked, phaseMarks } from '../../../web/charts/phase-marks.ts';
import { lapFrame, lapScale } from '../../../web/charts/lap-scale.ts';
import { textWidth } from '../../../web/charts/text-width.ts';
import { phasePlan } from '../../../web/display/phase-plan.ts';
import { restartKinds, sampleResult } from '../../support/sample-result.ts';

const base = shippedStint('sorrelby-20');
const tape: Phase['set'] = {
  'blanking_pct.front': 40,
  'car.fuel_kg': 60,
  ...driverChanges('early-soft', base),
};

/** Twenty laps with a stop after the eleventh; the sample has its own counted laps. */
const phases: Phase[] = [
  { kind: 'out', laps: 1 },
  { kind: 'push', laps: 9 },
  { kind: 'in', laps: 1 },
  { kind: 'stand', duration_s: 45, brake_held: false, set: tape },
  { kind: 'out', laps: 1 },
  { kind: 'push', laps: null, set: { 'conditions.wet': true, 'conditions.ambient_C': 11 } },
  { kind: 'in', laps: 1 },
  { kind: 'stand', duration_s: 600, brake_held: false },
];
const plan = phasePlan({ ...base, stint: { ...base.stint, phases, laps: 20 } });

function scaleAt(width: number) {
  const { laps } = sampleResult({ samplesPerLap: 20 });
  const stop_s = 45;
  const moved = laps.map((lap) =>
    lap.lap > 11 ? { ...lap, start_s: lap.start_s + stop_s, end_s: lap.end_s + stop_s } : lap,
  );
  return lapScale(moved, (moved.at(-1)?.end_s ?? 0) + 600, lapFrame(width));
}

const marksAt = (width: number, edited: number | null = null) =>
  phaseMarks(scaleAt(width), plan, edited, [40, width - 2]);
const plain = (text: string): string => text.replaceAll('\u00a0', ' ');

describe('the marks between phases', () => {
  it('say at a stop and at a boundary what changes there', () => {
    expect(marksAt(1000).map(({ text }) => plain(text))).toEqual([
      'stop 45 s, tape 40 %, fuel, driver',
      'wet, 11 °C',
    ]);
  });

  it.each([320, 390, 560, 640, 1000, 1600])('never touch each other or leave the chart at %i px', (width) => {
    const boxes = marksAt(width)
      .map(({ x, text, anchor }) => ({
        left: anchor === 'start' ? x : x - textWidth(text),
        right: anchor === 'start' ? x + textWidth(text) : x,
      }))
      .sort((a, b) => a.left - b.left);
    expect(boxes.length).toBeGreaterThan(0);
    boxes.forEach(({ left, right }, i) => {
      expect(left).toBeGreaterThanOrEqual(40);
      expect(right).toBeLessThanOrEqual(width - 2);
      if (boxes[i + 1]) expect(right).toBeLessThan(boxes[i + 1]?.left ?? 0);
    });
  });

  it('keep the mark of the phase that is being edited, in full before the others', () => {
    const marks = marksAt(390, 5);
    expect(marks.find(({ isEdited }) => isEdited)?.text).toMatch(/^wet/);
  });

  it('say what holds from a boundary on after it, if only in short', () => {
    for (const width of [560, 640, 800, 1000]) {
      const wet = marksAt(width).find(({ text }) => text.startsWith('wet'));
      expect(wet?.anchor).toBe('start');
    }
  });

  it('make room for a boundary soon after a stop', () => {
    const close = phasePlan({
      ...base,
      stint: {
        ...base.stint,
        laps: 20,
        phases: phases.with(4, { kind: 'out', laps: 1, set: { 'conditions.ambient_C': 21 } }),
      },
    });
    const x = scaleAt(1000);
    const texts = phaseMarks(x, close, null, [40, 998]).map(({ text }) => plain(text));
    expect(texts.sort()).toEqual([
      expect.stringMatching(/^21 °C/),
      expect.stringMatching(/^stop/),
      expect.stringMatching(/^wet/),
    ]);
  });

  it('leave a plain stop at the end to the foot of the chart', () => {
    expect(plan.filter((each) => isMarked(each, plan)).map(({ index }) => index)).toEqual([3, 5]);
  });
});

describe('the chain of planned phases', () => {
  it('parts two phases of one kind', () => {
    const twice = phases.with(1, { kind: 'push', laps: 5 }).toSpliced(2, 0, { kind: 'push', laps: 4 });
    const parted = phasePlan({ ...base, stint: { ...base.stint, phases: twice, laps: 20 } });
    const x = scaleAt(1000);
    expect(phaseChain(x, parted).length).toBe(phaseChain(x, plan).length + 1);
  });

  it('marks the laps of the edited phase and no others', () => {
    const x = scaleAt(640);
    const edited = phaseChain(x, plan, 1).filter(({ isEdited }) => isEdited);
    expect(edited[0]?.left).toBeCloseTo(x.laps[1]?.left ?? 0);
    expect(edited.at(-1)?.right).toBeCloseTo(x.laps[9]?.right ?? 0);
  });

  it('marks an edited stop by the stretch it stands', () => {
    const x = scaleAt(640);
    const edited = phaseChain(x, plan, 3).filter(({ isEdited }) => isEdited);
    expect(edited).toHaveLength(1);
    expect(edited[0]?.left).toBeCloseTo(x.stands[0]?.left ?? 0);
    expect(edited[0]?.right).toBeCloseTo(x.stands[0]?.right ?? 0);
  });

  it('lets a short name stand out over a short phase where the others leave room', () => {
    const slow: Phase[] = [
      { kind: 'out', laps: 1 },
      { kind: 'push', laps: 7 },
      { kind: 'safety', laps: 2 },
      { kind: 'push', laps: 1 },
      { kind: 'push', laps: 1 },
      { kind: 'in', laps: 1 },
    ];
    const planned = phasePlan({ ...base, stint: { ...base.stint, phases: slow, laps: 13 } });
    const kinds = slow.flatMap(({ kind, laps }) => new Array<LapKind>(Number(laps)).fill(kind as LapKind));
    const { laps, clock } = sampleResult({ kinds, samplesPerLap: 20 });
    const x = lapScale(laps, clock.time_s.at(-1) ?? 0, lapFrame(280));
    const names = phaseChain(x, planned).filter(({ text }) => text !== '');
    expect(names.map(({ text }) => text)).toContain('safety');
    const ends = names.map(({ left, right, text, counted }) => {
      const [middle, half] = [(left + right) / 2, textWidth(text, 14, counted) / 2];
      return [middle - half, middle + half];
    });
    ends.forEach(([, right], i) => expect(right).toBeLessThanOrEqual(ends[i + 1]?.[0] ?? Infinity));
  });

  it('knows a restart from the laps of a stint without a plan', () => {
    const { laps, clock } = sampleResult({ kinds: restartKinds, samplesPerLap: 20 });
    const textsAt = (width: number): string[] =>
      phaseChain(lapScale(laps, clock.time_s.at(-1) ?? 0, lapFrame(width))).map(({ text }) => text);
    expect(textsAt(640)).toContain('after');
    expect(textsAt(2400)).toContain('after safety car');
  });
});
