import { Clipper, FillRule } from 'clipper2-ts';
import { describe, expect, it } from 'vitest';
import type { Lettering } from '../../../engine/cut/drawing.ts';
import { codeOf, faceOf } from '../../../engine/cut/face.ts';
import { FASTENERS, PULL_TAB } from '../../../engine/cut/fastener.ts';
import type { Panel } from '../../../engine/cut/panel.ts';
import { boxOf, flattened, insideOf, sidesOf } from '../../../engine/cut/path.ts';
import { pieceOf } from '../../../engine/cut/piece.ts';
import { cutsOf, mirroredPlate, plateArea_mm2 } from '../../../engine/cut/plate.ts';
import { distanceFrom } from '../../../engine/cut/rim.ts';
import { radiusOf, tangent, turn } from '../../../engine/cut/side.ts';
import { problemLine } from '../../../engine/scenario/problem.ts';
import type { Loop } from '../../../engine/duct/loop.ts';
import { BLANKS, MOUTHS, panelOf, wishOf, WORDS } from '../../support/cut.ts';

const all = Object.entries(MOUTHS).flatMap(([name, mouth]) =>
  BLANKS.flatMap((blank) =>
    (blank.blank === 'perforated' ? [70, 80, 90] : [35, 60, 85]).map((blanking_pct) => ({
      name: `${name}, ${Object.values(blank).join(' ')}, ${blanking_pct} %`,
      wish: wishOf(mouth, blank, { blanking_pct }),
      panel: panelOf(mouth, blank, { blanking_pct }),
    })),
  ),
);
const linesOf = ({ problems }: Panel): string[] => problems.map(problemLine);
const polygon = (loop: Loop): { x: number; y: number }[] =>
  flattened(loop).map(({ x_mm, y_mm }) => ({ x: x_mm, y: y_mm }));

