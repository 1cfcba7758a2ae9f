import { expect, test } from 'vitest';
import { CODE_ALPHABET, isCode } from '../../../engine/cut/code.ts';
import { cutSheets } from '../../../engine/cut/cut-sheets.ts';
import type { Scenario } from '../../../engine/index.ts';
import { defaultScenario } from '../../../engine/scenario/default-scenario.ts';
import { parseScenario } from '../../../engine/scenario/parse.ts';
import { withValue } from '../../../engine/scenario/tree.ts';
import { isoDay } from '../../../web/display/iso-day.ts';
import {
  choicesAt,
  cutFileName,
  cutRequest,
  ownMouths,
  problemLines,
  refusedMeasure,
  tapeLine,
  worthLine,
} from '../../../web/pages/cut/cut-request.ts';
import { numberKeys, outlineText, outlineWords, typedOutline } from '../../../web/pages/cut/mouth-keys.ts';
import type { Wish } from '../../../web/pages/cut/wish.svelte.ts';

const wishOf = (more: Partial<Wish> = {}): Wish => ({
  axle: 'front',
  side: 'left',
  letters: null,
  typed_pct: null,
  hold: 'holes',
  fastener: 'M5',
  corner_mm: 3,
  kerf_mm: 0,
  bed: 'A4',
  bed_mm: [600, 400],
  across_mm: 100,
  up_mm: 100,
  by: ' A. Smith ',
  supersedes: '',
  date: '2026-11-26',
  hasTape: false,
  ...more,
});
const drawn = (more: Partial<Wish> = {}, scenario = defaultScenario()) =>
  cutSheets(cutRequest(scenario, wishOf(more))!);

test('only panels that cover something are there to be cut, all of them until some are left out', () => {
  expect(choicesAt(defaultScenario(), 'front').map(({ letter }) => letter)).toEqual(['B', 'C', 'D', 'E']);
  expect(cutRequest(defaultScenario(), wishOf())!.panels).toHaveLength(4);
  expect(cutRequest(defaultScenario(), wishOf({ letters: ['C'] }))!.panels).toEqual([
    { letter: 'C', blanking_pct: 60 },
  ]);
});

test('a side whose mouth is its own is named, and cut to its own', () => {
  const split = withValue(defaultScenario(), 'sides', {
    front_left: { duct: { mouth_width_mm: 90 } },
    front_right: { duct: { leak_cm2: 30 } },
  }) as Scenario;
  expect(ownMouths(split, 'front')).toEqual(['left']);
  expect([ownMouths(split, 'rear'), ownMouths(defaultScenario(), 'front')]).toEqual([[], []]);
  const [left, right] = cutRequest(split, wishOf({ side: 'both' }))!.ducts;
  expect([left!.duct.mouth_width_mm, right!.duct.mouth_width_mm]).toEqual([90, 110]);
});

test('where there is no duct nothing is asked for', () => {
  expect(
    cutRequest(withValue(defaultScenario(), 'brakes.rear.duct', null) as Scenario, wishOf({ axle: 'rear' })),
  ).toBeNull();
});

test('every page of panels and of tape says that it is not for a car while the window has no source', () => {
  const { panels, tape, cautions } = drawn({ side: 'both', hasTape: true });
  expect(panels.length).toBeGreaterThan(1);
  expect(tape.length).toBeGreaterThan(0);
  for (const { svg, files } of [...panels, ...tape])
    for (const text of [svg, files.svg, files.dxf]) expect(text).toContain('Not for use on a car');
  expect(cautions[0]).toMatch(/^Not for use on a car/);
});

test('who, date and what is superseded are on the sheets, and each corner has a code of its own', () => {
  const { panels, facts } = drawn({ side: 'both', letters: ['C'], supersedes: 'CF2345' });
  const text = panels.map(({ svg }) => svg).join('');
  for (const word of ['by A. Smith', '2026-11-26', 'supersedes CF2345']) expect(text).toContain(word);
  const codes = facts.map(({ code }) => code);
  expect(new Set(codes).size).toBe(2);
  expect(codes.every(isCode)).toBe(true);
  expect([...'0O1IL'].some((c) => CODE_ALPHABET.includes(c))).toBe(false);
});

test('what is wrong is said once for both sides, and nothing is drawn', () => {
  const { panels, problems } = drawn({ side: 'both', letters: ['C'], bed: 'bed', bed_mm: [100, 400] });
  expect(panels).toEqual([]);
  expect(problemLines(problems)).toEqual(['Width of the bed: expected 160 to 5000, got 100.']);
});

