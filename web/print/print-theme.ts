import type { ChartTheme } from '../charts/theme.ts';
import { heatScale } from '../display/heat-scale.ts';

/** Ink on white whatever the screen shows; nothing that matters is grey, which a photocopier may lose. The styles of the run sheet say the same. */
export const PRINT_THEME: ChartTheme = {
  sheet: '#fff',
  ink: '#000',
  label: '#000',
  pinned: '#000',
  rule: '#000',
  hairline: '#bbb',
  shade: '#ddd',
  move: '#000',
  hot: '#000',
  weight: 1,
  heat: heatScale(['#ffffff', '#000000']),
};