describe('a panel', () => {
  it.each(all)('closes the planned share of $name, its round corners counted', ({ wish, panel }) => {
    const planned = wish.coveredAt(wish.blanking_pct).covered_mm2;
    const inMouth = panel.plates.flatMap(({ edge, openings }) =>
      Clipper.intersectD(
        [polygon(edge), ...openings.map(polygon)],
        [polygon(wish.mouth.loop)],
        FillRule.NonZero,
        4,
      ),
    );
    expect(Math.abs(Clipper.areaPathsD(inMouth)) / planned).toBeCloseTo(1, 3);
    expect(panel.closes_mm2 / planned).toBeCloseTo(1, 5);
  });

  it('can be made of every kind of blank in every mouth', () => {
    const refused = all.filter(({ panel }) => panel.problems.length > 0);
    expect(refused.map(({ name, panel }) => `${name}: ${linesOf(panel).join()}`)).toEqual([]);
  });

  it('has no corner sharper than R3 but on the rim of its mouth, and edges that run smoothly', () => {
    for (const { wish, panel } of all) {
      for (const { edge } of panel.plates) {
        const sides = sidesOf(edge);
        const sharpest = Math.max(
          ...sides.map((side, i) => Math.abs(turn(tangent(sides.at(i - 1)!, 1), tangent(side, 0)))),
        );
        expect(sharpest).toBeLessThan(0.02);
        const radii = sides.filter(({ bulge }) => bulge !== 0).map(radiusOf);
        expect(Math.min(...radii)).toBeGreaterThan(wish.corner_mm - 1e-6);
      }
    }
  });

  it('stands out of its mouth with at least two tabs and one to pull it by, each with its hole clear of edge and mouth', () => {
    for (const { wish, panel } of all) {
      const isInside = insideOf(wish.mouth.loop);
      for (const { edge, holes } of panel.plates) {
        expect(holes.filter(({ use }) => use === 'fastener').length).toBeGreaterThanOrEqual(2);
        expect(holes.filter(({ use }) => use === 'tether')).toHaveLength(1);
        for (const hole of holes) {
          expect(isInside(hole)).toBe(false);
          expect(insideOf(edge)(hole)).toBe(true);
          expect(distanceFrom(edge)(hole)).toBeGreaterThan(hole.diameter_mm);
          expect(distanceFrom(wish.mouth.loop)(hole)).toBeGreaterThan(hole.diameter_mm);
        }
      }
    }
  });

  it('keeps its tabs and their holes however round its corners are', () => {
    for (const mouth of [{ mouth_width_mm: 180, mouth_height_mm: 140 }, MOUTHS.oval!]) {
      for (const fastener of ['quarter-turn', 'M4', 'M5'] as const) {
        for (const corner_mm of [6, 9, 12]) {
          const { plates, problems } = panelOf(mouth, {}, { fastener, corner_mm });
          expect(problems).toEqual([]);
          const [{ edge, holes }] = plates as [(typeof plates)[0]];
          const fasteners = holes.filter(({ use }) => use === 'fastener').map(distanceFrom(edge));
          expect(fasteners.length).toBeGreaterThan(1);
          for (const mm of fasteners) expect(mm).toBeGreaterThan(FASTENERS[fastener].edge_mm - 0.5);
        }
      }
    }
  });

  it('has tabs whose area is that of their form', () => {
    const { plates, closes_mm2 } = panelOf(MOUTHS.rectangle!, {});
    const root = (1 - Math.PI / 4) * 9; // taken at both outer corners, given at both roots
    const tab = 2 * FASTENERS.M4.edge_mm * 2 * FASTENERS.M4.edge_mm - 2 * root + 2 * root;
    const pull = PULL_TAB.width_mm * PULL_TAB.length_mm;
    const [plate] = plates;
    const tabs = plate!.holes.length - 1;
    expect(plateArea_mm2(plate!)).toBeCloseTo(closes_mm2 + tabs * tab + pull, 1);
  });

  it('holds itself through the plate where it is asked to, and stays inside of its mouth but for the pull tab', () => {
    const wish = wishOf(MOUTHS.rectangle!, {}, { hold: 'holes', fastener: 'quarter-turn' });
    const { plates, problems } = panelOf(MOUTHS.rectangle!, {}, { hold: 'holes', fastener: 'quarter-turn' });
    expect(problems).toEqual([]);
    const [{ edge, holes }] = plates as [(typeof plates)[0]];
    const fasteners = holes.filter(({ use }) => use === 'fastener');
    expect(fasteners.map(({ diameter_mm }) => diameter_mm)).toEqual(fasteners.map(() => 8));
    expect(fasteners.every(insideOf(wish.mouth.loop))).toBe(true);
    for (const hole of fasteners) expect(distanceFrom(edge)(hole)).toBeGreaterThan(11.9);
    const box = boxOf([edge]);
    expect(box.right_mm - box.left_mm).toBeCloseTo(72 + (2 * (1 - Math.PI / 4) * 9 * 2) / 80, 2); // what four corners lose, made good
  });

  it('leaves a corner as it is that points into the mouth: an arc there would lie on the body', () => {
    const mouth_outline_mm: [number, number][] = [
      [0, 0],
      [120, 0],
      [120, 80],
      [70, 80],
      [60, 60],
      [50, 80],
      [0, 80],
    ];
    const notched = {
      mouth_shape: 'outline' as const,
      mouth_width_mm: 120,
      mouth_height_mm: 80,
      mouth_outline_mm,
    };
    const { plates, problems } = panelOf(notched, { blank: 'hole' }, { blanking_pct: 85 });
    expect(problems).toEqual([]);
    expect(distanceFrom(plates[0]!.edge)({ x_mm: 60, y_mm: 60 })).toBeLessThan(1e-6);
  });

  it('is itself when it is mirrored twice', () => {
    for (const { panel } of all) {
      for (const plate of panel.plates) expect(mirroredPlate(mirroredPlate(plate))).toEqual(plate);
    }
  });
});

