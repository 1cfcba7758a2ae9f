/** Where a number of the moment comes from: what the model does, and which lines of the calculation by hand come near it. */
import type { ByHand, HandLine } from '../../engine/index.ts';
import { NBSP } from './format.ts';
import { ownUnitsWords } from './hand-words.ts';
import type { AirKey } from './air-words.ts';
import type { PartKey } from './moment-parts.ts';

export type NumberKey = PartKey | AirKey;

interface Whence {
  /** What the model does to have it. */
  model: string;
  /** Which lines by hand belong to it: by the check behind the equation, or by what they say where none is. */
  lines: readonly ((line: HandLine) => boolean)[];
}

const checked =
  (name: string) =>
  ({ check }: HandLine): boolean =>
    check === name;
const settled = ({ check, equation }: HandLine): boolean =>
  check === 'lumped-cooling' && equation.startsWith('T =');
const throughPads = ({ what }: HandLine): boolean => what === 'What goes through pads and caliper';

const BALANCE =
  'One balance of pressures between mouth, vanes and leak; flows are in proportion to speed and pressures to its square. Behind a car it is made with the pressure that its wake leaves.';

const whences: Record<NumberKey, Whence> = {
  face_K: {
    model: 'The outermost layer of the cheek in the run shown: the heat of the stop goes in here.',
    lines: [checked('slab-falling-flux'), checked('cheek-peak')],
  },
  cheek_K: {
    model: 'The mean of all layers of the cheek in the run shown.',
    lines: [checked('repeated-stops'), settled],
  },
  wall_K: {
    model: 'The innermost layer of the cheek, at the air of the vanes.',
    lines: [checked('warming-air')],
  },
  rim_K: { model: 'The outer edge, a body of its own beside the ring.', lines: [checked('flat-plate')] },
  bell_K: {
    model: 'A body of its own behind the joint, which loses heat to the air and the hub.',
    lines: [checked('flat-plate')],
  },
  pad_K: {
    model: 'The rubbed side of the pad: its share of the heat goes in here, the disc’s gap cools it.',
    lines: [throughPads],
  },
  caliper_K: {
    model: 'A body of its own behind pads, plates and pistons.',
    lines: [throughPads],
  },
  fluid_K: {
    model:
      'Takes its heat from the caliper, as the pistons let it through. No check by others’ numbers reaches it.',
    lines: [],
  },
  wheelhouse_K: {
    model:
      'The day’s air, warmed by what the corner gives off and carried away by the flow through the wheel. No check by others’ numbers reaches it.',
    lines: [],
  },
  ram: {
    model: 'All the pressure there is to have; a car ahead leaves less of it.',
    lines: [checked('moist-air')],
  },
  duct: { model: BALANCE, lines: [checked('air-network'), checked('blanked-mouth')] },
  vanes: { model: BALANCE, lines: [checked('air-network'), checked('air-table')] },
  leak: { model: BALANCE, lines: [checked('air-network')] },
  plenum: { model: BALANCE, lines: [checked('air-network')] },
};

export const numberKeys = Object.keys(whences) as NumberKey[];

export const modelWords = (key: NumberKey): string => whences[key].model;

/** The lines that belong to a number, in the order of the calculation. */
export const linesOf = (key: NumberKey, { parts }: ByHand): HandLine[] =>
  parts.flatMap(({ lines }) => lines).filter((line) => whences[key].lines.some((is) => is(line)));

/** For which moment the lines are: never the one under the cursor. */
export const handMoment = ({ place, lap }: ByHand): string =>
  `By hand, for the hottest stop (${place}, lap${NBSP}${lap}) and that lap’s mean speed, not for this moment${ownUnitsWords() && `, ${ownUnitsWords()}`}:`;
