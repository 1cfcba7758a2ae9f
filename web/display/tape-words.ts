/** A blanking in the words of who makes it: strips of tape and panels. */
import type { Duct } from '../../engine/index.ts';
import {
  nearestPanel,
  nearestStrips,
  type PanelFit,
  type StripFit,
  type Tape,
} from '../../engine/scenario/tape.ts';
import { NBSP, percent, withUnit } from './format.ts';

type Mouth = Tape & Pick<Duct, 'panels_pct' | 'blank'>;

/** "2 strips of 38 mm give 69 %; panel D is 75 %"; a plate is told in the place of strips. */
export function tapeWords(blanking_pct: number, mouth: Mouth, plate: string | null = null): string {
  const panel = nearestPanel(blanking_pct, mouth.panels_pct, mouth);
  const words = [plate ?? stripWords(nearestStrips(blanking_pct, mouth), mouth.strip_mm)];
  if (panel) words.push(panelWords(panel));
  return words.join('; ');
}

/** What a screen reader hears where the blanking is whole strips or a panel: "2 strips of 38 mm, panel D"; else nothing. */
export function fittedWords(blanking_pct: number, mouth: Mouth): string {
  const strips = nearestStrips(blanking_pct, mouth);
  const panel = nearestPanel(blanking_pct, mouth.panels_pct, mouth);
  const words: string[] = [];
  if (strips.isExact && (mouth.blank ?? 'edge') === 'edge') words.push(counted(strips, mouth.strip_mm));
  if (panel?.isExact) words.push(`panel ${panel.letter}`);
  return words.join(', ');
}

function stripWords(fit: StripFit, strip_mm: number): string {
  if (fit.isExact) return fit.strips === 0 ? 'no tape' : `${counted(fit, strip_mm)}, exactly`;
  if (fit.strips === 0) return `less than half a strip of ${stripWidth(strip_mm)}`;
  return `${counted(fit, strip_mm)}${fit.isTrimmed ? ',' : ''} ${fit.strips === 1 ? 'gives' : 'give'} ${percent(Math.round(fit.pct))}`;
}

const panelWords = ({ letter, pct, isExact }: PanelFit): string =>
  isExact ? `panel${NBSP}${letter}, exactly` : `panel${NBSP}${letter} is ${percent(Math.round(pct))}`;

function counted({ strips, isTrimmed }: StripFit, strip_mm: number): string {
  if (strips === 0) return 'no tape';
  return `${strips} ${strips === 1 ? 'strip' : 'strips'} of ${stripWidth(strip_mm)}${isTrimmed ? ', the last cut' : ''}`;
}

/** "38 mm" */
export const stripWidth = (strip_mm: number): string => withUnit(strip_mm, 'mm', strip_mm % 1 === 0 ? 0 : 1);
