import { describe, expect, it } from 'vitest';
import { byHand, type ByHand } from '../../../engine/report/by-hand/by-hand.ts';
import type { HandLine } from '../../../engine/report/by-hand/hand-line.ts';
import { shippedStint } from '../../../engine/scenario/library.ts';
import type { Scenario } from '../../../engine/scenario/schema.ts';
import { compile } from '../../../engine/stint/compile.ts';
import { run } from '../../../engine/stint/run.ts';
import { slabPeak } from '../../../engine/report/by-hand/slab.ts';
import { celsius } from '../../../engine/units.ts';
import { handNumber } from '../../../web/display/hand-words.ts';
import { peakUnderFallingFlux } from '../../support/exact-slab.ts';
import { filesUnder } from '../../support/tree.ts';
import { changed } from '../../support/stints.ts';

function followed(scenario: Scenario, corner = 0): ByHand {
  const model = compile(scenario);
  const found = byHand(model, run(model), corner);
  if (!found) throw new Error('nothing to follow');
  return found;
}

const linesOf = ({ parts }: ByHand): HandLine[] => parts.flatMap(({ lines }) => lines);
const line = (hand: ByHand, start: string): HandLine => {
  const found = linesOf(hand).find(({ what }) => what.startsWith(start));
  if (!found) throw new Error(`no line: ${start}`);
  return found;
};
const given = ({ given }: HandLine, symbol: string): number =>
  given.find((value) => value.symbol === symbol)!.value;

/** Close behind another car on all push laps, for a share of each. */
function behindFor(share: number): Scenario {
  const scenario = changed({ 'traffic.gap_m': 8 });
  const phases = scenario.stint.phases.map((phase) =>
    phase.kind === 'push' ? { ...phase, traffic_share: share, tow: false } : phase,
  );
  return { ...scenario, stint: { ...scenario.stint, phases } };
}
const behindAll = (): Scenario => behindFor(1);
const behindHalf = (): Scenario => behindFor(0.5);

const corrected = (): Scenario =>
  changed({
    'correction.heat.factor': 1.2,
    'correction.cooling.factor': 0.9,
    'correction.emissivity.factor': 1.1,
  });

describe('the mouth by hand', () => {
  it('has the law of its blank: a plate of many holes is reckoned with its own', () => {
    const plate = { 'brakes.front.duct.blank': 'perforated', 'blanking_pct.front': 70 };
    const mouth = line(followed(changed(plate)), 'Loss of the blanked mouth');
    const closed = 1 - given(mouth, 'f');
    expect(mouth.found.value).toBeCloseTo((0.5 + given(mouth, 'τ') * closed + closed ** 2) / 0.3 ** 2, 1);
    expect(mouth.check).toBeNull();
    const taped = line(followed(changed({ 'blanking_pct.front': 70 })), 'Loss of the blanked mouth');
    expect(taped.found.value).toBeCloseTo((1.407 / 0.3) ** 2, 9);
    expect(taped.found.value).toBeGreaterThan(mouth.found.value);
  });
});

