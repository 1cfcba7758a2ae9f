import { describe, expect, it } from 'vitest';
import { panelProblems } from '../../engine/scenario/blank-rules.ts';
import { fieldAt, keysUnknown } from '../../engine/scenario/keys.ts';
import { defaultScenario } from '../../engine/scenario/library.ts';
import { mouthEntries } from '../../engine/scenario/mouth-schema.ts';
import { override, type Changes } from '../../engine/scenario/override.ts';
import { parseScenario, type Parsed } from '../../engine/scenario/parse.ts';
import { problemLine } from '../../engine/scenario/problem.ts';
import type { Scenario } from '../../engine/scenario/schema.ts';
import { recordOf } from '../../engine/shell/stint-job.ts';
import { airPathOf, specOf } from '../../engine/stint/corners.ts';
import { scenarioHash } from '../../web/state/scenario-hash.ts';
import { bytesOf, shipped } from '../support/shipped.ts';
import { changed, driven, settled, withPhases } from '../support/stints.ts';

const KEYS = Object.keys(mouthEntries);
const duct = 'brakes.front.duct';
const short: Changes = { 'stint.laps': 6 };

const problemsIn = (parsed: Parsed): string[] => (parsed.ok ? [] : parsed.problems.map(problemLine));
const refused = (changes: Changes): string[] => problemsIn(override(defaultScenario(), changes));

/** The default stint with a front mouth of its own. */
function withMouth(mouth: object, base: Scenario = changed(short)): Scenario {
  const { front } = base.brakes;
  return {
    ...base,
    brakes: { ...base.brakes, front: { ...front, duct: { ...front.duct!, ...mouth } } },
  };
}
const traced = (mouth_outline_mm: unknown, more = {}): string[] =>
  problemsIn(parseScenario(withMouth({ mouth_shape: 'outline', mouth_outline_mm, ...more })));

const mouthArea_mm2 = (scenario: Scenario): number => {
  const { front } = scenario.brakes;
  return 1e6 * airPathOf(front, specOf(front, scenario.car.loaded_radius_m)).mouthArea_m2;
};

describe('a scenario that says nothing of the form of its mouths', () => {
  it.each(shipped)('%s keeps its text and its hash through the check', (_id, scenario) => {
    const parsed = parseScenario(structuredClone(scenario));
    if (!parsed.ok) throw new Error(problemsIn(parsed).join());
    expect(JSON.stringify(parsed.scenario)).toBe(JSON.stringify(scenario));
    expect(KEYS.filter((key) => JSON.stringify(parsed.scenario).includes(`"${key}"`))).toEqual([]);
  });

  it('has the hash it always had', () => {
    const hashes = Object.fromEntries(shipped.map(([id, scenario]) => [id, scenarioHash(scenario)]));
    expect(hashes).toEqual({
      'sorrelby-20': '1515 4af9',
      restart: 'f11b 125f',
      hour: '0a18 1d4e',
      'night-rain': '64d1 c957',
      'club-evening': 'd331 02b7',
    });
  });

  it('is the stint of a rectangle that is blanked by an edge from outboard, bit for bit', () => {
    const said = withMouth({
      mouth_shape: 'rectangle',
      blank: 'edge',
      blank_from: 'outboard',
      strip_overlap_mm: 0,
    });
    expect(bytesOf(driven(said))).toBe(bytesOf(driven(changed(short))));
  });
});

