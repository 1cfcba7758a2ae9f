import { heatScale, type HeatScale } from '../display/heat-scale.ts';

/** The sheet's colours as a canvas needs them. */
export interface ChartTheme {
  sheet: string;
  ink: string;
  label: string;
  pinned: string;
  rule: string;
  hairline: string;
  /** Of areas that stand behind lines. */
  shade: string;
  move: string;
  hot: string;
  /** Every line is this many times as wide as on Paper. */
  weight: number;
  heat: HeatScale;
}

/** Reads the palette from the custom properties that hold at this element. */
export function readTheme(element: Element): ChartTheme {
  const styles = getComputedStyle(element);
  const read = (name: string): string => styles.getPropertyValue(`--${name}`).trim();
  return {
    sheet: read('sheet'),
    ink: read('ink'),
    label: read('label'),
    pinned: read('pinned'),
    rule: read('rule'),
    hairline: read('hairline'),
    shade: read('shade'),
    move: read('move'),
    hot: read('hot'),
    weight: Number(read('weight')) || 1,
    heat: heatScale([1, 2, 3, 4, 5, 6, 7].map((stop) => read(`heat-${String(stop)}`))),
  };
}
