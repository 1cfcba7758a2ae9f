import fc from 'fast-check';
import type { ByHand } from '../../../engine/index.ts';
import { afterEach, describe, expect, it } from 'vitest';
import { fieldAt } from '../../../engine/scenario/keys.ts';
import { shippedStint, stints } from '../../../engine/scenario/library.ts';
import { FOOT_M, MILE_M, PSI_PA } from '../../../engine/units.ts';
import { nextStep, shownValue, storedValue } from '../../../web/controls/shown-value.ts';
import { rangeText, typedNumber } from '../../../web/controls/typed-number.ts';
import { dimensions } from '../../../web/charts/mouth-view.ts';
import { differenceOf } from '../../../web/display/difference.ts';
import { followedWords, handNumber, ownUnitsWords } from '../../../web/display/hand-words.ts';
import { kelvins, level, levelNumber, limit, withUnit } from '../../../web/display/format.ts';
import { conditionsLine, momentWords, mouthSize, stintTitle } from '../../../web/display/headings.ts';
import { printed, said } from '../../../engine/said.ts';
import { saidWords } from '../../../web/display/said-words.ts';
import { rangeWords } from '../../../web/display/range-words.ts';
import { plainText, sentenceOf } from '../../../web/display/sentence.ts';
import { tapeWords } from '../../../web/display/tape-words.ts';
import { distanceTicks, speedTicks, temperatureTicks } from '../../../web/display/ticks.ts';
import { followChoice, fromUnit, inUnit, OTHERS, roundStep, unitFor } from '../../../web/display/units.ts';
import { scenarioHash } from '../../../web/state/scenario-hash.ts';
import { sampleResult } from '../../support/sample-result.ts';
import { corner, resultOf } from '../../support/verdicts.ts';

const plain = (text: string): string => text.replaceAll('\u00a0', ' ');
const US = '°F mph in psi lb/min lb';
const choose = (units: string): void => followChoice(() => units);

afterEach(() => choose(''));

describe('conversions', () => {
  // NIST Special Publication 811 (2008), appendix B.8, and the definitions it rests on; temperatures: its B.8 and 8.5
  it.each([
    ['°C', 0, 32],
    ['°C', 100, 212],
    ['°C', -40, -40],
    ['K', 10, 18],
    ['K', 5 / 9, 1],
    ['mm', 25.4, 1],
    ['cm²', 6.4516, 1],
    ['m', 0.3048, 1],
    ['km', 1.609344, 1],
    ['km/h', 1.609344, 1],
    ['kPa', 6.894757293168, 1],
    ['Pa', 6894.757293168, 1],
    ['g/s', 453.59237 / 60, 1],
    ['kg', 0.45359237, 1],
  ])('%s %d is %d in the other unit, and back', (own, value, other) => {
    choose(US);
    expect(inUnit(value, unitFor(own))).toBeCloseTo(other, 12);
    expect(fromUnit(other, unitFor(own)) / (value || 1)).toBeCloseTo(value ? 1 : 0, 12);
  });

  it('agree with the factors by which the engine reads a log', () => {
    choose(US);
    expect(inUnit(FOOT_M, unitFor('m'))).toBeCloseTo(1, 15);
    expect(inUnit(MILE_M / 1000, unitFor('km'))).toBeCloseTo(1, 15);
    expect(inUnit(PSI_PA, unitFor('Pa'))).toBeCloseTo(1, 15);
  });

  it('take each unit by itself', () => {
    choose('lb/min');
    expect(withUnit(10, 'g/s')).toContain('lb/min');
    expect(plain(withUnit(10, 'kg'))).toBe('10 kg');
    choose('lb');
    expect(plain(withUnit(10, 'g/s'))).toBe('10 g/s');
    expect(plain(withUnit(10, 'kg'))).toBe('22 lb');
  });

  it('leave alone what the preferences name and nobody knows', () => {
    choose('furlong  °F');
    expect(plain(withUnit(10, 'm'))).toBe('10 m');
    expect(plain(withUnit(10, '°C'))).toBe('50 °F');
  });
});

