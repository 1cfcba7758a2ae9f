import { isStand, type PhasePlan, type PlannedPhase } from '../display/phase-plan.ts';
import type { LapScale } from './lap-scale.ts';
import { keepApart } from './place-labels.ts';
import { textWidth } from './text-width.ts';

/** One heading above the laps: a run of laps of one phase, split where counting starts. */
export interface PhaseLink {
  left: number;
  right: number;
  counted: boolean;
  /** Belongs to the phase that is being edited. */
  isEdited: boolean;
  /** The longest name that fits, or empty. */
  text: string;
}

/** Without a plan, laps of one kind and weather are one phase. A standing car is a link only while it is edited. */
export function phaseChain(x: LapScale, plan: PhasePlan = [], edited: number | null = null): PhaseLink[] {
  const links: (PhaseLink & { names: string[] })[] = [];
  let before = '';
  for (const { lap, left, right } of x.laps) {
    const stands = x.stands.some((stand) => Math.abs(stand.right - left) < 0.5);
    const last = links.at(-1);
    const index = plan.find(({ after, laps }) => lap.lap > after && lap.lap <= after + laps)?.index;
    const key = `${lap.kind} ${String(lap.counted)} ${String(lap.wet)} ${String(index)}`;
    if (last && key === before && !stands) last.right = right;
    else {
      const isRestart = before.startsWith('safety');
      links.push({
        left,
        right,
        counted: lap.counted,
        isEdited: index !== undefined && index === edited,
        text: '',
        names: namesInWeather(namesOf(lap.kind, lap.counted, isRestart), lap.wet, plan.length > 0),
      });
    }
    before = key;
  }
  const named = links.map(({ names, ...link }) => ({ ...link, text: fitting(names, link) }));
  return [...withoutCrowding(named), ...standLink(x, plan[edited ?? -1])];
}

/** Where a planned phase begins on the lap scale. */
export const startOf = (x: LapScale, { after, phase }: PlannedPhase): number =>
  (isStand(phase) ? x.laps[after - 1]?.right : x.laps[after]?.left) ?? (after === 0 ? x.left : x.right);

function standLink(x: LapScale, planned: PlannedPhase | undefined): PhaseLink[] {
  if (!planned || !isStand(planned.phase)) return [];
  const left = startOf(x, planned);
  const stand = x.stands.find((each) => Math.abs(each.left - left) < 0.5);
  return stand ? [{ left, right: stand.right, counted: false, isEdited: true, text: '' }] : [];
}

function namesOf(kind: 'out' | 'push' | 'safety' | 'in', counted: boolean, isRestart: boolean): string[] {
  if (kind === 'safety') return ['safety car', 'safety'];
  if (kind !== 'push') return [kind];
  if (counted) return ['push, counted', 'counted'];
  return isRestart ? ['after safety car', 'after'] : ['coming in', 'push'];
}

/** With a plan a mark says where the rain begins: the name of the laps counts before it. */
function namesInWeather(names: string[], isWet: boolean, isPlanned: boolean): string[] {
  if (!isWet) return names;
  const wet = names.map((name) => `wet ${name}`);
  return isPlanned ? [...wet, ...names] : [...wet, 'wet'];
}

/** The longest name that fits, or the shortest where no more than half of it stands out. */
function fitting(names: string[], { left, right, counted }: PhaseLink): string {
  const width = (name: string): number => textWidth(name, 14, counted);
  const shortest = names.toSorted((a, b) => width(a) - width(b))[0] ?? '';
  const fits = names.find((name) => width(name) <= right - left + 4);
  return fits ?? (width(shortest) <= 2 * (right - left) ? shortest : '');
}

/** A name may stand out over its link, but not into the next name: one that fits and counted laps keep theirs. */
function withoutCrowding(links: PhaseLink[]): PhaseLink[] {
  const fits = ({ text, left, right, counted }: PhaseLink): boolean =>
    textWidth(text, 14, counted) <= right - left + 4;
  const rank = (link: PhaseLink): number =>
    4 * Number(link.isEdited) + 2 * Number(fits(link)) + Number(link.counted);
  const named = links
    .filter(({ text }) => text !== '')
    .map((link) => ({ link, x: (link.left + link.right) / 2, width: textWidth(link.text, 14, link.counted) }))
    .sort((a, b) => rank(b.link) - rank(a.link));
  const kept = new Set(keepApart(named, 5).map(({ link }) => link));
  return links.map((link) => (kept.has(link) ? link : { ...link, text: '' }));
}
