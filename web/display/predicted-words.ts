/** What a session is likely to bring, with its doubt, in words. Pure. */
import type { Axle, CornerSpread, Plan, Spread } from '../../engine/index.ts';
import { cornerName } from './corner.ts';
import { capital, level } from './format.ts';
import { chance, coverAt, fitName, fitsWords, startWords } from './plan-words.ts';

/** What one session is likely to bring with what the rule fits then, in draws. */
export interface Predicted {
  /** Place in the set, by axle. */
  panels: Partial<Record<Axle, number>>;
  spread: Spread;
}

export interface PredictedLine {
  corner: string;
  axle: Axle;
  /** "C (65 %)" */
  fit: string;
  /** "31 of 40 draws in" */
  sure: string;
  /** "610 to 690 °C", the middle 80 % of the draws. */
  hottest: string;
  coldest: string;
}

/** A share of the draws below this and above its counterpart is left out. */
const TAIL = 0.1;

function middle(values: readonly (number | null)[]): string {
  const known = values.filter((value) => value !== null).sort((a, b) => a - b);
  if (known.length === 0) return 'no hard stop';
  const at = (share: number): number => known[Math.round(share * (known.length - 1))] ?? 0;
  return `${level(at(TAIL))} to ${level(at(1 - TAIL))}`;
}

export function predictedLines(
  { plan, predicted }: { plan: Plan; predicted: readonly (Predicted | null)[] },
  session: number,
): PredictedLine[] {
  const found = predicted[session];
  if (!found) return [];
  return found.spread.corners.flatMap((corner) => {
    const axle = plan.axles.find((each) => each.axle === corner.axle);
    const place = found.panels[corner.axle];
    if (!axle || place === undefined) return [];
    const cover = coverAt(axle.panels, place);
    return [lineOf(corner, `${fitName(axle.panels, place)}${cover && ` (${cover})`}`)];
  });
}

const lineOf = (corner: CornerSpread, fit: string): PredictedLine => ({
  corner: capital(cornerName(corner)),
  axle: corner.axle,
  fit,
  sure: `${corner.count.in} of ${Object.values(corner.count).reduce((sum, count) => sum + count, 0)} draws in`,
  hottest: middle(corner.hottest_K),
  coldest: middle(corner.coldest_K),
});

/** What the rule fits in a session, and what it starts with: a line an axle. */
export const sessionLines = ({ axles }: Plan, session: number): string[] =>
  axles.flatMap(({ axle, sessions, panels }) => {
    const at = sessions[session];
    if (!at) return [];
    const starts =
      at.beforeStop === null
        ? []
        : at.fits.map((fit) => `Where ${fitName(panels, fit.panel)} is right, ${startWords(fit, panels)}.`);
    return [
      `${capital(axle)}: ${fitsWords(at, panels)} of the days; in the window ${chance(at.covered)}.`,
      ...starts,
    ];
  });
