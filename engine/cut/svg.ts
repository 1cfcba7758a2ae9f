/** A sheet as SVG, corrected where it is: a root in millimetres, a group a layer, lettering as text. */

import type { Loop } from '../duct/loop.ts';
import { drawn, type Drawing, type Layer, type Lettering, type Stroke } from './drawing.ts';
import { sidesOf } from './path.ts';
import type { Sheet } from './sheets.ts';
import { partOf, radiusOf, type Point, type Side } from './side.ts';

/** Without the page's fonts, what a viewer has. */
const FONTS = "'Source Sans 3 Variable', 'Source Sans 3', 'DejaVu Sans', Arial, Helvetica, sans-serif";
/** Height of capitals over the size of a font: Source Sans 3, its OS/2 table. */
const CAPITALS = 0.66;
/** A cut line as a laser driver wants it, thin but printable (common practice, no source) [mm] */
const WIDTH_MM: Record<Layer, number> = { CUT: 0.2, MARK: 0.3, RULER: 0.2 };
const LAYERS: readonly Layer[] = ['CUT', 'MARK', 'RULER'];

const DESCRIPTION =
  'In millimetres, seen from the front of the car. CUT is cut, MARK and TEXT stand on the face, RULER is measured.';

export function sheetSvg(sheet: Sheet): string {
  const { width_mm, height_mm, scale } = sheet;
  const pen = new Pen(height_mm / scale.up);
  const size = `width="${number(width_mm)}mm" height="${number(height_mm)}mm"`;
  const corrected =
    scale.across === 1 && scale.up === 1 ? '' : ` transform="scale(${scale.across} ${scale.up})"`;
  const name = `sheet-${sheet.number.replace(/\W+/g, '-')}`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" ${size} viewBox="0 0 ${number(width_mm)} ${number(height_mm)}">`,
    `<title>${escaped(`${sheet.title}, sheet ${sheet.number}`)}</title>`,
    `<desc>${DESCRIPTION}</desc>`,
    `<g${corrected}>`,
    ...(sheet.isPart ? [clip(name, sheet, pen)] : []),
    `<g data-part="pieces"${sheet.isPart ? ` clip-path="url(#${name})"` : ''}>`,
    ...layers(sheet.content, pen),
    '</g>',
    '<g data-part="frame">',
    ...layers(drawn(sheet.frame, sheet.note), pen),
    '</g>',
    '</g>',
    '</svg>',
    '',
  ].join('\n');
}

const layers = ({ strokes, letters }: Drawing, pen: Pen): string[] => [
  ...LAYERS.flatMap((layer) =>
    layerGroup(
      layer,
      strokes.filter((stroke) => stroke.layer === layer),
      pen,
    ),
  ),
  ...(letters.length === 0
    ? []
    : [
        `<g data-layer="TEXT" fill="#000" font-family="${FONTS}">`,
        ...letters.map((one) => pen.text(one)),
        '</g>',
      ]),
];

function layerGroup(layer: Layer, strokes: readonly Stroke[], pen: Pen): string[] {
  if (strokes.length === 0) return [];
  const style = `fill="none" stroke="#000" stroke-width="${WIDTH_MM[layer]}" stroke-linejoin="round"`;
  return [`<g data-layer="${layer}" ${style}>`, ...strokes.map((stroke) => pen.path(stroke)), '</g>'];
}

function clip(name: string, { room }: Sheet, pen: Pen): string {
  const top = pen.down(room.top_mm);
  const [width, height] = [room.right_mm - room.left_mm, room.top_mm - room.bottom_mm];
  const box = `x="${number(room.left_mm)}" y="${top}" width="${number(width)}" height="${number(height)}"`;
  return `<clipPath id="${name}"><rect ${box}/></clipPath>`;
}

/** Turns the drawing's y, upwards, into the page's, downwards. */
class Pen {
  readonly #top_mm: number;

  constructor(top_mm: number) {
    this.#top_mm = top_mm;
  }

  down = (y_mm: number): string => number(this.#top_mm - y_mm);

  #at = ({ x_mm, y_mm }: Point): string => `${number(x_mm)} ${this.down(y_mm)}`;

  path({ path, isClosed }: Stroke): string {
    return `<path d="${this.#data(path, isClosed)}"/>`;
  }

  #data(path: Loop, isClosed: boolean): string {
    const sides = isClosed ? sidesOf(path) : sidesOf(path).slice(0, -1);
    const steps = sides.flatMap(quarters).map((side) => {
      if (side.bulge === 0) return `L${this.#at(side.to)}`;
      const r = number(radiusOf(side));
      // an arc that turns left with y upwards turns left on the page as well: SVG's sweep 0
      return `A${r} ${r} 0 0 ${side.bulge > 0 ? 0 : 1} ${this.#at(side.to)}`;
    });
    return `M${this.#at(path[0]!)}${steps.join('')}${isClosed ? 'Z' : ''}`;
  }

  text({ text, at, height_mm, anchor, isTurned }: Lettering): string {
    const place = `x="${number(at.x_mm)}" y="${this.down(at.y_mm)}"`;
    const size = number(height_mm / CAPITALS);
    const turn = isTurned ? ` transform="rotate(-90 ${number(at.x_mm)} ${this.down(at.y_mm)})"` : '';
    return `<text ${place} font-size="${size}" text-anchor="${anchor}"${turn}>${escaped(text)}</text>`;
  }
}

/** An arc in parts of a quarter at most: of half a circle a rounded radius would move the centre by hundredths of a millimetre. */
function quarters(side: Side): Side[] {
  const count = Math.max(1, Math.ceil((4 * Math.atan(Math.abs(side.bulge))) / (Math.PI / 2) - 1e-9));
  return Array.from({ length: count }, (_, i) => partOf(side, i / count, (i + 1) / count));
}

/** To a ten-thousandth of a millimetre, without zeros behind. */
const number = (mm: number): string => String(Number(mm.toFixed(4)) + 0);

const escaped = (text: string): string =>
  text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;');