describe('the main numbers by hand', () => {
  const hand = followed(shippedStint('sorrelby-20'));

  it.each([0, 1])('come near to what the model has: corner %i of the default stint', (corner) => {
    const own = followed(shippedStint('sorrelby-20'), corner);
    const off = (start: string): number => {
      const { found, model } = line(own, start);
      return found.value / model!.value - 1;
    };
    // losses within the stop, and a cheek that is not thick
    expect(Math.abs(off('Mean rise'))).toBeLessThan(0.2);
    expect(Math.abs(off('Flash of the face'))).toBeLessThan(0.15);
  });

  it.each(['sorrelby-20', 'club-evening', 'hour', 'night-rain', 'restart'])(
    'balance within what the page says: %s',
    (id) => {
      for (const corner of [0, 1]) {
        const settled = line(followed(shippedStint(id), corner), 'Where a settled disc stands');
        const within_K = Number(/within (\d+)\u00a0K/.exec(settled.source)![1]);
        expect(Math.abs(settled.found.value - settled.model!.value)).toBeLessThan(within_K);
      }
    },
  );

  it('end at the number that the page shows, which is named first', () => {
    const model = compile(shippedStint('sorrelby-20'));
    const result = run(model);
    const own = byHand(model, result, 0)!;
    const lap = result.corners[0]!.laps.find(({ lap }) => lap === own.lap)!;
    expect(own.peakFace_K).toBe(lap.faceMax_K);
    const sum = line(own, 'The same by the model');
    expect(celsius(sum.found.value)).toBe(Math.round(celsius(lap.faceMax_K)));
    expect(given(sum, 'T₁') + given(sum, 'ΔT')).toBeCloseTo(sum.found.value, 9);
    // what is printed adds up too
    const printed = [...sum.given, sum.found].map((value) => parseFloat(handNumber(value)));
    expect(printed[0]! + printed[1]!).toBe(printed[2]);
    const hand = line(own, 'The face at its peak');
    expect(given(hand, 'T₁') + given(hand, 'ΔT')).toBeCloseTo(hand.found.value, 9);
    expect(Math.abs(hand.found.value - sum.found.value)).toBeLessThan(20);
  });

  it('know the flash of a thin cheek as the exact slab has it, and as a thick one where the stop is short', () => {
    for (const Fo of [0.05, 0.2, 0.5, 1.5]) expect(slabPeak(Fo)).toBeCloseTo(peakUnderFallingFlux(Fo), 4);
    const thick = (4 / (3 * Math.sqrt(2 * Math.PI))) * Math.sqrt(0.02);
    expect(slabPeak(0.02)).toBeCloseTo(thick, 4);
    const flash = line(hand, 'The same in a cheek');
    expect(given(flash, 'Fo')).toBeCloseTo(
      (given(flash, 'α') * given(line(hand, 'Flash of the face'), 't')) / given(flash, 'L') ** 2,
      9,
    );
    expect(flash.found.value).toBeCloseTo(
      (given(flash, 'p') * given(line(hand, 'Flash of the face'), 'q₀') * given(flash, 'L')) /
        given(flash, 'k'),
      6,
    );
  });

  it('follow from the numbers they name', () => {
    const energy = line(hand, 'Kinetic energy');
    const [κ, m, V1, V2] = ['κ', 'm', 'V₁', 'V₂'].map((symbol) => given(energy, symbol));
    expect(energy.found.value).toBeCloseTo(0.5 * κ! * m! * (V1! ** 2 - V2! ** 2), 6);
    const heat = line(hand, 'Of it, heat of all four brakes');
    expect(given(heat, 'E − Q')).toBeCloseTo(energy.found.value - heat.found.value, 6);
    const own = line(hand, 'Of it, heat of this brake');
    expect(own.found.value).toBeCloseTo(given(own, 's') * heat.found.value, 6);
  });

  it.each([
    ['the default stint', changed({})],
    ['a car behind another for half of the lap', behindHalf()],
    ['all corrections', corrected()],
    ['pillars', changed({ 'brakes.front.disc.vane_shape': 'pillars', 'brakes.front.disc.vanes': 60 })],
  ])('can be computed again from the numbers they name: %s', (_, scenario) => {
    const own = followed(scenario);
    const near = (start: string, equation: (of: (symbol: string) => number) => number): void => {
      const found = line(own, start);
      const of = (symbol: string): number => given(found, symbol);
      expect(found.found.value / equation(of), start).toBeCloseTo(1, 4);
    };
    const or1 = (start: string): number =>
      line(own, start).given.find(({ symbol }) => symbol === 'F')?.value ?? 1;
    near('Dynamic pressure', (of) => 0.5 * of('ρ') * of('V') ** 2 * of('r'));
    near('Loss of the blanked mouth', (of) => ((1.707 - of('f')) / of('f')) ** 2);
    near('Air through the duct', (of) => of('A') * Math.sqrt(2 * of('ρ') * of('Δp')));
    near('Reynolds number of the vane', (of) => (of('ṁ') * of('d')) / (of('A') * of('μ')));
    const Re = line(own, 'Reynolds number of the vane').found.value;
    near(
      'Nusselt number on their walls',
      (of) =>
        Math.hypot(of('Nu₁') ** 3, (of('E') * of('R') * of('Nu₂') * (Re / 1e4) ** of('m')) ** 3) ** (1 / 3),
    );
    const wetted = line(own, 'Coefficient on');
    const h_vanes = wetted.given.find(({ symbol }) => symbol === 'h₂')?.value ?? given(wetted, 'h');
    near('Coefficient on', (of) => of('h') * of('A₁') + h_vanes * of('A₂'));
    expect(given(wetted, 'h')).toBeCloseTo(
      (line(own, 'Nusselt number').found.value * given(wetted, 'k')) / given(line(own, 'Reynolds'), 'd'),
      6,
    );
    near(
      'What the vanes give',
      (of) => or1('What the vanes give') * of('ṁc') * (1 - Math.exp(-of('H') / of('ṁc'))),
    );
    near(
      'What both faces give',
      (of) => or1('What both faces') * Math.cbrt(of('hₜ') ** 3 + of('hₚ') ** 3) * of('A'),
    );
    near(
      'What faces, vane openings',
      (of) => of('εA') * of('σ') * (of('T') ** 2 + of('T₀') ** 2) * (of('T') + of('T₀')),
    );
    near('What the edge gives', (of) => of('G₁') + 1 / (1 / of('G₂') + 1 / of('G₃')));
    near('What goes through pads', (of) => 1 / (1 / of('G₁') + 1 / of('G₂') + 1 / of('G₃')));
    const ways = linesOf(own).filter(({ found }) => found.symbol === 'G');
    const all_WpK = ways.reduce((sum, { found }) => sum + found.value, 0);
    near('Where a settled disc', (of) => of('T₀') + line(own, 'Mean power').found.value / all_WpK);
    near('How fast', (of) => (of('m') * of('c')) / all_WpK);
    const share = line(own, 'Of it, heat of this brake');
    const factor = share.given.find(({ symbol }) => symbol === 'F')?.value ?? 1;
    expect(share.found.value).toBeCloseTo(
      factor * given(share, 's') * line(own, 'Of it, heat of all').found.value,
      6,
    );
  });

  it('print enough digits for a reader to come within half a percent', () => {
    const printed = ({ kind, value }: HandLine['found']): number =>
      parseFloat(handNumber({ symbol: '', kind, value }).replace(/\u00a0(?=\d{3})/g, ''));
    const read = (start: string, symbol: string): number =>
      printed(line(hand, start).given.find((value) => value.symbol === symbol)!);
    const vanes =
      read('What the vanes', 'ṁc') *
      (1 - Math.exp(-read('What the vanes', 'H') / read('What the vanes', 'ṁc')));
    expect(vanes / printed(line(hand, 'What the vanes').found)).toBeCloseTo(1, 2);
    const stop = line(hand, 'Flash of the face');
    const flash =
      ((4 / (3 * Math.sqrt(2 * Math.PI))) * read('Flash', 'q₀') * 1e6 * Math.sqrt(read('Flash', 't'))) /
      read('Flash', 'ξ');
    expect(Math.abs(flash / printed(stop.found) - 1)).toBeLessThan(0.006);
    expect(handNumber({ symbol: 't', kind: 'time', value: 2.5462 })).toBe('2.55\u00a0s');
    expect(handNumber({ symbol: 't', kind: 'time', value: 98.163 })).toBe('98.2\u00a0s');
    expect(handNumber({ symbol: 'k', kind: 'conductivity', value: 0.04273 })).toBe('0.0427\u00a0W/mK');
  });

  it('show each correction as a number of its own', () => {
    const plain = linesOf(hand).flatMap(({ given }) => given.map(({ name = '' }) => name));
    expect(plain.filter((name) => name.includes('correction'))).toEqual([]);
    const own = linesOf(followed(corrected())).flatMap(({ given }) => given);
    const named = own.filter(({ name = '' }) => name.includes('correction'));
    expect(named.map(({ symbol, value }) => [symbol, symbol === 'εA' ? 0 : value])).toEqual([
      ['F', 1.2],
      ['F', 0.9],
      ['F', 0.9],
      ['εA', 0],
    ]);
    expect(named[3]!.name).toContain('1.1');
    const share = given(line(followed(corrected()), 'Of it, heat of this'), 's');
    expect(share).toBe(given(line(hand, 'Of it, heat of this'), 's'));
  });

  it('explain every symbol that is not plain where it is first used', () => {
    const seen = new Map<string, string>();
    for (const { given } of linesOf(hand))
      for (const { symbol, name } of given) if (!seen.has(symbol)) seen.set(symbol, name ?? '');
    for (const symbol of [
      'κ',
      'γ',
      'ξ',
      's',
      'S',
      'r',
      'f',
      'Fo',
      'p',
      'Nu₁',
      'E',
      'R',
      'hₜ',
      'hₚ',
      'εA',
      'ΣG',
    ])
      expect(seen.get(symbol), symbol).toMatch(/\w/);
  });

  it('have nothing of a duct where there is none, nor of vanes in a solid disc', () => {
    const solid = followed(shippedStint('club-evening'), 1);
    expect(linesOf(solid).some(({ what }) => /duct|mouth|vane passages/.test(what))).toBe(false);
  });

  it('meet less air behind another car, in the ram pressure and in the flows, by the share of the time', () => {
    const at = (scenario: Scenario): [r: number, flow: number] => {
      const own = followed(scenario);
      return [given(line(own, 'Dynamic pressure'), 'r'), line(own, 'Air through the duct').found.value];
    };
    const [alone, behind, half] = [at(changed({})), at(behindAll()), at(behindHalf())];
    expect(behind[0]).toBeLessThan(0.9);
    // with the root of the pressure, but for what the turning vanes draw by themselves
    const fall = behind[1] / alone[1];
    expect(fall).toBeGreaterThan(Math.sqrt(behind[0]));
    expect(fall).toBeLessThan(Math.sqrt(behind[0]) + 0.02);
    half.forEach((value, i) => expect(value).toBeCloseTo((alone[i]! + behind[i]!) / 2, 6));
    const { name } = line(followed(behindHalf()), 'Dynamic pressure').given.at(-1)!;
    expect(name).toContain('50\u00a0% of the time');
  });

  it('name a source each, and a check that exists', () => {
    const cases = filesUnder('test/validation').map((path) => path.split('/')[2]);
    for (const { what, source, check } of linesOf(hand)) {
      expect(source, what).not.toBe('');
      if (check) expect(cases, what).toContain(check);
    }
  });
});
