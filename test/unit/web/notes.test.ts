import fc from 'fast-check';
import { afterEach, describe, expect, it } from 'vitest';
import { blankings } from '../../../engine/advise/blankings.ts';
import { finished } from '../../../engine/advise/finished.ts';
import { safeSpans } from '../../../engine/advise/safe-span.ts';
import { spread } from '../../../engine/advise/spread.ts';
import type { Scenario } from '../../../engine/index.ts';
import { defaultScenario, shippedStint, stints } from '../../../engine/scenario/library.ts';
import { compile } from '../../../engine/stint/compile.ts';
import { run } from '../../../engine/stint/run.ts';
import { IN, OUT } from '../../../web/charts/ledger-parts.ts';
import { blankingColumns } from '../../../web/display/blanking-words.ts';
import { differenceOf } from '../../../web/display/difference.ts';
import { keyOf } from '../../../web/display/note-key.ts';
import type { Line, Told } from '../../../web/pages/stint/notes/note.ts';
import { noteOf } from '../../../web/pages/stint/notes/notes.ts';
import { markedChange } from '../../../web/pages/stint/notes/marked-change.ts';
import { driverNotes } from '../../../web/pages/stint/notes/driver-notes.ts';
import { marked } from '../../../web/pages/stint/notes/sentence-notes.ts';
import { plainText, sentenceOf, textOf } from '../../../web/display/sentence.ts';
import { followChoice } from '../../../web/display/units.ts';
import { anyScenario } from '../../support/random-scenario.ts';
import { changed } from '../../support/stints.ts';
import { numberOf, workedOut } from '../../support/worked-out.ts';

const shipped = defaultScenario();

const bare = (scenario: Scenario): Told => ({
  run: { scenario, result: run(compile(scenario)) },
  pinned: null,
  spans: null,
  spread: null,
  maps: null,
});
const whole = (scenario: Scenario): Told => ({
  ...bare(scenario),
  spans: finished(safeSpans(scenario)),
  spread: finished(spread(scenario, { draws: 12, seed: 1 })),
});

const told = { ...whole(shipped), maps: finished(blankings(shipped)) };
const front = told.run.result.corners[0]!;

afterEach(() => followChoice(() => ''));

const sidesOf = ({ filled }: Line): [left: string, right: string] => {
  const at = filled.lastIndexOf(' = ');
  return [filled.slice(0, at), filled.slice(at + 3)];
};

/** Every line gives what stands right of it, to the last digit that is printed. */
function expectSums(lines: readonly Line[]): void {
  for (const line of lines.filter(({ filled }) => filled.includes(' = '))) {
    const [left, right] = sidesOf(line);
    const digits = /\.(\d+)/.exec(right)?.[1]!.length ?? 0;
    expect(Math.abs(workedOut(left) - numberOf(right)), line.filled).toBeLessThanOrEqual(
      0.5 * 10 ** -Math.max(digits, 1) + 1e-9,
    );
  }
}

/** The sums hold, and the last of them gives the printed figure within half a step of it. */
function expectFigure(key: string, step: number, of: Told = told): boolean {
  const note = noteOf(key, of);
  if (!note) return false;
  expectSums(note.lines);
  const filled = note.lines.filter((line) => line.filled !== '');
  const results = filled.map((line) => Math.abs(numberOf(sidesOf(line)[1])));
  if (note.value === 'none') return true;
  if (note.value.startsWith('less than')) expect(results[0]).toBeLessThan(0.5 + 1e-9);
  else {
    const figure = Math.abs(numberOf(note.value.replace('panel\u00a0', '')));
    const least = Math.min(...results.map((found) => Math.abs(found - figure)));
    expect(least, `${key}: ${note.value} of ${JSON.stringify(note.lines)}`).toBeLessThanOrEqual(
      step / 2 + 1e-9,
    );
  }
  return true;
}

const VERDICT = { hot: 1, cold: 1, nearest: 1, swing: 1, width: 1, peak: 5, coldest: 5 } as const;
const LAP = { faceMin: 5, faceMean: 5, faceMax: 5, bulkMax: 5, coldest: 5, hardStops: 1 } as const;