test('a ruler that measures 97 to 103 mm is made good, beyond it is refused in one sentence', () => {
  expect([97, 100, 103].map(refusedMeasure)).toEqual(['', '', '']);
  expect(refusedMeasure(96.9)).toMatch(/^97 to 103\smm \(a printer further off/);
  expect(refusedMeasure(null)).not.toBe('');
  const { panels } = drawn({ letters: ['C'], across_mm: 98 });
  expect(panels[0]!.svg).toContain('CORRECTED');
  expect(panels[0]!.files.svg + panels[0]!.files.dxf).not.toContain('CORRECTED');
});

test('a kerf is of a machine: a template that is traced along its line has none', () => {
  expect(cutRequest(defaultScenario(), wishOf({ kerf_mm: 0.2 }))!.kerf_mm).toBe(0);
  expect(cutRequest(defaultScenario(), wishOf({ kerf_mm: 0.2, bed: 'bed' }))!.kerf_mm).toBe(0.2);
  const text = drawn({ kerf_mm: 0.2, bed: 'bed' }).panels[0]!.files.svg;
  expect(text).toContain('the path allows for the kerf of 0.2 mm: set none at the machine');
});

test('what is wrong with panels of a set names them, once where it is alike', () => {
  expect(problemLines(drawn({ typed_pct: 2 }).problems)).toEqual([
    'Panel X: blanking: expected a plate wider than 6 mm, got 2 (its corners have no room).',
  ]);
  const slots = withValue(defaultScenario(), 'brakes.front.duct.blank', 'slots') as Scenario;
  expect(problemLines(drawn({ letters: ['B', 'C'] }, slots).problems)).toEqual([
    expect.stringMatching(/^Panel B, C: fasteners: expected room for 2 holes .*, got room for 0 /),
  ]);
});

test('a millimetre of a straight edge across 110 mm is worth 0.9 points', () => {
  const [fact] = drawn({ letters: ['C'] }).facts;
  expect(fact!.pointsPerMm).toBeCloseTo(100 / 110, 6);
  expect(worthLine(fact!, 2)).toBe('C, 60\u00a0%: 1\u00a0mm is 0.9 points, about 1.8\u00a0K at the face');
  // 3 strips of 25 mm across 110 mm
  expect(tapeLine(fact!)).toBe('C, 60\u00a0%: 3 strips cover 68.2\u00a0%');
});

test('files are named after their sheet', () => {
  const [page] = drawn({ letters: ['C'] }).panels;
  expect(cutFileName(page!, 'dxf')).toBe('panels-front-by-a-smith-2026-11-26-1-of-1.dxf');
  expect(isoDay(new Date(2026, 0, 5).getTime())).toBe('2026-01-05');
});

test('a form asks for the numbers that it has, no others', () => {
  const duct = defaultScenario().brakes.front.duct!;
  expect(numberKeys(duct)).toEqual(['mouth_width_mm', 'mouth_height_mm']);
  expect(numberKeys({ ...duct, mouth_shape: 'round', blank: 'perforated' })).toEqual([
    'mouth_width_mm',
    'blank_hole_mm',
  ]);
  expect(numberKeys({ ...duct, mouth_shape: 'outline', blank: 'slots' })).toEqual(['blank_slots']);
});

test('corners are typed one a line, and the first that is none is named', () => {
  const corners: [number, number][] = [
    [0, 0],
    [100.5, 0],
    [50, 80],
  ];
  expect(typedOutline(outlineText(corners))).toEqual({ corners });
  expect(typedOutline('0 0\n100,5; 0\n')).toEqual({ corners: corners.slice(0, 2) });
  expect(typedOutline('0 0\nten 0')).toEqual({
    wrong: 'Corner 2: expected two numbers, across and up, got “ten 0”.',
  });
});

test('an outline that crosses itself is refused by the corners as they are counted in their field', () => {
  const mouth_outline_mm = [
    [0, 0],
    [100, 100],
    [100, 0],
    [0, 100],
  ];
  const duct = { ...defaultScenario().brakes.front.duct!, mouth_shape: 'outline', mouth_outline_mm };
  const parsed = parseScenario(withValue(defaultScenario(), 'brakes.front.duct', duct));
  expect(parsed.ok ? [] : parsed.problems.map(outlineWords)).toEqual([
    'Corner 3: expected an outline that does not cross itself; this side meets that of corner 1, got [100,0].',
  ]);
});
