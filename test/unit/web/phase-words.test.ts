import { describe, expect, it } from 'vitest';
import type { Phase, Scenario } from '../../../engine/index.ts';
import { driverChanges, shippedStint } from '../../../engine/scenario/library.ts';
import { lapRemarks } from '../../../web/display/lap-words.ts';
import { driverId, phasePlan, type PhasePlan } from '../../../web/display/phase-plan.ts';
import {
  changeMarks,
  phaseDetail,
  phaseName,
  phasesSummary,
  standTime,
} from '../../../web/display/phase-words.ts';

const base = shippedStint('sorrelby-20');

function planOf(phases: Phase[], laps: number, change: Partial<Scenario> = {}): PhasePlan {
  return phasePlan({ ...base, ...change, stint: { ...base.stint, phases, laps } });
}

const plain = (text: string | undefined): string => (text ?? '').replaceAll('\u00a0', ' ');

const plan = planOf(
  [
    { kind: 'out', laps: 1 },
    { kind: 'push', laps: 9, gap_s: 0.8, traffic_share: 0.5, pull_out_kmh: 220, tow: false },
    { kind: 'in', laps: 1 },
    {
      kind: 'stand',
      duration_s: 45,
      brake_held: true,
      set: { 'blanking_pct.front': 40, 'car.fuel_kg': 60, ...driverChanges('early-soft', base) },
    },
    { kind: 'out', laps: 1 },
    { kind: 'push', laps: null, set: { 'conditions.wet': true, 'conditions.ambient_C': 11 } },
    { kind: 'in', laps: 1 },
    { kind: 'stand', duration_s: 600, brake_held: false },
  ],
  20,
);

describe('the plan of a stint', () => {
  it('gives the open phase what the others leave', () => {
    expect(plan.map(({ laps }) => laps)).toEqual([1, 9, 1, 0, 1, 7, 1, 0]);
    expect(plan.map(({ after }) => after)).toEqual([0, 1, 10, 11, 11, 12, 19, 20]);
  });

  it('keeps what a phase sets for all that follow', () => {
    expect(plan[3]?.before.blanking_pct.front).toBe(70);
    expect(plan[7]?.now.blanking_pct.front).toBe(40);
    expect(plan[4]?.changes).toEqual([]);
  });

  it('counts no change where a phase sets what holds already', () => {
    const same = planOf([{ kind: 'push', laps: 3, set: { 'conditions.wet': false } }], 3);
    expect(same[0]?.changes).toEqual([]);
  });

  it('knows the driver at the wheel', () => {
    expect(driverId(base, base)).toBe('own');
    expect(plan[4] && driverId(plan[4].now, base)).toBe('early-soft');
    expect(driverId({ ...base, driver: { ...base.driver, coast_s: 1.7 } }, { ...base })).toBeNull();
  });
});

