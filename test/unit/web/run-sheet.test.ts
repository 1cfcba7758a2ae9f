import { describe, expect, it } from 'vitest';
import { defaultScenario } from '../../../engine/scenario/library.ts';
import { isExampleWindow } from '../../../web/display/example-window.ts';
import { heightOf, pageRule, usualPaper } from '../../../web/print/paper.ts';
import { dateWords, headRows, wheelRows, wheelsOf, windowLines } from '../../../web/print/run-sheet.ts';
import { sampleResult } from '../../support/sample-result.ts';

const scenario = defaultScenario();
const result = sampleResult();

const given = (front: string, rear: string) => {
  const { brakes } = scenario;
  const by = (axle: 'front' | 'rear', source: string) => ({
    ...brakes[axle],
    window: { ...brakes[axle].window, source, date: '2026-01-01' },
  });
  return { ...scenario, brakes: { front: by('front', front), rear: by('rear', rear) } };
};

describe('the paper of the run sheet', () => {
  it('is Letter where that is usual, else A4', () => {
    expect(['en-US', 'es-MX', 'fr-CA', 'en-GB', 'de', 'zh-Hant-TW'].map(usualPaper)).toEqual([
      'Letter',
      'Letter',
      'Letter',
      'A4',
      'A4',
      'A4',
    ]);
  });

  it('has 10 mm margins', () => {
    expect([heightOf('A4'), heightOf('Letter')]).toEqual([277, expect.closeTo(259.4, 9)]);
    expect(pageRule('Letter')).toBe('@page { size: letter portrait; margin: 10mm; }');
  });
});

describe('the run sheet', () => {
  it('tells what is known and leaves boxes for the rest', () => {
    const boxes = headRows(scenario, new Date(2026, 0, 5)).flat();
    const textOf = (label: string) => boxes.find((box) => box.label === label)?.text;
    expect(textOf('Event')).toBe('');
    expect(textOf('Driver')).toBe('');
    expect(textOf('Date')).toBe('2026-01-05');
    expect(textOf('Circuit and direction')).toBe('Sorrelby, clockwise');
    expect(textOf('Laps, fuel')).toMatch(/^20 laps, \d+\u00a0kg$/);
  });

  it('tells the way round of a circuit that is driven the other way', () => {
    const segments = scenario.circuit.segments.map((segment) => ({
      ...segment,
      ...(segment.turn ? { turn: segment.turn === 'left' ? ('right' as const) : ('left' as const) } : {}),
    }));
    const boxes = headRows({ ...scenario, circuit: { ...scenario.circuit, segments } }, new Date()).flat();
    expect(boxes.find(({ label }) => label.startsWith('Circuit'))?.text).toBe('Sorrelby, anticlockwise');
  });

  it('has a column for each wheel, whose sides are equal where they were computed once', () => {
    expect(wheelsOf(result).map(({ name }) => name)).toEqual([
      'front left',
      'front right',
      'rear left',
      'rear right',
    ]);
    for (const { name, parts, cells } of wheelRows(scenario, result, null)) {
      expect(
        cells.map((texts) => texts.length),
        name,
      ).toEqual([1, 2, 3, 4].map(() => parts.length));
      expect(cells[0], name).toEqual(cells[1]);
    }
  });

  it('predicts in figures, and leaves what is measured empty', () => {
    const rows = wheelRows(scenario, result, null);
    const row = (name: string) => rows.find((each) => each.name === name)?.cells[0];
    expect(row('Predicted')).toEqual([expect.stringMatching(/^\d{3}$/), expect.stringMatching(/^\d{3}$/)]);
    expect(row('Measured')).toEqual(['', '']);
    expect(row('Difference')).toEqual(['', '']);
    expect(row('Duct')?.[0]).toMatch(/^110 × 100\u00a0mm, 70\u00a0%/);
  });

  it.each(['', ' ', '-', '?', 'Example data', 'none', 'unknown', 'n/a', 'TBD'])(
    'takes "%s" for nobody, at any corner',
    (source) => {
      expect(isExampleWindow(given(source, 'the supplier'))).toBe(true);
      const sound = given('the supplier', 'the supplier');
      const side = { ...sound, sides: { rear_left: { window: { source } } } };
      expect([isExampleWindow(sound), isExampleWindow(side)]).toEqual([false, true]);
    },
  );

  it('says who gave the window, or that it is an example', () => {
    expect(isExampleWindow(scenario)).toBe(true);
    expect(windowLines(scenario)).toEqual(['Window: example, replace. Not for use on a car.']);
    expect(windowLines(given('the supplier', 'the supplier'))).toEqual([
      'Window given by the supplier, 2026-01-01.',
    ]);
    expect(windowLines(given('the supplier', 'us'))).toEqual([
      'Window, front, given by the supplier, 2026-01-01; rear, us, 2026-01-01.',
    ]);
  });

  it('writes a date the same in every country', () => {
    expect(dateWords(new Date(2026, 10, 9))).toBe('2026-11-09');
  });
});
