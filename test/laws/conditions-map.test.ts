import { describe, expect, it } from 'vitest';
import { conditionsMap, type MapCell } from '../../engine/advise/conditions-map.ts';
import { finished } from '../../engine/advise/finished.ts';
import { changed } from '../support/stints.ts';
import { toyStint } from '../support/toy-stint.ts';

const held = changed({ 'stint.hold_trace': true }, toyStint({}));
const { corners } = finished(
  conditionsMap(
    held,
    {
      across: { key: 'conditions.ambient_C', values: [0, 12, 24, 36] },
      down: { key: 'traffic.gap_m', values: [null, 40, 15, 6] },
      sample: { draws: 2, seed: 1 },
    },
    { driven: held },
  ),
);

/** What is hotter never allows more blanking, nor does it need more. */
function expectNoMoreClosed(hotter: MapCell, cooler: MapCell): void {
  if (hotter.span_pct && cooler.span_pct) {
    expect(hotter.span_pct[0]).toBeLessThanOrEqual(cooler.span_pct[0]);
    expect(hotter.span_pct[1]).toBeLessThanOrEqual(cooler.span_pct[1]);
  }
  expect(hotter.best!.blanking_pct).toBeLessThanOrEqual(cooler.best!.blanking_pct);
}

describe.each(corners.map((corner) => [corner.axle, corner.rows] as const))(
  'on a held trace the map of the %s',
  (_, rows) => {
    it('never asks for more blanking in hotter air', () => {
      for (const row of rows)
        for (const [i, cell] of row.slice(1).entries()) expectNoMoreClosed(cell, row[i]!);
    });

    it('never asks for more blanking nearer to the car ahead', () => {
      for (const [r, row] of rows.slice(1).entries())
        for (const [i, cell] of row.entries()) expectNoMoreClosed(cell, rows[r]![i]!);
    });
  },
);
