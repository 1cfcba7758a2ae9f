/** One drawn stint as a small drawing: face peak and coldest stop over its laps, against the window. Pure. */
import type { CornerResult, DrawnStint } from '../../engine/index.ts';
import { valueScale } from './value-scale.ts';

export const SMALL = { width: 96, height: 52 } as const;
/** Above and below the window [K] */
const BESIDE_K = 120;

export interface SmallStint {
  /** As paths of an SVG drawing; the coldest stops broken where a lap has none. */
  peak: string;
  coldest: string;
  hot: number;
  cold: number;
}

export function smallStint(
  { facePeak_K, coldestStop_K }: DrawnStint,
  { bite_K, facePeak_K: limit_K }: Pick<CornerResult['window'], 'bite_K' | 'facePeak_K'>,
): SmallStint {
  const y = valueScale(bite_K - BESIDE_K, limit_K + BESIDE_K, SMALL.height, 0);
  const step = SMALL.width / Math.max(1, facePeak_K.length - 1);
  const path = (values: readonly (number | null)[]): string =>
    values
      .map((value, i) => {
        if (value === null) return '';
        const isOpen = i > 0 && (values[i - 1] ?? null) !== null;
        return `${isOpen ? 'L' : 'M'}${(i * step).toFixed(1)} ${y.of(value).toFixed(1)}`;
      })
      .join('');
  return { peak: path(facePeak_K), coldest: path(coldestStop_K), hot: y.of(limit_K), cold: y.of(bite_K) };
}
