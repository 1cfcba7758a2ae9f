/** A sheet as DXF in millimetres: closed polylines with bulges, a layer each for cuts, marks, rulers and lettering. */

import {
  Colors,
  DxfWriter,
  LWPolylineFlags,
  point2d,
  point3d,
  TextHorizontalAlignment,
  TextVerticalAlignment,
  Units,
} from '@tarikjabiri/dxf';
import { drawn, type Lettering, type Stroke } from './drawing.ts';
import type { Sheet } from './sheets.ts';

const LAYERS = { CUT: Colors.Red, MARK: Colors.Blue, RULER: Colors.Green, TEXT: Colors.White };
const ALIGNED = {
  start: TextHorizontalAlignment.Left,
  middle: TextHorizontalAlignment.Center,
  end: TextHorizontalAlignment.Right,
};

/**
 * True to size: a cutter needs no correction. A piece that paper shows in parts is whole on the sheet of each part; for a cutter lay
 * the pieces out on its bed.
 */
export function sheetDxf({ content, frame }: Pick<Sheet, 'content' | 'frame'>): string {
  const dxf = new DxfWriter();
  dxf.setUnits(Units.Millimeters);
  dxf.setVariable('$MEASUREMENT', { 70: 1 }); // metric
  for (const [name, colour] of Object.entries(LAYERS)) dxf.addLayer(name, colour, 'Continuous');
  const { strokes, letters } = drawn(content, frame);
  strokes.forEach((stroke) => addStroke(dxf, stroke));
  letters.forEach((lettering) => addLettering(dxf, lettering));
  return dxf.stringify();
}

function addStroke(dxf: DxfWriter, { layer, path, isClosed }: Stroke): void {
  const vertices = path.map(({ x_mm, y_mm, bulge }) => ({ point: point2d(x_mm, y_mm), bulge }));
  const flags = isClosed ? LWPolylineFlags.Closed : LWPolylineFlags.None;
  dxf.addLWPolyline(vertices, { flags, layerName: layer });
}

function addLettering(dxf: DxfWriter, { text, at, height_mm, anchor, isTurned }: Lettering): void {
  const place = point3d(at.x_mm, at.y_mm);
  dxf.addText(place, height_mm, plain(text), {
    layerName: 'TEXT',
    rotation: isTurned ? 90 : 0,
    ...(anchor === 'start' ? {} : { horizontalAlignment: ALIGNED[anchor], secondAlignmentPoint: place }),
    verticalAlignment: TextVerticalAlignment.BaseLine,
  });
}

/** Other than ASCII as DXF escapes it, and no line end that would break the file. */
const plain = (text: string): string =>
  text
    .replace(/[\r\n]+/g, ' ')
    .replace(/[^\x20-\x7e]/g, (c) => `\\U+${c.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}`);