describe('phases in words', () => {
  it('name kind and laps', () => {
    expect(plan.map((each) => plain(phaseName(each)))).toEqual([
      'Out-lap',
      'Push, 9 laps',
      'In-lap',
      'Stop 45 s',
      'Out-lap',
      'Push, the remaining 7 laps',
      'In-lap',
      'Stop 10 min',
    ]);
  });

  it('tell traffic and every change', () => {
    expect(plain(plan[1] && phaseDetail(plan[1]))).toBe(
      '0.8 s behind for half the lap, out of line above 220 km/h, no tow',
    );
    expect(plain(plan[3] && phaseDetail(plan[3]))).toBe(
      'brake held, tape front 70 to 40 %, 60 kg fuel, driver Early and soft',
    );
    expect(plain(plan[5] && phaseDetail(plan[5]))).toBe('wet, 11 °C');
    expect(plan[0] && phaseDetail(plan[0])).toBe('');
  });

  it("leave out the stint's own gap, and say where a phase has another or none", () => {
    const traffic = { ...base.traffic, gap_m: 20 };
    const details = planOf(
      [
        { kind: 'push', laps: 2 },
        { kind: 'safety', laps: 1 },
        { kind: 'push', laps: 2, gap_m: null },
        { kind: 'push', laps: 2, gap_m: 8 },
        { kind: 'push', laps: 2, traffic_share: 0.5, tow: false },
      ],
      9,
      { traffic },
    ).map((each) => plain(phaseDetail(each)));
    expect(details).toEqual(['', '', 'clear air', '8 m behind', 'in traffic for half the lap, no tow']);
  });

  it('say so where no lap is left for the open phase', () => {
    const [, none] = planOf(
      [
        { kind: 'out', laps: 1 },
        { kind: 'push', laps: null },
      ],
      1,
    );
    expect(none && phaseName(none)).toBe('Push, no lap left');
  });

  it('count one phase and one lap as one', () => {
    expect(phasesSummary(planOf([{ kind: 'push', laps: 1 }], 1))).toMatch(/^1 phase, 1 lap: /);
    const parked: Phase = { kind: 'stand', duration_s: 60, brake_held: false };
    expect(phasesSummary(planOf([{ kind: 'push', laps: 1 }, parked], 1))).toMatch(/^2 phases, 1 lap: /);
  });

  it('tell what each side had where an axle is taped anew', () => {
    const sides = { blanking_pct: { ...base.blanking_pct, front_left: 58, front_right: 30 } };
    const taped = planOf(
      [
        { kind: 'push', laps: 1, set: { 'blanking_pct.front': 0 } },
        { kind: 'push', laps: 1, set: { 'blanking_pct.front': 20 } },
        { kind: 'push', laps: 1, set: { 'blanking_pct.front': 40, 'blanking_pct.front_left': 50 } },
      ],
      3,
      sides,
    );
    expect(taped.map((each) => plain(phaseDetail(each)))).toEqual([
      'tape front left 58, right 30 to 0 %',
      'tape front 0 to 20 %',
      'tape front to 40 %, tape front left 20 to 50 %',
    ]);
  });

  it('are short on the chart', () => {
    expect(plan.map(({ changes }) => plain(changeMarks(changes).join(', ')))).toEqual([
      '',
      '',
      '',
      'tape 40 %, fuel, driver',
      '',
      'wet, 11 °C',
      '',
      '',
    ]);
  });

  it('name both axles, other keys and a driver of no list', () => {
    const [stop] = planOf(
      [
        {
          kind: 'stand',
          duration_s: 150,
          brake_held: false,
          set: {
            'blanking_pct.front': 40,
            'blanking_pct.rear': 30,
            'car.brake_balance_front': 0.585,
            'conditions.humidity_pct': 80,
            'driver.coast_s': 1.7,
          },
        },
        { kind: 'push', laps: 3 },
      ],
      3,
    );
    expect(stop && plain(phaseDetail(stop))).toBe(
      'tape front 70 to 40 %, tape rear 50 to 30 %, balance 58.5 % front, humidity 80 %, driver changed',
    );
    expect(stop && plain(changeMarks(stop.changes)[0])).toBe('tape 40/30 %');
  });

  it('make one sentence', () => {
    expect(plain(phasesSummary(plan))).toMatch(
      /^8 phases, 20 laps: out-lap; push, 9 laps, 0\.8 s behind.*; stop 45 s, brake held, .*; stop 10 min\.$/,
    );
  });

  it('write how long the car stands', () => {
    expect([45, 90, 150, 600].map((s) => plain(standTime(s)))).toEqual([
      '45 s',
      '90 s',
      '2:30 min',
      '10 min',
    ]);
  });

  it('remark on the lap where something changes, not on a plain stop at the end', () => {
    const remarks = lapRemarks(plan);
    expect([...remarks.keys()]).toEqual([2, 12, 13]);
    expect(plain(remarks.get(12)?.[0])).toMatch(
      /^Stop 45 s before this lap: brake held, tape front 70 to 40 %/,
    );
    expect(plain(remarks.get(13)?.[0])).toBe('From lap 13: wet, 11 °C');
  });
});
