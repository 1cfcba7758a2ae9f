/** Reads a cut sheet as somebody else would: groups and paths of the text, places on them by svg-path-properties. */

import { svgPathProperties } from 'svg-path-properties';

export type Polygon = { x: number; y: number }[];

export interface ReadStroke {
  part: string;
  layer: string;
  polygon: Polygon;
}

export interface ReadSheet {
  width: string;
  height: string;
  viewBox: number[];
  scale: [number, number];
  strokes: ReadStroke[];
  texts: { text: string; x: number; y: number; size: number; anchor: string; isTurned: boolean }[];
}

/** Points on each line or arc of a path. */
const PER_PART = 64;

export function readCutSvg(svg: string): ReadSheet {
  const attribute = (text: string, name: string): string =>
    new RegExp(`\\b${name}="([^"]*)"`).exec(text)?.[1] ?? '';
  const root = /<svg[^>]*>/.exec(svg)![0];
  const scale = /transform="scale\(([\d.]+) ([\d.]+)\)"/.exec(svg);
  const read: ReadSheet = {
    width: attribute(root, 'width'),
    height: attribute(root, 'height'),
    viewBox: attribute(root, 'viewBox').split(' ').map(Number),
    scale: scale ? [Number(scale[1]), Number(scale[2])] : [1, 1],
    strokes: [],
    texts: [],
  };
  const groups: string[] = [];
  for (const [token, group, path, text, words] of svg.matchAll(
    /<g([^>]*)>|<\/g>|<path ([^>]*)\/>|<text ([^>]*)>([^<]*)<\/text>/g,
  )) {
    if (token === '</g>') groups.pop();
    else if (group !== undefined) groups.push(group);
    else if (path !== undefined) {
      const of = (name: string): string => groups.map((one) => attribute(one, name)).find(Boolean) ?? '';
      read.strokes.push({
        part: of('data-part'),
        layer: of('data-layer'),
        polygon: polygonOf(attribute(path, 'd')),
      });
    } else if (text !== undefined) {
      const [x = 0, y = 0, size = 0] = ['x', 'y', 'font-size'].map((name) => Number(attribute(text, name)));
      const isTurned = attribute(text, 'transform') === `rotate(-90 ${x} ${y})`;
      read.texts.push({ text: words!, x, y, size, anchor: attribute(text, 'text-anchor'), isTurned });
    }
  }
  return read;
}

const polygonOf = (d: string): Polygon =>
  new svgPathProperties(d)
    .getParts()
    .filter(({ length }) => length > 0)
    .flatMap((part) =>
      Array.from({ length: PER_PART }, (_, i) => part.getPointAtLength((i / PER_PART) * part.length)).concat(
        part.end,
      ),
    )
    .map(({ x, y }) => ({ x, y }));
