import type { LapScale } from './lap-scale.ts';
import { textWidth } from './text-width.ts';

/** One heading above the laps: a run of laps of one kind, split where counting starts. */
export interface PhaseLink {
  left: number;
  right: number;
  counted: boolean;
  /** The longest name that fits, or empty. */
  text: string;
}

export function phaseChain(x: LapScale): PhaseLink[] {
  const links: (PhaseLink & { names: string[] })[] = [];
  let before = '';
  for (const { lap, left, right } of x.laps) {
    const stands = x.stands.some((stand) => Math.abs(stand.right - left) < 0.5);
    const last = links.at(-1);
    const key = `${lap.kind} ${String(lap.counted)}`;
    if (last && key === before && !stands) last.right = right;
    else {
      const isRestart = before.startsWith('safety');
      links.push({
        left,
        right,
        counted: lap.counted,
        text: '',
        names: namesOf(lap.kind, lap.counted, isRestart),
      });
    }
    before = key;
  }
  return links.map(({ names, ...link }) => ({ ...link, text: fitting(names, link) }));
}

function namesOf(kind: 'out' | 'push' | 'safety' | 'in', counted: boolean, isRestart: boolean): string[] {
  if (kind === 'safety') return ['safety car', 'safety'];
  if (kind !== 'push') return [kind];
  if (counted) return ['push, counted', 'counted'];
  return isRestart ? ['after it', 'after'] : ['coming in', 'push'];
}

function fitting(names: string[], { left, right, counted }: PhaseLink): string {
  return names.find((name) => textWidth(name, 14, counted) <= right - left + 4) ?? '';
}
