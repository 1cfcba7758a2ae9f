/** A plate ready for a sheet: its cuts moved by the kerf, its face, and under it what found no room there. */

import { closed, drawn, moved, textWidth_mm, turned, type Drawing } from './drawing.ts';
import { faceOf, type PanelWords } from './face.ts';
import { movedOutward } from './offset.ts';
import { boxOf, heightOf, widthOf } from './path.ts';
import { cutsOf, mirroredPlate, type Plate } from './plate.ts';
import type { Box } from './side.ts';

export interface Piece {
  /** Its lower left corner is (0, 0). */
  drawing: Drawing;
  width_mm: number;
  height_mm: number;
}

export interface PieceWish {
  /** The right corner's plate. */
  plate: Plate;
  words: PanelWords;
  /** What the tool takes away, all of its width; 0 for a paper template. */
  kerf_mm: number;
}

const CAPTION_MM = 2.5;
const LINE_MM = 4;

export function pieceOf({ plate, words, kerf_mm }: PieceWish): Piece {
  const own = words.side === 'right' ? plate : mirroredPlate(plate);
  const cuts = cutsOf(own).map((loop) => movedOutward(loop, kerf_mm / 2));
  const face = faceOf(own, words);
  const around = boxOf(cuts);
  const caption = captionOf([...face.leftOver, ...kerfLine(kerf_mm)], around);
  const drawing = drawn({ strokes: cuts.map((loop) => closed('CUT', loop)) }, face.drawing, caption.drawing);
  return {
    drawing: moved(drawing, { x_mm: -around.left_mm, y_mm: caption.height_mm - around.bottom_mm }),
    width_mm: Math.max(widthOf(around), caption.width_mm),
    height_mm: heightOf(around) + caption.height_mm,
  };
}

/** By a quarter to the left, and back with its lower left corner to (0, 0). */
export const turnedPiece = ({ drawing, width_mm, height_mm }: Piece): Piece => ({
  drawing: moved(turned(drawing), { x_mm: height_mm, y_mm: 0 }),
  width_mm: height_mm,
  height_mm: width_mm,
});

const kerfLine = (kerf_mm: number): string[] =>
  kerf_mm > 0 ? [`the path allows for the kerf of ${kerf_mm} mm: set none at the machine`] : [];

function captionOf(
  lines: readonly string[],
  around: Box,
): { drawing: Drawing; width_mm: number; height_mm: number } {
  const letters = lines.map((text, i) => ({
    text,
    at: { x_mm: around.left_mm, y_mm: around.bottom_mm - (i + 1) * LINE_MM },
    height_mm: CAPTION_MM,
    anchor: 'start' as const,
  }));
  const width_mm = Math.max(0, ...lines.map((text) => textWidth_mm(text, CAPTION_MM)));
  return {
    drawing: drawn({ letters }),
    width_mm,
    height_mm: lines.length === 0 ? 0 : lines.length * LINE_MM + 1,
  };
}
