/** What is to be cut for one axle, and the sheets that come of it as texts. */

import { blankFor, pointsPerMm, type Covered } from '../duct/blank.ts';
import { blankOf } from '../duct/blank-keys.ts';
import { mouthOutline, type MouthOutline } from '../duct/mouth-outline.ts';
import { taped } from '../scenario/mouth.ts';
import { problem, type Problem } from '../scenario/problem.ts';
import type { Duct } from '../scenario/schema.ts';
import { memo } from '../stint/memo.ts';
import { nearestStrips, type StripFit } from '../scenario/tape.ts';
import type { Bed } from './bed.ts';
import { cautionsFor } from './cautions.ts';
import { isMisread } from './code.ts';
import { UNCORRECTED, type Correction } from './correction.ts';
import { sheetDxf } from './dxf.ts';
import { codeOf, type PanelWords } from './face.ts';
import type { FastenerKind } from './fastener.ts';
import type { FrameWish } from './frame.ts';
import { kerfProblems } from './panel-checks.ts';
import { drawPanel, type Panel } from './panel.ts';
import { pieceOf, type Piece } from './piece.ts';
import { layOut, trueToSize, type Sheets } from './sheets.ts';
import { sheetSvg } from './svg.ts';
import { tapePiece } from './tape-page.ts';

export interface CutRequest {
  axle: 'front' | 'rear';
  /** The duct of each side that something is wanted for. */
  ducts: readonly { side: 'left' | 'right'; duct: Duct }[];
  panels: readonly { letter: string; blanking_pct: number }[];
  hold: 'tabs' | 'holes';
  fastener: FastenerKind;
  corner_mm: number;
  kerf_mm: number;
  bed: Bed;
  correction: Correction;
  /** As they are to be printed. */
  date: string;
  by: string;
  supersedes: string;
  modelHash: string;
  hasTape: boolean;
  /** Whether the window has no source. */
  isExample: boolean;
}

export interface SheetTexts {
  title: string;
  number: string;
  width_mm: number;
  height_mm: number;
  /** A piece larger than the page, of which this shows a part. */
  isPart: boolean;
  /** As it is printed, corrected for the printer. */
  svg: string;
  /** As a cutter gets them: true to size. */
  files: { svg: string; dxf: string };
}

/** What a panel is, in numbers. */
export interface PanelFacts {
  letter: string;
  side: 'left' | 'right';
  blanking_pct: number;
  code: string;
  /** What one millimetre of its edge is worth there. */
  pointsPerMm: number;
  /** The same blanking in whole strips of tape. */
  strips: StripFit;
}

export interface CutSheets {
  kind: 'cut';
  panels: SheetTexts[];
  tape: SheetTexts[];
  facts: PanelFacts[];
  cautions: string[];
  problems: Problem[];
}

/** One panel at one corner. */
interface Wanted {
  mouth: MouthOutline;
  duct: Duct;
  words: PanelWords;
  panel: Panel;
  pointsPerMm: number;
  strips: StripFit;
}

export function cutSheets(request: CutRequest): CutSheets {
  const wanted = request.ducts.flatMap(({ side, duct }) =>
    request.panels.map((panel) => wantedAt(side, duct, panel, request)),
  );
  const drawn = wanted.map((each) => piecesOf(each, request));
  const { bed, correction, by, date, isExample, axle, supersedes } = request;
  const problems = unlike([...drawn.flatMap((each) => each.problems), ...oldCodeProblems(supersedes)]);
  const title = ['Panels ' + axle, by && `by ${by}`, date].filter(Boolean).join(', ');
  const frame: FrameWish = { bed, correction, title, isExample, cautions: 'cut' };
  const laid = layOut(problems.length > 0 ? [] : drawn.flatMap(({ pieces }) => pieces), frame);
  const all = unlike([...problems, ...laid.problems]);
  return {
    kind: 'cut',
    panels: all.length > 0 ? [] : textsOf(laid),
    tape: all.length > 0 || !request.hasTape ? [] : textsOf(tapeSheets(wanted, frame)),
    facts: wanted.map(factsOf),
    cautions: cautionsFor('cut', isExample),
    problems: all,
  };
}