describe('a panel that cannot be cut', () => {
  const only = (panel: Panel): string => {
    expect(linesOf(panel)).toHaveLength(1);
    return linesOf(panel)[0]!;
  };

  it('is refused where the hose could draw it in', () => {
    expect(only(panelOf(MOUTHS.rectangle!, {}, { hose_mm: 200 }))).toMatch(
      /^panel\.longest_mm: expected more than the hose of 200 mm, got 1\d\d(\.\d)? \(it could be drawn in\)$/,
    );
  });

  it('is refused where it is larger than its mouth and its tabs', () => {
    const smaller = wishOf({ mouth_width_mm: 60, mouth_height_mm: 80 }, {}).mouth;
    expect(only(panelOf(MOUTHS.rectangle!, {}, { mouth: smaller, blanking_pct: 85 }))).toMatch(
      /^panel\.size: expected inside of a mouth of 60 x 80 mm but for tabs, got '102\.1 x 80 mm' \(made for another mouth\?\)$/,
    );
  });

  it('is refused where its corners are sharper than R3', () => {
    expect(only(panelOf(MOUTHS.rectangle!, {}, { corner_mm: Number.NaN }))).toContain('at least 3');
    expect(only(panelOf(MOUTHS.rectangle!, {}, { corner_mm: 2 }))).toBe(
      'corner_mm: expected at least 3, got 2 (no sharp edges)',
    );
  });

  it('is refused where there is nothing to cut', () => {
    expect(only(panelOf(MOUTHS.rectangle!, {}, { blanking_pct: 0 }))).toBe(
      'panel.blanking_pct: expected more than 0, got 0 (nothing to cut)',
    );
  });

  it('is refused where the plate is narrower than its corners', () => {
    for (const [mouth, blanking_pct] of [
      [MOUTHS.rectangle!, 3],
      [{ mouth_width_mm: 110, mouth_height_mm: 100 }, 3], // it is found where a plate just begins
    ] as const)
      expect(only(panelOf(mouth, {}, { blanking_pct }))).toBe(
        'panel.blanking_pct: expected a plate wider than 6 mm, got 3 (its corners have no room)',
      );
  });

  it('is refused where a round corner would cut an opening', () => {
    const mouth_outline_mm: [number, number][] = [
      [0, 0],
      [150, 0],
      [150, 140],
    ];
    const sharp = {
      mouth_shape: 'outline' as const,
      mouth_width_mm: 1,
      mouth_height_mm: 1,
      mouth_outline_mm,
    };
    const slots = { blank: 'slots' as const, blank_slots: 6 };
    expect(panelOf(sharp, slots, { blanking_pct: 80 }).problems).toEqual([]);
    expect(only(panelOf(sharp, slots, { blanking_pct: 80, corner_mm: 12 }))).toBe(
      'corner_mm: expected less: 2 mm of plate round every opening, got 12 (a round corner cuts one)',
    );
  });

  it('is refused where its blank covers more than it says', () => {
    expect(only(panelOf(MOUTHS.rectangle!, { blank: 'perforated' }, { blanking_pct: 60 }))).toBe(
      'panel.blanking_pct: expected at least 65, got 60 (the least that such a blank covers)',
    );
  });

  it('is refused where no fastener finds room', () => {
    const lines = linesOf(
      panelOf(MOUTHS.rectangle!, { blank: 'perforated' }, { hold: 'holes', blanking_pct: 70 }),
    );
    expect(lines).toEqual([
      "panel.hold: expected room for 2 holes 9 mm from every edge (M4, hole 4.5 mm), got 'room for 0' (a smaller fastener, or tabs?)",
    ]);
  });
});

