import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { taped } from '../../engine/scenario/mouth.ts';
import { defaultScenario } from '../../engine/scenario/library.ts';
import {
  nearestPanel,
  nearestStrips,
  panelLetter,
  percentOfPanel,
  percentOfStrips,
  percentsOfStrips,
  stripEdges_mm,
  stripsToClose,
  stripStep,
} from '../../engine/scenario/tape.ts';

const mouth110 = { mouth_width_mm: 110, strip_mm: 38 };
const panels = [0, 40, 60, 75, 85];

const anyTape = fc.record({
  mouth_width_mm: fc.double({ min: 10, max: 400, noNaN: true }),
  strip_mm: fc.double({ min: 5, max: 150, noNaN: true }),
});
const anyShare = fc.oneof(fc.double({ min: 0, max: 100, noNaN: true }), fc.constantFrom(0, 100));

describe('strips of tape', () => {
  it('two strips of 38 mm cover 69 % of 110 mm and lie 0.9 points, 1 mm, from 70 %', () => {
    const fit = nearestStrips(70, mouth110);
    expect(fit.strips).toBe(2);
    expect(fit.pct).toBeCloseTo((100 * 76) / 110, 9);
    expect(fit.error_pct).toBeCloseTo(-0.909, 3);
    expect(fit.error_mm).toBeCloseTo(-1, 9);
    expect([fit.isExact, fit.isTrimmed]).toEqual([false, false]);
  });

  it('the last strip is cut at the edge of the mouth', () => {
    expect(stripsToClose(mouth110)).toBe(3);
    expect(percentOfStrips(3, mouth110)).toBe(100);
    expect(nearestStrips(95, mouth110)).toMatchObject({ strips: 3, isTrimmed: true, error_pct: 5 });
  });

  it('a strip wider than the mouth closes it', () => {
    const tape = { mouth_width_mm: 30, strip_mm: 50 };
    expect(percentOfStrips(1, tape)).toBe(100);
    expect(nearestStrips(49, tape).strips).toBe(0);
    expect(nearestStrips(51, tape).strips).toBe(1);
  });

  it('no extra strip is wasted on the half millimetre that a hand cannot lay', () => {
    expect(stripsToClose({ mouth_width_mm: 100.4, strip_mm: 25 })).toBe(4);
    expect(percentOfStrips(4, { mouth_width_mm: 100.4, strip_mm: 25 })).toBe(100);
    expect(stripsToClose({ mouth_width_mm: 101, strip_mm: 25 })).toBe(5);
  });

  it('a blanking within half a millimetre of whole strips counts as them', () => {
    expect(nearestStrips(69, mouth110).isExact).toBe(true);
    expect(stripStep(69, 1, mouth110)).toBe(100);
    expect(stripStep(69, -1, mouth110)).toBeCloseTo((100 * 38) / 110, 9);
  });

  it('from between two counts one strip more or less goes to the next whole one', () => {
    expect(stripStep(50, 1, mouth110)).toBeCloseTo((100 * 76) / 110, 9);
    expect(stripStep(50, -1, mouth110)).toBeCloseTo((100 * 38) / 110, 9);
    expect(stripStep(100, 1, mouth110)).toBe(100);
    expect(stripStep(0, -1, mouth110)).toBe(0);
  });

  it('strips meet inside the blanked part only', () => {
    expect(stripEdges_mm(100, mouth110)).toEqual([38, 76]);
    expect(stripEdges_mm((100 * 76) / 110, mouth110)).toEqual([38]);
    expect(stripEdges_mm(30, mouth110)).toEqual([]);
    expect(stripEdges_mm(0, mouth110)).toEqual([]);
  });

  it('no other whole number of strips comes nearer, on any mouth', () => {
    fc.assert(
      fc.property(anyTape, anyShare, (tape, share) => {
        const fit = nearestStrips(share, tape);
        for (let strips = 0; strips <= stripsToClose(tape); strips++)
          expect(Math.abs(percentOfStrips(strips, tape) - share)).toBeGreaterThanOrEqual(
            Math.abs(fit.error_pct) - 1e-6,
          );
        expect(fit.pct).toBeGreaterThanOrEqual(0);
        expect(fit.pct).toBeLessThanOrEqual(100);
        expect(fit.error_mm).toBeCloseTo(((fit.pct - share) / 100) * tape.mouth_width_mm, 6);
      }),
    );
  });

  it('more strips never cover less, and all of them cover the whole mouth', () => {
    fc.assert(
      fc.property(anyTape, (tape) => {
        const most = stripsToClose(tape);
        for (let strips = 1; strips <= most; strips++)
          expect(percentOfStrips(strips, tape)).toBeGreaterThan(percentOfStrips(strips - 1, tape));
        expect(percentOfStrips(most, tape)).toBe(100);
        expect(percentOfStrips(most + 3, tape)).toBe(100);
      }),
    );
  });

  it('so many strips are found again from the percent they give', () => {
    fc.assert(
      fc.property(anyTape, fc.nat(), (tape, pick) => {
        const strips = pick % (stripsToClose(tape) + 1);
        expect(nearestStrips(percentOfStrips(strips, tape), tape)).toMatchObject({ strips, isExact: true });
      }),
    );
  });

  it('pressing one strip more closes the mouth in as many presses as it takes strips, and back', () => {
    fc.assert(
      fc.property(anyTape, (tape) => {
        let [share, presses] = [0, 0];
        while (share < 100) [share, presses] = [stripStep(share, 1, tape), presses + 1];
        expect(presses).toBe(stripsToClose(tape));
        while (share > 0) [share, presses] = [stripStep(share, -1, tape), presses - 1];
        expect(presses).toBe(0);
      }),
    );
  });
});