describe('the form of a mouth', () => {
  it('counts by its area: the same rectangle traced is the same stint, bit for bit', () => {
    const corners = [
      [-20, 5],
      [-20, 105],
      [90, 105],
      [90, 5],
    ];
    const same = withMouth({ mouth_shape: 'outline', mouth_outline_mm: corners });
    expect(bytesOf(driven(same))).toBe(bytesOf(driven(changed(short))));
  });

  it.each<[string, object, number]>([
    ['round', { mouth_shape: 'round' }, (Math.PI / 4) * 110 ** 2],
    ['oval', { mouth_shape: 'oval' }, (Math.PI / 4) * 110 * 100],
    ['rounded rectangle', { mouth_shape: 'rounded rectangle' }, 11000 - (4 - Math.PI) * 100],
    [
      'rounded rectangle',
      { mouth_shape: 'rounded rectangle', mouth_corner_mm: 25 },
      11000 - (4 - Math.PI) * 625,
    ],
    [
      'triangle',
      {
        mouth_shape: 'outline',
        mouth_outline_mm: [
          [0, 0],
          [90, 0],
          [0, 90],
        ],
      },
      4050,
    ],
  ])('%s %j has %d mm²', (_name, mouth, area_mm2) => {
    expect(mouthArea_mm2(withMouth(mouth))).toBeCloseTo(area_mm2, 6);
  });

  it('that takes in less air runs hotter', () => {
    const [round, rectangle] = [{ mouth_shape: 'oval' }, {}].map((mouth) =>
      settled(driven(withMouth(mouth)), 'front'),
    );
    expect(round!.faceMax_K).toBeGreaterThan(rectangle!.faceMax_K + 1);
  });

  it('of a perforated blank lets a little more through than an edge, an open mouth just as much', () => {
    const at = (blank: string, share: number) =>
      settled(driven(changed({ ...short, 'blanking_pct.front': share, [`${duct}.blank`]: blank })), 'front')
        .faceMax_K;
    expect(at('perforated', 75)).toBeLessThan(at('edge', 75) - 0.5);
    for (const kind of ['hole', 'slots']) expect(at(kind, 75)).toBe(at('edge', 75));
    expect(at('perforated', 0)).toBeCloseTo(at('edge', 0), 9);
  });
});

describe('a key of the mouth', () => {
  it('is known to the schema and says what it means', () => {
    for (const key of KEYS.filter((each) => each !== 'mouth_outline_mm'))
      expect(fieldAt(`${duct}.${key}`)?.label, key).toMatch(/^[A-Z]/);
    expect(
      keysUnknown(
        withMouth({
          mouth_shape: 'outline',
          mouth_outline_mm: [
            [0, 0],
            [9, 0],
            [0, 9],
          ],
        }),
      ),
    ).toEqual([]);
  });

  it.each<[Changes, string]>([
    [
      { mouth_shape: 'blob' },
      `mouth_shape: expected rectangle or rounded rectangle or round or oval or outline, got 'blob'`,
    ],
    [
      { mouth_shape: 'outline' },
      'mouth_outline_mm: expected at least 3 corners for a mouth of shape outline, got nothing',
    ],
    [
      { mouth_shape: 'rounded rectangle', mouth_corner_mm: 60 },
      'mouth_corner_mm: expected at most half the smaller side, 50, got 60',
    ],
    [{ strip_overlap_mm: 25 }, 'strip_overlap_mm: expected less than strip_mm, 25, got 25'],
    [
      { blank: 'slots', blank_slots: 20, mouth_width_mm: 40 },
      'blank_slots: expected fewer: a rim of 4 mm and bars of 3 mm leave none of them room, got 20',
    ],
    [
      { blank: 'perforated', blank_hole_mm: 60, mouth_height_mm: 50 },
      'blank_hole_mm: expected less: no hole is inside a rim of 4 mm, got 60',
    ],
  ])('%j is refused by one problem', (changes, line) => {
    const keyed = Object.fromEntries(
      Object.entries(changes).map(([key, value]) => [`${duct}.${key}`, value]),
    );
    expect(refused(keyed)).toEqual([`${duct}.${line}`]);
  });

  it('of a blank is refused with a blanking that no such plate can be cut for, on a side too', () => {
    const line = (name: string): string =>
      `blanking_pct.${name}: expected 0, or 65 to 100: the least that a blank with these holes covers, got 40`;
    const plate = { [`${duct}.blank`]: 'perforated' };
    expect(refused({ ...plate, 'blanking_pct.front': 40 })).toEqual([line('front')]);
    expect(refused({ ...plate, 'blanking_pct.front_left': 40 })).toEqual([line('front_left')]);
    for (const share of [0, 66, 100]) expect(refused({ ...plate, 'blanking_pct.front': share })).toEqual([]);
    expect(
      refused({ 'sides.front_left.duct.blank': 'perforated', 'blanking_pct.front_left': 40 }),
    ).toHaveLength(1);
    expect(refused({ 'sides.front_left.duct.blank': 'perforated', 'blanking_pct.front': 40 })).toEqual([
      line('front'),
    ]);
  });

  it('of a blank is refused with a phase that fits what no such plate can be cut for', () => {
    const plate = (set: Record<string, number | boolean>): string[] => {
      const phases = [
        { kind: 'push' as const, laps: 3 },
        { kind: 'push' as const, laps: 3, set },
      ];
      const base = withPhases(phases, 6, changed({ ...short, 'blanking_pct.front': 75 }));
      return problemsIn(parseScenario(withMouth({ blank: 'perforated' }, base)));
    };
    const line = (name: string): string =>
      `stint.phases.1.set.blanking_pct.${name}: expected 0, or 65 to 100: the least that a blank with these holes covers, got 40`;
    expect(plate({ 'blanking_pct.front': 40, 'blanking_pct.rear': 40 })).toEqual([line('front')]);
    expect(plate({ 'blanking_pct.front_right': 40 })).toEqual([line('front_right')]);
    expect(plate({ 'blanking_pct.front': 70, 'conditions.wet': true })).toEqual([]);
  });

  it('of a blank tells of panels at hand that cannot be made, and takes the scenario', () => {
    const plates = withMouth({ blank: 'perforated' }, changed({ ...short, 'blanking_pct.front': 75 }));
    expect(problemsIn(parseScenario(plates))).toEqual([]);
    const told = [1, 2].map(
      (i) =>
        `${duct}.panels_pct.${i}: expected 0, or 65 to 100: the least that a blank with these holes covers, got ${20 + 20 * i}`,
    );
    expect(panelProblems(plates).map(problemLine)).toEqual(told);
    const { notices } = recordOf({ scenario: plates, set: {}, span: false });
    expect(notices.filter(({ kind }) => kind === 'panels').map(({ text }) => text)).toEqual(told);
    const side = changed({ 'sides.rear_left.duct.blank': 'perforated', 'blanking_pct.rear': 0 });
    expect(panelProblems(side).map(({ key }) => key)).toEqual(
      [1, 2].map((i) => `sides.rear_left.duct.panels_pct.${i}`),
    );
    expect(shipped.flatMap(([, scenario]) => panelProblems(scenario))).toEqual([]);
  });
});