describe("a panel's face", () => {
  it('has its code on it, or asks beside the plate to write it there where no plate is wide enough', () => {
    const code = codeOf(WORDS);
    const withoutCode = all.filter(({ panel }) =>
      panel.plates.some((plate) => {
        const { drawing, leftOver } = faceOf(plate, WORDS);
        const isThere = drawing.letters.some(({ text }) => text === code);
        expect(leftOver.includes(`write on its face: ${code}`)).toBe(!isThere);
        return !isThere;
      }),
    );
    expect(withoutCode.map(({ name }) => name)).toEqual(['round, perforated, 70 %']); // holes up to its rim
  });

  it('says on a plain plate all there is to say, and every line lies on the plate', () => {
    const { plates } = panelOf(MOUTHS.rectangle!, {});
    const { drawing, leftOver } = faceOf(plates[0]!, { ...WORDS, supersedes: 'AF' });
    expect(leftOver).toEqual([]);
    expect(drawing.letters.map(({ text }) => text).slice(1)).toEqual([
      'C  60 %  front left',
      'UP',
      'OUT',
      'fits mouth rectangle, 120 x 80 mm',
      '2031-05-04  model 12ab 34cd',
      'supersedes AF',
    ]);
    const isOn = insideOf(plates[0]!.edge);
    expect(drawing.letters.every(({ at }) => isOn(at))).toBe(true);
    expect(drawing.strokes.flatMap(({ path }) => path).every(isOn)).toBe(true);
  });

  it('points OUT to the side of the car that its corner is on', () => {
    const { plates } = panelOf(MOUTHS.rectangle!, {});
    for (const side of ['left', 'right'] as const) {
      const { letters } = pieceOf({ plate: plates[0]!, words: { ...WORDS, side }, kerf_mm: 0 }).drawing;
      const x = (word: string): number => letters.find(({ text }) => text === word)!.at.x_mm;
      expect(Math.sign(x('OUT') - x('UP'))).toBe(outboardOf(side));
    }
  });

  it('has no line on another', () => {
    for (const { panel } of all) {
      for (const plate of panel.plates) {
        const lines = faceOf(plate, { ...WORDS, supersedes: 'AF' }).drawing.letters;
        for (const [i, a] of lines.entries()) {
          for (const b of lines.slice(i + 1))
            expect([a.text, b.text, isOn(a, b)]).toEqual([a.text, b.text, false]);
        }
      }
    }
  });

  it('keeps clear of every edge and hole', () => {
    for (const { panel } of all) {
      for (const plate of panel.plates) {
        for (const { at } of faceOf(plate, WORDS).drawing.letters) {
          for (const cut of cutsOf(plate)) expect(distanceFrom(cut)(at)).toBeGreaterThan(1.9);
        }
      }
    }
  });
});

/**
 * Where outboard lies for who reads the face: right above 0. Axes of ISO 8855, x to the front of the car, y to its left, z up. The face
 * looks to the front, its reader to the rear; what is right for him is his way of looking times up.
 */
function outboardOf(side: 'left' | 'right'): number {
  const [looks, up, outboard] = [
    [-1, 0, 0],
    [0, 0, 1],
    [0, side === 'left' ? 1 : -1, 0],
  ] as const;
  const rightOfHim = [
    looks[1] * up[2] - looks[2] * up[1],
    looks[2] * up[0] - looks[0] * up[2],
    looks[0] * up[1] - looks[1] * up[0],
  ];
  return rightOfHim.reduce((sum, part, i) => sum + part * outboard[i]!, 0);
}

/** Whether the capitals of two lines overlap, were each letter as wide as most fonts have it. */
function isOn(a: Lettering, b: Lettering): boolean {
  const span = ({ text, at, height_mm, anchor }: Lettering): [number, number] => {
    const width = 0.75 * height_mm * text.length;
    const left = at.x_mm - { start: 0, middle: width / 2, end: width }[anchor];
    return [left, left + width];
  };
  const [[aLeft, aRight], [bLeft, bRight]] = [span(a), span(b)];
  const isBeside = aRight <= bLeft || bRight <= aLeft;
  const isOver = a.at.y_mm >= b.at.y_mm + b.height_mm + 0.4 || b.at.y_mm >= a.at.y_mm + a.height_mm + 0.4;
  return !isBeside && !isOver;
}