describe('strips that lie over each other', () => {
  const lapped = { ...mouth110, strip_overlap_mm: 8 };

  it('cover so much less from the second on', () => {
    // 38, 68, 98 of 110 mm, and a fourth that is cut
    expect(percentsOfStrips(lapped).map((pct) => Math.round(pct * 1.1))).toEqual([0, 38, 68, 98, 110]);
    expect(nearestStrips(60, lapped)).toMatchObject({ strips: 2, isTrimmed: false });
    expect(stripEdges_mm(100, lapped)).toEqual([38, 68, 98]);
    expect(stripStep(30, 1, lapped)).toBeCloseTo((100 * 38) / 1.1 / 100, 9);
  });

  it('wider than the mouth close it with one, though the mouth is no wider than the overlap', () => {
    const wide = { mouth_width_mm: 30, strip_mm: 150, strip_overlap_mm: 40 };
    expect(nearestStrips(100, wide)).toMatchObject({ strips: 1, pct: 100 });
    expect(nearestStrips(40, wide).strips).toBe(0);
  });

  it('are as many as no other number comes nearer, and are found again', () => {
    const anyLapped = anyTape.chain((tape) =>
      fc
        .double({ min: 0, max: 0.5 * tape.strip_mm, noNaN: true })
        .map((strip_overlap_mm) => ({ ...tape, strip_overlap_mm })),
    );
    fc.assert(
      fc.property(anyLapped, anyShare, fc.nat(), (tape, share, pick) => {
        const all = percentsOfStrips(tape);
        const fit = nearestStrips(share, tape);
        expect(Math.abs(fit.error_pct)).toBeLessThanOrEqual(
          Math.min(...all.map((pct) => Math.abs(pct - share))) + 1e-6,
        );
        const strips = pick % all.length;
        expect(nearestStrips(all[strips]!, tape)).toMatchObject({ strips, isExact: true });
      }),
    );
  });
});

describe('strips over a mouth that is no rectangle', () => {
  const { duct } = defaultScenario().brakes.front;
  const round = taped({ ...duct!, mouth_shape: 'round', mouth_width_mm: 100, strip_mm: 25 });

  it('cover shares of a circle, the first and the last least', () => {
    expect(percentsOfStrips(round).map((pct) => Number(pct.toFixed(2)))).toEqual([0, 19.55, 50, 80.45, 100]);
    expect(nearestStrips(25, round)).toMatchObject({ strips: 1, isTrimmed: false });
    expect(nearestStrips(25, round).error_pct).toBeCloseTo(-5.45, 2);
    expect(nearestStrips(25, round).error_mm).toBeCloseTo(25 - 29.8, 2);
    expect(stripStep(30, 1, round)).toBeCloseTo(50, 9);
    expect(stripEdges_mm(75, round)).toEqual([25, 50]);
  });

  it('from the top go by its height, and half a millimetre is laid as well there', () => {
    const flat = taped({
      ...duct!,
      mouth_shape: 'oval',
      mouth_height_mm: 50,
      blank_from: 'top',
      strip_mm: 25,
    });
    expect(percentsOfStrips(flat).map((pct) => Number(pct.toFixed(6)))).toEqual([0, 50, 100]);
    expect(nearestStrips(50.5, flat).isExact).toBe(true);
    expect(nearestStrips(52, flat).isExact).toBe(false);
  });

  it('from the top of a rectangle need no geometry', () => {
    const upright = { ...mouth110, mouth_height_mm: 50, blank_from: 'top' as const };
    expect(percentsOfStrips(upright)).toEqual([0, 76, 100]);
    expect(nearestPanel(75, panels, upright)?.error_mm).toBe(0);
  });
});

describe('panels', () => {
  it('the set is lettered in its order and a letter finds its percent', () => {
    expect(panels.map((_, place) => panelLetter(place)).join('')).toBe('ABCDE');
    expect(percentOfPanel('C', panels)).toBe(60);
    expect(['F', 'I', ''].map((letter) => percentOfPanel(letter, panels))).toEqual([null, null, null]);
  });

  it('the nearest panel to 70 % is D, 5 points and 5.5 mm more closed', () => {
    expect(nearestPanel(70, panels, mouth110)).toMatchObject({
      letter: 'D',
      pct: 75,
      error_pct: 5,
      isExact: false,
    });
    expect(nearestPanel(70, panels, mouth110)?.error_mm).toBeCloseTo(5.5, 9);
  });

  it('of two panels as near, the more open is taken', () => {
    expect(nearestPanel(50, panels, mouth110)?.letter).toBe('B');
  });

  it('an empty set has no panel', () => {
    expect(nearestPanel(50, [], mouth110)).toBeNull();
  });

  it('no other panel of any set comes nearer, and its letter leads back to its percent', () => {
    const anySet = fc.uniqueArray(fc.integer({ min: 0, max: 100 }), { minLength: 1, maxLength: 8 });
    fc.assert(
      fc.property(anySet, anyShare, (set, share) => {
        const ascending = [...set].sort((a, b) => a - b);
        const fit = nearestPanel(share, ascending, mouth110)!;
        for (const pct of ascending)
          expect(Math.abs(pct - share)).toBeGreaterThanOrEqual(Math.abs(fit.error_pct) - 1e-6);
        expect(percentOfPanel(fit.letter, ascending)).toBe(fit.pct);
      }),
    );
  });
});