describe('a note', () => {
  it('gives the figure of a verdict, in °C and in °F', () => {
    for (const [name, step] of Object.entries(VERDICT)) {
      for (const corner of told.run.result.corners) {
        expect(expectFigure(keyOf(name, corner), step), name).toBe(true);
        followChoice(() => '°F');
        expect(expectFigure(keyOf(name, corner), step === 5 ? 10 : 1), name).toBe(true);
        followChoice(() => '');
      }
    }
  });

  it('gives the figures of any stint', () => {
    fc.assert(
      fc.property(anyScenario, (scenario) => {
        const any = bare(scenario);
        for (const corner of any.run.result.corners) {
          for (const [name, step] of Object.entries(VERDICT)) expectFigure(keyOf(name, corner), step, any);
          for (const { lap } of corner.laps)
            for (const [name, step] of Object.entries(LAP))
              expect(expectFigure(keyOf(`lap.${name}`, corner, lap), step, any)).toBe(true);
        }
      }),
      { numRuns: 12, seed: 1 },
    );
  });

  it('gives every figure of the lap table, in degrees Fahrenheit too', () => {
    followChoice(() => '°F mph');
    for (const [name, step] of Object.entries(LAP))
      expect(expectFigure(keyOf(`lap.${name}`, front, 10), 2 * step), name).toBe(true);
  });

  it('says how far past its limit the first lap out is', () => {
    const note = noteOf(keyOf('firstOut', front), told)!;
    expectSums(note.lines);
    expect(note.value).toBe(`lap\u00a0${front.verdict.firstLapOut}`);
    expect(numberOf(sidesOf(note.lines[0]!)[1])).toBeGreaterThan(0);
  });

  it('gives span, proposal and margin', () => {
    const [low, high] = noteOf(keyOf('span', front), told)!.lines.map((line) => sidesOf(line));
    expect(noteOf(keyOf('span', front), told)!.value).toBe(
      `${workedOut(low![0])} to\u00a0${workedOut(high![0])}\u00a0%`,
    );
    expect(expectFigure(keyOf('spare', front), 1)).toBe(true);
    const ends = noteOf(keyOf('fit', front), told)!.lines[0]!.filled.split(' ≤ ').map(numberOf);
    expect(ends).toEqual(ends.toSorted((a, b) => a - b));
  });

  it('tells of a proposal when another keeps more runs in, but for chance', () => {
    const [first, ...others] = told.spans!;
    const counted = (runs: number) => ({
      ...first!.proposal!,
      count: { in: runs, hot: 100 - runs, cold: 0, both: 0, notJudged: 0 },
    });
    const whatOf = (all: number[]): string => {
      const span = { ...first!, proposal: counted(68), candidates: all.map(counted) };
      return noteOf(keyOf('fit', front), { ...told, spans: [span, ...others] })!.what;
    };
    expect(whatOf([68, 69, 57])).toContain('same 100 runs');
    expect(whatOf([68, 69, 57])).toContain('Another keeps 69 in, by no more than chance gives.');
    expect(whatOf([68, 57])).not.toContain('Another');
  });

  it('gives what is missed and what would help where nothing holds', () => {
    const narrow = changed({ 'brakes.front.window.face_peak_C': 520 }, shipped);
    const helpless = { ...bare(narrow), spans: finished(safeSpans(narrow)) };
    expect(helpless.spans[0]!.none?.why).toBe('swing');
    const corner = helpless.run.result.corners[0]!;
    for (const name of ['noneSwing', 'noneWidth', 'gain', 'missedHot', 'missedCold'])
      expect(expectFigure(keyOf(name, corner), 1, helpless), name).toBe(true);
  });

  it('gives the counts of the draws', () => {
    const names = ['runs', 'alsoRuns', 'fails.hot', 'fails.cold'];
    expect(names.filter((name) => expectFigure(keyOf(name, front), 0)).length).toBeGreaterThan(2);
  });

  it('gives how far left and right part', () => {
    const apart = changed({ 'blanking_pct.front_left': 20, 'blanking_pct.front_right': 80 }, shipped);
    const sides = bare(apart);
    expect(expectFigure(keyOf('pull', sides.run.result.corners[0]!), 1, sides)).toBe(true);
  });

  it.each([...IN, ...OUT])('gives heat and share of the part "%s", rounded so that parts add up', (part) => {
    for (const lap of [1, 2, 10, 'stint'])
      for (const corner of told.run.result.corners) {
        const note = noteOf(keyOf(`ledger.${part}`, corner, lap), told)!;
        expectSums(note.lines);
        const [heat, share] = note.value.split(', ').map(numberOf);
        const [made, parts] = note.lines
          .filter(({ filled }) => filled !== '')
          .map((line) => numberOf(sidesOf(line)[1])) as [number, number];
        const digits = /\.(\d+)/.exec(note.value)?.[1]!.length ?? 0;
        expect(Math.abs(made - heat!), JSON.stringify(note.lines)).toBeLessThanOrEqual(1.5 * 10 ** -digits);
        expect(Math.abs(parts - share!), note.value).toBeLessThanOrEqual(1.5);
      }
  });

  it('gives the columns of all blankings, and a lap between two of them', () => {
    for (const { key } of blankingColumns)
      for (const pct of [0, 40, 70, 100]) {
        const map = told.maps[0]!;
        if (key === 'firstOut') expectSums(noteOf(keyOf('map.firstOut', map, pct), told)!.lines);
        else expect(expectFigure(keyOf(`map.${key}`, map, pct), 1), key).toBe(true);
      }
    for (const pct of [0, 33, 57, 72, 98, 100]) {
      expect(expectFigure(keyOf('point.peak', front, 9, pct), pct % 5 === 0 ? 9999 : 5)).toBe(true);
      expect(expectFigure(keyOf('point.spare', front, 9, pct), 1)).toBe(true);
    }
  });

  it('gives the figures of the driver’s line, in °C and in °F', () => {
    const seen = new Set<string>();
    for (const stint of stints) {
      const of = bare(shippedStint(stint.id));
      for (const unit of ['', '°F']) {
        followChoice(() => unit);
        for (const corner of of.run.result.corners)
          for (const name of Object.keys(driverNotes))
            if (expectFigure(keyOf(name, corner), /face|caliper|fluid/.test(name) ? (unit ? 10 : 5) : 1, of))
              seen.add(name);
      }
    }
    expect(seen).toEqual(new Set(Object.keys(driverNotes)));
  });

  it('gives each number of what changed against the pinned run, and no other', () => {
    const pinned = bare(
      changed({ 'blanking_pct.front': 50, 'brakes.front.window.bite_C': 260 }, shipped),
    ).run;
    const against = { ...told, pinned };
    const words = differenceOf(pinned, told.run, 'front');
    const { pieces, keys } = markedChange(words, front, against);
    expect(textOf(pieces)).toBe(words);
    expect(keys.length).toBeGreaterThan(4);
    expect(textOf(pieces.filter(({ about }) => !about))).not.toMatch(/\d\sK/);
    for (const { text, about } of pieces)
      if (about) {
        expect(noteOf(about, against)!.value).toBe(text);
        if (about.startsWith('changed')) expect(expectFigure(about, 1, against)).toBe(true);
      }
  });

  it.each([
    [{}, 'width', 110],
    [{ blank_from: 'top' }, 'height', 100],
    [{ mouth_shape: 'round' }, 'area', (Math.PI / 4) * 110 ** 2],
    [{ blank: 'hole' }, 'area', 110 * 100],
  ] as const)('measures what is covered of a mouth that is %j by its %s', (form, by, whole) => {
    const { duct } = shipped.brakes.front;
    const of = structuredClone({ ...told, maps: null });
    of.run.scenario = {
      ...shipped,
      brakes: { ...shipped.brakes, front: { ...shipped.brakes.front, duct: { ...duct!, ...form } } },
    };
    expect(expectFigure(keyOf('blanked', front, 70), 1, of)).toBe(true);
    const { equation, filled } = noteOf(keyOf('blanked', front, 70), of)!.lines[0]!;
    expect(equation).toBe(`B = 100 · covered ${by} / ${by} of the mouth`);
    expect(numberOf(filled.split(' / ')[1]!)).toBeCloseTo(whole, 0);
  });

  it('is none where there is no such number', () => {
    for (const key of ['', 'swing', 'nothing|front|both', 'span|front|left', 'lap.faceMax|front|both|99'])
      expect(noteOf(key, told)).toBeNull();
    expect(noteOf(keyOf('span', front), { ...told, spans: null })).toBeNull();
  });
});

