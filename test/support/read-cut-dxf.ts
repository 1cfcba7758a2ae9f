/** Reads a cut sheet's DXF by dxf-parser, its arcs by their bulges. */

import DxfParser from 'dxf-parser';
import type { Polygon } from './read-cut-svg.ts';

export interface ReadDxf {
  units: unknown;
  layers: string[];
  strokes: { layer: string; isClosed: boolean; polygon: Polygon }[];
  texts: { layer: string; text: string; x: number; y: number; height: number; isTurned: boolean }[];
}

interface Vertex {
  x: number;
  y: number;
  bulge?: number;
}

const PER_ARC = 128;

export function readCutDxf(dxf: string): ReadDxf {
  const read = new DxfParser().parseSync(dxf)!;
  const entities = read.entities as unknown as {
    type: string;
    layer: string;
    vertices: Vertex[];
    shape?: boolean;
    text: string;
    startPoint: Vertex;
    textHeight: number;
    rotation?: number;
  }[];
  const polylines = entities.filter(({ type }) => type === 'LWPOLYLINE');
  return {
    units: read.header.$INSUNITS,
    layers: Object.keys((read.tables.layer as unknown as { layers: object }).layers),
    strokes: polylines.map(({ layer, shape, vertices }) => ({
      layer,
      isClosed: shape === true,
      polygon: polygonOf(vertices, shape === true),
    })),
    texts: entities
      .filter(({ type }) => type === 'TEXT')
      .map(({ layer, text, startPoint: { x, y }, textHeight, rotation }) => ({
        layer,
        text,
        x,
        y,
        height: textHeight,
        isTurned: rotation === 90,
      })),
  };
}

function polygonOf(vertices: Vertex[], isClosed: boolean): Polygon {
  return vertices.flatMap((a, i) => {
    const b = vertices[(i + 1) % vertices.length]!;
    const isLast = i + 1 === vertices.length;
    return !a.bulge || (isLast && !isClosed) ? [{ x: a.x, y: a.y }] : arcPoints(a, b, a.bulge);
  });
}

/** The centre sees the chord under the arc's angle, four times the arc tangent of the bulge. */
function arcPoints(a: Vertex, b: Vertex, bulge: number): Polygon {
  const angle = 4 * Math.atan(bulge);
  const up = 1 / (2 * Math.tan(angle / 2));
  const centre = {
    x: (a.x + b.x) / 2 - up * (b.y - a.y),
    y: (a.y + b.y) / 2 + up * (b.x - a.x),
  };
  return Array.from({ length: PER_ARC }, (_, k) => {
    const by = (k / PER_ARC) * angle;
    const [dx, dy] = [a.x - centre.x, a.y - centre.y];
    return {
      x: centre.x + dx * Math.cos(by) - dy * Math.sin(by),
      y: centre.y + dx * Math.sin(by) + dy * Math.cos(by),
    };
  });
}