describe('what is typed', () => {
  const owns = Object.keys(OTHERS).filter((own) => own !== 'K');

  it('is stored and shown again as it was, in every unit', () => {
    const typed = fc.integer({ min: -3_000_000, max: 3_000_000 }).map((n) => n / 1000);
    fc.assert(
      fc.property(fc.constantFrom(...owns), typed, fc.constantFrom('', US), (own, number, units) => {
        choose(units);
        const unit = unitFor(own);
        const read = typedNumber(`${number} ${unit.name}`, unit.name) ?? NaN;
        expect(read).toBe(number);
        expect(shownValue(storedValue(read, unit), unit)).toBe(number);
      }),
    );
  });

  it('is all that changes a scenario: the units shown leave its bytes and its hash alone', () => {
    const scenario = shippedStint(stints[0]!.id);
    const seen = (): string => {
      const result = resultOf(corner('front'), corner('rear'));
      void plainText(sentenceOf(result, scenario, { spans: null, spread: null }));
      void conditionsLine(scenario, []);
      return `${scenarioHash(scenario)} ${JSON.stringify(scenario)}`;
    };
    const metric = seen();
    choose(US);
    expect(seen()).toBe(metric);
  });

  it.each([
    ['80F', '°C', (80 - 32) / 1.8],
    ['80 °f', '°C', (80 - 32) / 1.8],
    ['27 C', '°F', 80.6],
    ['80', '°F', 80],
    ['62 mph', 'km/h', 62 * 1.609344],
    ['100 km/h', 'mph', 100 / 1.609344],
    ['100kph', 'mph', 100 / 1.609344],
    ['1.5in', 'mm', 38.1],
    ['1,5"', 'mm', 38.1],
    ['38 mm', 'in', 38 / 25.4],
    ['300 ft', 'm', 91.44],
    ['10 lbs', 'kg', 4.5359237],
  ])('"%s" where %s is shown is read with its unit', (text, shown, value) => {
    expect(typedNumber(text, shown)).toBeCloseTo(value, 12);
  });

  it.each([
    ['300 K', '°F'],
    ['20 mph', '°C'],
    ['5 ms', 'm'],
    ['20 lb', 'lb/min'],
    ['12 %', '°C'],
  ])('"%s" where %s is shown is refused', (text, shown) => {
    expect(typedNumber(text, shown)).toBeNull();
  });

  it('may be the end of its range, whatever that is in the unit shown', () => {
    choose(US);
    for (const [key, own] of [
      ['brakes.front.duct.hose_mm', 'mm'],
      ['conditions.altitude_m', 'm'],
      ['stint.pit_kmh', 'km/h'],
      ['conditions.ambient_C', '°C'],
    ] as const) {
      const { min = 0, max = 0 } = fieldAt(key) ?? {};
      for (const end of [min, max]) {
        const stored = storedValue(shownValue(end, unitFor(own)), unitFor(own), min, max);
        expect(stored).toBeGreaterThanOrEqual(min);
        expect(stored).toBeLessThanOrEqual(max);
        expect(stored).toBeCloseTo(end, 4);
      }
    }
  });

  it('is asked for in a range that is allowed', () => {
    expect(rangeText(-22, 131)).toBe('\u221222 to 131');
    choose(US);
    const unit = unitFor('m');
    const [min, max] = [shownValue(-400, unit), shownValue(5000, unit)];
    expect(rangeText(min, max)).toBe('\u22121312 to 16404');
    expect(rangeText(shownValue(5, unitFor('mm')), 1)).toBe('0.2 to 1');
  });
});

describe('steps', () => {
  it.each([
    ['conditions.ambient_C', '°C', 1],
    ['brakes.front.window.bite_C', '°C', 10],
    ['traffic.gap_m', 'm', 5],
    ['stint.pit_kmh', 'km/h', 5],
    ['car.fuel_kg', 'kg', 1],
    ['brakes.front.duct.strip_mm', 'mm', 0.05],
  ])('of %s are round in the other unit', (key, own, step) => {
    choose(US);
    expect(roundStep(fieldAt(key)?.step ?? 1, unitFor(own))).toBeCloseTo(step, 12);
    choose('');
    expect(roundStep(fieldAt(key)?.step ?? 1, unitFor(own))).toBe(fieldAt(key)?.step);
  });

  it('go to the next round number, wherever they start', () => {
    expect(nextStep(78.8, 1, 1)).toBe(79);
    expect(nextStep(80, 1, -1)).toBe(79);
    expect(nextStep(1.496063, 0.05, 1)).toBe(1.5);
  });
});

