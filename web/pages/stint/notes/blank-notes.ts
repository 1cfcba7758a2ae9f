/** The covered share of a mouth: along the way of a straight edge where a rectangle is in proportion to it, by area elsewhere. */
import type { Duct } from '../../../../engine/index.ts';
import { blankOf, mouthOutline, sizeMouth } from '../../../../engine/scenario/mouth.ts';
import { percent } from '../../../display/format.ts';
import { worked, type Line, type Note } from './note.ts';

/** By what a mouth is measured, and how much of it there is [mm or mm²] */
function measureOf(duct: Duct): { by: string; whole: number } {
  const { kind, from } = blankOf(duct);
  if ((duct.mouth_shape ?? 'rectangle') !== 'rectangle' || kind !== 'edge')
    return { by: 'area', whole: mouthOutline(duct).area_mm2 };
  const [width_mm, height_mm] = sizeMouth(duct);
  return from === 'outboard' || from === 'inboard'
    ? { by: 'width', whole: width_mm }
    : { by: 'height', whole: height_mm };
}

function coveredLine(share_pct: number, duct: Duct): Line {
  const { by, whole } = measureOf(duct);
  return worked({
    equation: `B = 100 · covered ${by} / ${by} of the mouth`,
    values: [(share_pct / 100) * whole, whole],
    write: ([covered, all]) => `100 · ${covered} / ${all}`,
    of: ([covered = 0, all = 1]) => (100 * covered) / all,
    unit: '%',
  });
}

/** Of a share as it is set, or as it is laid out on a map. */
export const blankNote = (share_pct: number, duct: Duct, words: { name: string; setBy: string }): Note => ({
  name: words.name,
  value: percent(share_pct),
  what: `The covered share of the duct’s mouth, by its ${measureOf(duct).by}${words.setBy}.`,
  lines: [coveredLine(share_pct, duct)],
  source: 'the mouth is entered, in mm',
  model: 'Air',
});
