import type { LapScale } from './lap-scale.ts';
import { keepApart } from './place-labels.ts';
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
    const key = `${lap.kind} ${String(lap.counted)} ${String(lap.wet)}`;
    if (last && key === before && !stands) last.right = right;
    else {
      const isRestart = before.startsWith('safety');
      links.push({
        left,
        right,
        counted: lap.counted,
        text: '',
        names: namesOf(lap.kind, lap.counted, isRestart).flatMap((name) =>
          lap.wet ? [`wet ${name}`, 'wet'] : [name],
        ),
      });
    }
    before = key;
  }
  return withoutCrowding(links.map(({ names, ...link }) => ({ ...link, text: fitting(names, link) })));
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

/** A short name may stand out over its link, but not into the next name: counted laps keep theirs. */
function withoutCrowding(links: PhaseLink[]): PhaseLink[] {
  const named = links
    .filter(({ text }) => text !== '')
    .map((link) => ({ link, x: (link.left + link.right) / 2, width: textWidth(link.text, 14, link.counted) }))
    .sort((a, b) => Number(b.link.counted) - Number(a.link.counted));
  const kept = new Set(keepApart(named, 3).map(({ link }) => link));
  return links.map((link) => (kept.has(link) ? link : { ...link, text: '' }));
}
