/** Form of a duct's mouth and kind of its blank. All may be left out: a rectangle, blanked by a straight edge from outboard. */
import * as v from 'valibot';
import { choice, count, quantity } from './field.ts';

const coordinate = quantity('Outline', [-1000, 1000, 0.5], 'Of one corner of a traced outline');

const outlineSchema = v.pipe(
  v.array(
    v.strictTuple([coordinate, coordinate], 'a pair of numbers: across and up'),
    'a list of corners, each across and up',
  ),
  v.minLength(3, 'at least 3 corners'),
  v.maxLength(200, 'at most 200 corners'),
);

export const mouthEntries = {
  mouth_shape: v.optional(
    choice(
      'Mouth shape',
      ['rectangle', 'rounded rectangle', 'round', 'oval', 'outline'],
      'Form of the mouth; an oval is an ellipse, an outline is traced corner by corner',
    ),
  ),
  mouth_corner_mm: v.optional(
    quantity('Mouth corner', [0, 200, 0.5], 'Radius of the corners of a rounded rectangle'),
  ),
  /** Across from the outboard edge, whichever side, and up. Its box takes the place of width and height. */
  mouth_outline_mm: v.optional(v.nullable(outlineSchema)),
  blank: v.optional(
    choice(
      'Blank',
      ['edge', 'hole', 'slots', 'perforated'],
      'A straight edge, or a plate with one hole in the middle, slots or many round holes',
    ),
  ),
  blank_from: v.optional(
    choice(
      'Blank from',
      ['outboard', 'inboard', 'top', 'bottom'],
      'Side of the mouth where a straight edge begins; slots are parallel to it',
    ),
  ),
  blank_slots: v.optional(count('Slots', [1, 20], 'Slots side by side in a blank with slots')),
  blank_hole_mm: v.optional(
    quantity('Holes', [2, 60, 0.5], 'Diameter of the holes of a perforated blank, at most'),
  ),
  blank_thick_mm: v.optional(
    quantity(
      'Plate',
      [0.3, 10, 0.1],
      'Thickness of a perforated blank: over its holes’ diameter it sets their loss',
    ),
  ),
  strip_overlap_mm: v.optional(
    quantity('Overlap of tape', [0, 100, 1], 'How far a strip lies over the one before it'),
  ),
};