describe('the sentence', () => {
  const read = (of: Told) =>
    marked(sentenceOf(of.run.result, of.run.scenario, { spans: of.spans, spread: of.spread }), of);

  it.each(['sorrelby-20', 'restart', 'hour', 'night-rain', 'club-evening'])(
    'keeps its words in "%s", and every unit in it stands after a number with a note',
    (id) => {
      const of = whole(id === 'sorrelby-20' ? shipped : shippedStint(id));
      const before = sentenceOf(of.run.result, of.run.scenario, { spans: of.spans, spread: of.spread });
      const { sentence, keys } = read(of);
      expect(plainText(sentence)).toBe(plainText(before));
      expect(keys.length).toBeGreaterThan(3);
      const pieces = [...sentence.lead, ...sentence.rest, ...sentence.doubt];
      const quiet = textOf(pieces.filter(({ about }) => about === undefined));
      expect(quiet).not.toMatch(/\d\s(K|%)/);
      const ofDriver = textOf(sentence.driver.filter(({ about }) => about === undefined));
      expect(ofDriver).not.toMatch(/\d\s(K|%|°C|min)/);
      for (const { text, about } of [...pieces, ...sentence.driver])
        if (about) {
          expect(noteOf(about, of)!.value).toBe(text);
          expectSums(noteOf(about, of)!.lines);
        }
    },
  );

  it('marks each number with the note of that very number', () => {
    const { sentence } = read(told);
    const pairs = [...sentence.lead, ...sentence.rest, ...sentence.doubt].flatMap(({ text, about }) =>
      about ? [`${about.split('|').slice(0, 2).join(' ')}: ${text.replaceAll('\u00a0', ' ')}`] : [],
    );
    expect(pairs).toMatchObject([
      'blanked front: 70 %',
      'firstOut front: lap 6',
      'hot front: 17 K',
      expect.stringMatching(/^span front: \d+ to \d+ %$/),
      'fit front: panel C (60 %)',
      expect.stringMatching(/^spare front: \d+ K$/),
      'blanked rear: 50 %',
      expect.stringMatching(/^nearest rear: \d+ K$/),
      'reach rear: 82 %',
      expect.stringMatching(/^unknowns front: \d+ unsure values$/),
      expect.stringMatching(/^runs front: \d+ of 12$/),
      expect.stringMatching(/^fails\.hot front: \d+ too hot$/),
      expect.stringMatching(/^alsoRuns rear: \d+$/),
    ]);
  });
});