/** Whose middle lies outside of it. */
const hooked = [
  [0, 0],
  [100, 0],
  [100, 80],
  [90, 80],
  [90, 10],
  [0, 10],
];

describe('a traced outline', () => {
  const key = `${duct}.mouth_outline_mm`;

  it.each<[string, unknown, string]>([
    [
      'that crosses itself',
      [
        [0, 0],
        [100, 80],
        [100, 0],
        [0, 80],
      ],
      `${key}.2: expected an outline that does not cross itself; this side meets that of corner 0, got [100,0]`,
    ],
    [
      'that touches itself',
      [
        [0, 0],
        [100, 0],
        [100, 50],
        [50, 0],
        [0, 50],
      ],
      `${key}.2: expected an outline that does not cross itself; this side meets that of corner 0, got [100,50]`,
    ],
    [
      'that goes back over itself',
      [
        [0, 0],
        [80, 0],
        [40, 0],
        [40, 50],
      ],
      `${key}.1: expected an outline that does not cross itself; this side meets that of corner 0, got [80,0]`,
    ],
    [
      'with a corner twice in turn',
      [
        [0, 0],
        [0, 0],
        [50, 0],
        [50, 50],
      ],
      `${key}.1: expected an outline that does not cross itself; this side meets that of corner 0, got [0,0]`,
    ],
    [
      'on one line',
      [
        [0, 0],
        [50, 0],
        [100, 0],
      ],
      `${key}: expected corners that are not all on one line: it has no area, got [[0,0],[50,0],[100,0]]`,
    ],
    [
      'of hardly any area',
      [
        [0, 0],
        [5, 0],
        [5, 5],
      ],
      `${key}: expected an area of at least 100 mm², got [[0,0],[5,0],[5,5]]`,
    ],
    [
      'larger than a mouth',
      [
        [0, 0],
        [500, 0],
        [500, 50],
      ],
      `${key}: expected corners at most 400 mm apart across and up, got [[0,0],[500,0],[500,50]]`,
    ],
    [
      'of two corners',
      [
        [0, 0],
        [50, 0],
      ],
      `${key}: expected at least 3 corners, got [[0,0],[50,0]]`,
    ],
    ['of a text', 'round', `${key}: expected a list of corners, each across and up, got 'round'`],
  ])('%s is refused by one problem', (_name, outline, line) => {
    expect(traced(outline)).toEqual([line]);
  });

  it('may be anything that has an inside, either way round', () => {
    expect(traced(hooked)).toEqual([]);
    expect(traced(hooked.toReversed())).toEqual([]);
  });

  it('whose sides do not all see its centre takes no hole of its form', () => {
    expect(traced(hooked, { blank: 'hole' })).toEqual([
      `${duct}.blank: expected edge or perforated: no hole of the mouth’s form is inside a rim of 4 mm, got 'hole'`,
    ]);
  });
});
