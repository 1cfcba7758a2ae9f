/** What stands on a panel's visible face: its code first, then what it is, how it is held to the car, what it was made for. */

import { ARROWS, arrows, isOutLeftOf, OUT_ARROW, outArrow, UP_ARROW, upArrow } from './arrow.ts';
import { clearPlaces, clearRectangle, type ClearPlaces } from './clear-rectangle.ts';
import { panelCode } from './code.ts';
import { drawn, textWidth_mm, type Drawing } from './drawing.ts';
import type { Size } from './nest.ts';
import { heightOf, widthOf } from './path.ts';
import type { Plate } from './plate.ts';
import type { Box, Point } from './side.ts';

export interface PanelWords {
  /** Of the panel in its set: A, B, C... */
  letter: string;
  axle: 'front' | 'rear';
  side: 'left' | 'right';
  blanking_pct: number;
  /** The mouth that it fits, in words: "round, 98 mm". */
  mouth: string;
  /** How it is held and rounded: two that differ in it are no spares for one another. */
  made: string;
  /** As it is to be printed; nobody here knows what day it is. */
  date: string;
  /** Of the scenario that it was chosen with. */
  modelHash: string;
  /** Code of the panel that it takes the place of; empty: none. */
  supersedes: string;
}

export interface Face {
  drawing: Drawing;
  /** Lines that found no room: they are printed beside the plate. */
  leftOver: string[];
}

export const codeOf = (words: PanelWords): string => {
  const { letter, axle, side, blanking_pct, mouth, made, date, modelHash } = words;
  return panelCode(letter, axle, [side, String(blanking_pct), mouth, made, date, modelHash]);
};

/** Heights of capitals: wanted, and the least that is legible in a pit garage (common practice, no source) [mm] */
const CODE = { wanted_mm: 7, least_mm: 3 };
const TITLE = { wanted_mm: 4.5, least_mm: 2.5 };
const NOTE = { wanted_mm: 2.5, least_mm: 2 };
/** From line to line over the height of capitals. */
const LEADING = 1.6;
const MOST_LEADING_MM = 3;
/** Between lettering of two rectangles. */
const BESIDE_MM = 1.5;
const LEAST_ARROW = 0.6;

/** One thing of the face: how large it wants to be, how much smaller it may be, and how it is drawn at the middle of its foot. */
interface Item {
  /** What to write beside the plate where it finds no room. */
  text: string;
  size: Size;
  leastScale: number;
  draw: (foot: Point, scale: number) => Drawing;
  /** What is tried where it finds no room. */
  instead?: Item[];
}

const textItem = (text: string, { wanted_mm, least_mm }: { wanted_mm: number; least_mm: number }): Item => ({
  text,
  size: { width_mm: textWidth_mm(text, wanted_mm), height_mm: wanted_mm },
  leastScale: least_mm / wanted_mm,
  draw: (at, scale) => drawn({ letters: [{ text, at, height_mm: scale * wanted_mm, anchor: 'middle' }] }),
});

/** Both arrows whole, or each where it finds room. */
const arrowItem = (isOutLeft: boolean): Item => ({
  text: '',
  size: ARROWS,
  leastScale: 1,
  draw: (foot) => arrows(foot, isOutLeft),
  instead: [
    {
      text: 'draw UP by hand',
      size: UP_ARROW,
      leastScale: LEAST_ARROW,
      draw: (foot, scale) => upArrow(foot, scale, isOutLeft),
    },
    {
      text: 'draw OUT by hand',
      size: OUT_ARROW,
      leastScale: LEAST_ARROW,
      draw: (foot, scale) => outArrow(foot, isOutLeft, scale),
    },
  ],
});

const itemsOf = (words: PanelWords): Item[] => [
  { ...textItem(codeOf(words), CODE), text: `write on its face: ${codeOf(words)}` },
  textItem(`${words.letter}  ${words.blanking_pct} %  ${words.axle} ${words.side}`, TITLE),
  arrowItem(isOutLeftOf(words.side)),
  textItem(`fits mouth ${words.mouth}`, NOTE),
  textItem(`${words.date}  model ${words.modelHash}`, NOTE),
  ...(words.supersedes ? [textItem(`supersedes ${words.supersedes}`, NOTE)] : []),
];

/** One thing under the other in a clear rectangle; what finds no room there gets another rectangle, if there is one. */
export function faceOf(plate: Plate, words: PanelWords): Face {
  const writer = new Writer(plate);
  itemsOf(words).forEach((item) => writer.add(item));
  return { drawing: drawn(...writer.drawings), leftOver: writer.leftOver };
}

class Writer {
  readonly drawings: Drawing[] = [];
  readonly leftOver: string[] = [];
  readonly #places: ClearPlaces;
  readonly #taken: Box[] = [];
  /** What is left of the rectangle that is being filled from its top. */
  #room: Box | null = null;

  constructor(plate: Plate) {
    this.#places = clearPlaces(plate);
  }

  add(item: Item): void {
    const isEnough = (one: Box | null): one is Box => one !== null && scaleIn(one, item) >= item.leastScale;
    const room = isEnough(this.#room) ? this.#room : clearRectangle(this.#places, item.size, this.#taken);
    if (isEnough(room)) this.#draw(item, room);
    else if (item.instead) item.instead.forEach((other) => this.add(other));
    else this.leftOver.push(item.text);
  }

  #draw(item: Item, room: Box): void {
    const scale = scaleIn(room, item);
    const height_mm = scale * item.size.height_mm;
    const foot = { x_mm: (room.left_mm + room.right_mm) / 2, y_mm: room.top_mm - height_mm };
    this.drawings.push(item.draw(foot, scale));
    const top_mm = foot.y_mm - Math.min((LEADING - 1) * height_mm, MOST_LEADING_MM);
    this.#taken.push({ ...room, bottom_mm: top_mm, top_mm: room.top_mm + BESIDE_MM });
    this.#room = { ...room, top_mm };
  }
}

/** How large a thing can be in a rectangle. */
const scaleIn = (room: Box, { size }: Item): number =>
  Math.min(1, widthOf(room) / size.width_mm, heightOf(room) / size.height_mm);
