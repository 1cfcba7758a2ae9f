/** From the sheet and what is wished to what is asked of the engine; and what a page says of it. Pure. */
import type { CutRequest, PanelFacts, Problem, Scenario, SheetTexts } from '../../../engine/index.ts';
import { panelLetter } from '../../../engine/scenario/tape.ts';
import { isExampleWindow } from '../../display/example-window.ts';
import { capital, decimal, NBSP, percent } from '../../display/format.ts';
import { scenarioHash } from '../../state/scenario-hash.ts';
import { ductAt, SIDES, type Side } from '../../state/sides.ts';
import type { Wish } from './wish.svelte.ts';

export interface Choice {
  letter: string;
  blanking_pct: number;
}

/** The panels of an axle's set that there is something to cut for. */
export const choicesAt = (scenario: Scenario, axle: 'front' | 'rear'): Choice[] =>
  (scenario.brakes[axle].duct?.panels_pct ?? [])
    .map((blanking_pct, place) => ({ letter: panelLetter(place), blanking_pct }))
    .filter(({ blanking_pct }) => blanking_pct > 0);

/** Of a panel by itself: X is of no set. */
const LONE = 'X';

export function panelsOf(scenario: Scenario, { axle, letters, typed_pct }: Wish): Choice[] {
  if (typed_pct !== null) return [{ letter: LONE, blanking_pct: typed_pct }];
  return choicesAt(scenario, axle).filter(({ letter }) => letters?.includes(letter) ?? true);
}

/** Sides whose mouth or blank differs from the axle's, by the sheet's file: what is set for the axle does not reach it. */
export const ownMouths = (scenario: Scenario, axle: Wish['axle']): Side[] => {
  const formOf = (side: Side | null): string =>
    JSON.stringify(
      Object.entries(ductAt(scenario, axle, side) ?? {}).filter(([key]) => /^(mouth|blank)_?/.test(key)),
    );
  return SIDES.filter((side) => formOf(side) !== formOf(null));
};

/** Null where there is no duct, and so no mouth. */
export function cutRequest(scenario: Scenario, wish: Wish): CutRequest | null {
  const sides: readonly Side[] = wish.side === 'both' ? SIDES : [wish.side];
  const ducts = sides.flatMap((side) => {
    const duct = ductAt(scenario, wish.axle, side);
    return duct ? [{ side, duct }] : [];
  });
  if (ducts.length === 0) return null;
  const isBed = wish.bed === 'bed';
  const [width_mm, height_mm] = wish.bed_mm;
  return {
    axle: wish.axle,
    ducts,
    panels: panelsOf(scenario, wish),
    hold: wish.hold,
    fastener: wish.fastener,
    corner_mm: wish.corner_mm,
    kerf_mm: isBed ? wish.kerf_mm : 0, // a template is traced along its line
    bed: wish.bed === 'bed' ? { paper: null, width_mm, height_mm } : { paper: wish.bed },
    correction: isBed ? { across_mm: 100, up_mm: 100 } : { across_mm: wish.across_mm, up_mm: wish.up_mm },
    date: wish.date,
    by: wish.by.trim(),
    supersedes: wish.supersedes.trim(),
    modelHash: scenarioHash(scenario),
    hasTape: wish.hasTape,
    isExample: isExampleWindow(scenario),
  };
}

/** A printer further off than this is set wrong [%] */
const MOST_OFF = 3;

/** What was expected of what a ruler of 100 mm measures, where that is refused; else an empty text. */
export const refusedMeasure = (measured_mm: number | null): string =>
  measured_mm !== null && Math.abs(measured_mm - 100) <= MOST_OFF + 1e-9
    ? ''
    : `${100 - MOST_OFF} to ${100 + MOST_OFF}${NBSP}mm (a printer further off is set wrong: print at actual size)`;

/** "panels-front-1-of-2.svg" */
export const cutFileName = ({ title, number }: SheetTexts, ending: 'svg' | 'dxf'): string =>
  `${`${title} ${number}`
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')}.${ending}`;

/** One line of what a millimetre is worth, for a panel that is the same on both sides once. */
export const worthLine = (
  { letter, blanking_pct, pointsPerMm }: PanelFacts,
  perPoint_K: number | null,
): string =>
  `${letter}, ${percent(blanking_pct)}: 1${NBSP}mm is ${decimal(pointsPerMm, 1)} points` +
  (perPoint_K === null ? '' : `, about ${decimal(perPoint_K * pointsPerMm, 1)}${NBSP}K at the face`);

export const tapeLine = ({ letter, blanking_pct, strips }: PanelFacts): string =>
  strips.strips === 0
    ? `${letter}, ${percent(blanking_pct)}: less than half a strip of tape`
    : `${letter}, ${percent(blanking_pct)}: ${strips.strips} strip${strips.strips === 1 ? '' : 's'} cover ${percent(strips.pct)}`;

/** What is wrong, as a person reads it; what is alike of several panels once: "Panel B, C: fasteners: expected ...". */
export function problemLines(problems: readonly Problem[]): string[] {
  const whose = new Map<string, string[]>();
  for (const each of problems) {
    const [, letter = '', rest = each.key] = /^panel (\w+)\.(.*)$/.exec(each.key) ?? [];
    const words = problemWords({ ...each, key: rest });
    whose.set(words, [...(whose.get(words) ?? []), letter]);
  }
  return [...whose].map(([words, letters]) =>
    letters[0] ? `Panel ${letters.join(', ')}: ${words}` : capital(words),
  );
}

const problemWords = ({ key, value, expected, hint }: Problem): string =>
  `${NAMES[key] ?? key}: expected ${expected}, got ${value.replaceAll("'", '')}${hint && ` (${hint})`}.`;

const NAMES: Record<string, string> = {
  corner_mm: 'corner radius',
  kerf_mm: 'kerf of the tool',
  blanking_pct: 'blanking',
  longest_mm: 'longest dimension',
  hold: 'fasteners',
  pull_tab: 'tab to pull by',
  size: 'size',
  'correction.measured_mm': 'rulers',
  'bed.width_mm': 'width of the bed',
  'bed.height_mm': 'height of the bed',
  bed: 'bed',
  supersedes: 'supersedes',
};