describe('numbers in print follow the units chosen', () => {
  it('a level to 10 °F, a limit as it was given, a difference without a zero', () => {
    choose(US);
    expect(plain(level(273.15 + 682))).toBe('1260 °F');
    expect(levelNumber(273.15 + 685)).toBe('1270');
    expect(plain(limit(273.15 + 650))).toBe('1202 °F');
    expect(plain(kelvins(10))).toBe('18 °F');
    expect(plain(kelvins(0.2))).toBe('less than 1 °F');
  });

  it('the sentence, with the margins of the table', () => {
    const scenario = shippedStint(stints[0]!.id);
    const hot = resultOf(
      corner('front', { status: 'hot', hotMargin_K: -32, firstLapOut: 5 }),
      corner('rear'),
    );
    const say = (): string => plain(plainText(sentenceOf(hot, scenario, { spans: null, spread: null })));
    expect(say()).toContain('by 32 K');
    choose(US);
    expect(say()).toContain('by 58 °F');
    expect(say()).not.toMatch(/\d (K|°C)\b/);
  });

  it('titles, the day, the speed and the mouth', () => {
    choose(US);
    const result = sampleResult({ cooling: 0.35 });
    const scenario = shippedStint(stints[0]!.id);
    expect(plain(stintTitle(result.corners[0]!))).toContain('1202 °F limit');
    const day = { ...scenario, conditions: { ...scenario.conditions, ambient_C: 26, altitude_m: 210 } };
    expect(plain(conditionsLine({ ...day, traffic: { ...day.traffic, gap_m: 20 } }, []))).toMatch(
      /79 °F, 689 ft, 66 ft behind$/,
    );
    expect(plain(momentWords(result, result.laps[3]!, result.laps[3]!.firstSample + 5, '0:01'))).toMatch(
      /\d+ mph$/,
    );
    expect(plain(mouthSize(110, 100))).toBe('4.33 × 3.94 in');
    expect(dimensions(110, 70)).toEqual(['3.03', '1.3']);
    const mouth = { mouth_width_mm: 110, strip_mm: 38, panels_pct: [] };
    expect(plain(tapeWords(70, mouth))).toBe('2 strips of 1.5 in give 69 %');
  });

  it('what changed against a pinned run', () => {
    const scenario = shippedStint(stints[0]!.id);
    const run = (facePeak_K: number) => ({
      scenario,
      result: resultOf(corner('front', { facePeak_K }), corner('rear')),
    });
    choose(US);
    expect(plain(differenceOf(run(880), run(890), 'front'))).toContain('18 °F hotter');
  });

  it('but for the lines worked by hand, which say so', () => {
    expect(ownUnitsWords()).toBe('');
    choose('mph');
    expect(ownUnitsWords()).toMatch(/^in °C, km\/h and the units of science/);
    const speed = { symbol: 'V', kind: 'speed', value: 50 } as const;
    expect(plain(handNumber(speed))).toBe('180 km/h');
    choose(US);
    const byHand = { peakFace_K: 273.15 + 650, place: 'turn 7', lap: 10, parts: [] };
    expect(plain(followedWords('Front', byHand as unknown as ByHand, 'Club'))).toContain('face 1202 °F');
  });

  it('a law’s range, and what the engine remarks', () => {
    choose(US);
    const range = { unit: 'K', quantity: 'temperature', low: 273.15, high: 373.15, from: 280, to: 290 };
    expect(plain(rangeWords(range as Parameters<typeof rangeWords>[0]))).toBe('32 to 212 °F');
    const pads = said`pads reach ${{ value: 711.8, unit: '°C', digits: 0 }}, above ${{ value: 700, unit: '°C' }}`;
    expect(printed(pads)).toBe('pads reach 712 °C, above 700 °C');
    expect(plain(saidWords(pads))).toBe('pads reach 1313 °F, above 1292 °F');
    const left = said`lap ${4}: ${{ value: 20.5, to: 900, unit: '°C' }}, ${{ value: 35, unit: 'K' }} from it, ${[{ value: 7.94, unit: 'kg', digits: 1 }, ' more']}`;
    expect(printed(left)).toBe('lap 4: 20.5 to 900 °C, 35 K from it, 7.9 kg more');
    expect(plain(saidWords(left))).toBe('lap 4: 68.9 to 1652 °F, 63 °F from it, 17.5 lb more');
    choose('');
    expect(plain(saidWords(left))).toBe(printed(left));
  });
});

describe('marks on an axis', () => {
  const texts = (ticks: { text: string }[]): string => ticks.map(({ text }) => text).join(' ');
  const ticks = (): string[] => [
    texts(temperatureTicks(273.15 + 90, 273.15 + 810)),
    texts(speedTicks(270 / 3.6)),
    texts(distanceTicks(5123)),
  ];

  it('are round in the unit shown, at the place of their value', () => {
    expect(ticks()).toEqual(['100 200 300 400 500 600 700 800', '100 200', '0 1 2 3 4 5']);
    choose(US);
    expect(ticks()).toEqual(['200 400 600 800 1000 1200 1400', '50 100 150', '0 1 2 3']);
    expect(texts(temperatureTicks(900, 1080))).toBe('1200 1300 1400');
    const [first] = temperatureTicks(273.15 + 90, 273.15 + 810);
    expect(first!.at).toBeCloseTo(273.15 + (200 - 32) / 1.8, 9);
  });
});
