/** What a panel is asked to be. */

import type { Covered } from '../duct/blank.ts';
import type { MouthOutline } from '../duct/mouth-outline.ts';
import type { FastenerKind } from './fastener.ts';

export interface PanelWish {
  mouth: MouthOutline;
  /** What a blanking covers of that mouth. */
  coveredAt: (blanking_pct: number) => Covered;
  blanking_pct: number;
  /** By tabs that stand out of the mouth, or through holes in the plate itself. */
  hold: 'tabs' | 'holes';
  fastener: FastenerKind;
  /** Radius of every corner, at least 3. */
  corner_mm: number;
  /** Bore of the hose behind the mouth. */
  hose_mm: number;
}
