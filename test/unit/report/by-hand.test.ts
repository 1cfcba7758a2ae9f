import { describe, expect, it } from 'vitest';
import { byHand, type ByHand } from '../../../engine/report/by-hand/by-hand.ts';
import type { HandLine } from '../../../engine/report/by-hand/hand-line.ts';
import { shippedStint } from '../../../engine/scenario/library.ts';
import type { Scenario } from '../../../engine/scenario/schema.ts';
import { compile } from '../../../engine/stint/compile.ts';
import { run } from '../../../engine/stint/run.ts';
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
    const settled = line(own, 'Where a settled disc stands');
    expect(Math.abs(settled.found.value - settled.model!.value)).toBeLessThan(40);
  });

  it('follow from the numbers they name', () => {
    const energy = line(hand, 'Kinetic energy');
    const [κ, m, V1, V2] = ['κ', 'm', 'V₁', 'V₂'].map((symbol) => given(energy, symbol));
    expect(energy.found.value).toBeCloseTo(0.5 * κ! * m! * (V1! ** 2 - V2! ** 2), 6);
    const heat = line(hand, 'Of it, heat of all four brakes');
    expect(given(heat, 'E − Q')).toBeCloseTo(energy.found.value - heat.found.value, 6);
    const own = line(hand, 'Of it, heat of this brake');
    expect(own.found.value).toBeCloseTo(given(own, 's') * heat.found.value, 6);
    const ram = line(hand, 'Dynamic pressure');
    expect(ram.found.value).toBeCloseTo(0.5 * given(ram, 'ρ') * given(ram, 'V') ** 2, 6);
    const mouth = line(hand, 'Loss of the blanked mouth');
    expect(mouth.found.value).toBeCloseTo(((1.707 - 0.3) / 0.3) ** 2, 6);
  });

  it('have nothing of a duct where there is none, nor of vanes in a solid disc', () => {
    const solid = followed(shippedStint('club-evening'), 1);
    expect(linesOf(solid).some(({ what }) => /duct|mouth|vane passages/.test(what))).toBe(false);
  });

  it('meet less air behind another car', () => {
    const behind = followed(changed({ 'traffic.gap_m': 8 }));
    expect(given(line(behind, 'Dynamic pressure'), 'q/q∞')).toBeLessThan(0.9);
  });

  it('name a source each, and a check that exists', () => {
    const cases = filesUnder('test/validation').map((path) => path.split('/')[2]);
    for (const { what, source, check } of linesOf(hand)) {
      expect(source, what).not.toBe('');
      if (check) expect(cases, what).toContain(check);
    }
  });
});