function wantedAt(
  side: 'left' | 'right',
  duct: Duct,
  { letter, blanking_pct }: CutRequest['panels'][number],
  { axle, hold, fastener, corner_mm, date, modelHash, supersedes }: CutRequest,
): Wanted {
  const mouth = mouthOutline(duct);
  const made = [hold, fastener, corner_mm].join();
  const fits = mouthWords(mouth);
  const words = { letter, axle, side, blanking_pct, mouth: fits, made, date, modelHash, supersedes };
  const drawn = panelFor({ duct, blanking_pct, hold, fastener, corner_mm });
  return { ...drawn, mouth, duct, words, strips: nearestStrips(blanking_pct, taped(duct)) };
}

const oldCodeProblems = (code: string): Problem[] =>
  isMisread(code)
    ? [problem('supersedes', code, 'the code of a panel', 'a character is wrong or two are exchanged')]
    : [];

const mouthWords = ({ kind, width_mm, height_mm }: MouthOutline): string =>
  kind === 'round' ? `round, ${mm(width_mm)} mm` : `${kind}, ${mm(width_mm)} x ${mm(height_mm)} mm`;

const mm = (value: number): string => String(Math.round(value * 10) / 10);

function piecesOf(
  { panel: { plates, problems }, words }: Wanted,
  { kerf_mm }: CutRequest,
): { pieces: Piece[]; problems: Problem[] } {
  const wrong = problems.length > 0 ? problems : kerfProblems(plates, kerf_mm);
  if (wrong.length > 0) return { pieces: [], problems: wrong.map((each) => named(each, words.letter)) };
  return { pieces: plates.map((plate) => pieceOf({ plate, words, kerf_mm })), problems: [] };
}

/** "panel C.blanking_pct" */
const named = (one: Problem, letter: string): Problem => ({
  ...one,
  key: one.key.replace(/^panel/, `panel ${letter}`),
});

/** Two axles of sets as large as they come. */
const REMEMBERED = 20;

/** What takes long, remembered: the other corner, another page or another name make no other panel. */
const panelFor = memo(
  REMEMBERED,
  ({ duct, blanking_pct, hold, fastener, corner_mm }) => [duct, blanking_pct, hold, fastener, corner_mm],
  ({ duct, ...asked }: PanelAsked): Pick<Wanted, 'panel' | 'pointsPerMm'> => {
    const mouth = mouthOutline(duct);
    const blank = blankOf(duct);
    const coveredAt = (pct: number): Covered => blankFor(mouth, blank, pct);
    return {
      panel: drawPanel({ ...asked, mouth, coveredAt, hose_mm: duct.hose_mm }),
      pointsPerMm: pointsPerMm(mouth, blank, asked.blanking_pct),
    };
  },
);

interface PanelAsked extends Pick<CutRequest, 'hold' | 'fastener' | 'corner_mm'> {
  duct: Duct;
  blanking_pct: number;
}

/** On paper always, true to size where nothing was measured of it. */
function tapeSheets(wanted: readonly Wanted[], frame: FrameWish): Sheets {
  const pieces = wanted.filter(({ strips }) => strips.strips > 0).map(tapeOf);
  const paper = frame.bed.paper
    ? frame
    : { ...frame, bed: { paper: 'A4' as const }, correction: UNCORRECTED };
  return layOut(pieces, { ...paper, title: frame.title.replace('Panels', 'Tape plan'), cautions: 'tape' });
}

const tapeOf = ({ mouth, duct, words, strips }: Wanted): Piece =>
  tapePiece({
    mouth: mouth.loop,
    from: blankOf(duct).from,
    strip_mm: duct.strip_mm,
    overlap_mm: duct.strip_overlap_mm ?? 0,
    strips: strips.strips,
    side: words.side,
    asked_pct: words.blanking_pct,
    covered_pct: strips.pct,
    insteadOf: `${words.letter}, ${words.axle}, ${words.blanking_pct} %`,
  });

const textsOf = ({ sheets }: Sheets): SheetTexts[] =>
  sheets.map((sheet) => {
    const { title, number, width_mm, height_mm, isPart } = sheet;
    const files = { svg: sheetSvg(trueToSize(sheet)), dxf: sheetDxf(sheet) };
    return { title, number, width_mm, height_mm, isPart, svg: sheetSvg(sheet), files };
  });

const factsOf = ({ words, pointsPerMm, strips }: Wanted): PanelFacts => ({
  letter: words.letter,
  side: words.side,
  blanking_pct: words.blanking_pct,
  code: codeOf(words),
  pointsPerMm,
  strips,
});

/** Both sides of a car say the same of a panel once. */
const unlike = (problems: readonly Problem[]): Problem[] => [
  ...new Map(problems.map((each) => [JSON.stringify(each), each])).values(),
];
