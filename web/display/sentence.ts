/** The sentence on top of the sheet: computed from the result, never typed. */
import type { Axle, CornerResult, Pull, SafeSpan, Scenario, StintResult } from '../../engine/index.ts';
import { ALLOWED, excessWords } from './allowed-words.ts';
import { blankingOf, cornerName, cornerOf, isOut, otherSide } from './corner.ts';
import { DOUBT_LETTERS, doubtSentence, type FoundSpread } from './doubt-words.ts';
import { driverLine } from './driver-line.ts';
import { capital, kelvins, NBSP, percent } from './format.ts';
import { spanClause, spanOf, spanSentence } from './span-words.ts';

/** A stretch of the sentence; a tone is set apart by weight and colour, the words say the same without it. */
export interface Piece {
  text: string;
  tone?: 'hot' | 'cold';
  /** Of a number, the key of its note; marked where notes are at hand. */
  about?: string;
}

export interface Sentence {
  lead: Piece[];
  rest: Piece[];
  /** How sure that is; goes on where the rest ends. */
  doubt: Piece[];
  /** For the driver and the garage; empty where nothing is worth a word. */
  driver: Piece[];
}

/** A run and the scenario it is of. */
interface Told {
  result: StintResult;
  scenario: Scenario;
}

/** The safe spans of the same scenario; null while they are searched, a sentence where the search failed. */
export type FoundSpans = readonly SafeSpan[] | string | null;

/** What is known beyond the result; each null while it is computed. */
export interface Advice {
  spans: FoundSpans;
  spread: FoundSpread;
}

/** Of rest and doubt together, as many as have room on the smallest sheet; beyond it the draws of what is proposed stand under "how sure". */
const MOST_LETTERS = 290;

/** The axle that is out leads, the front if both or neither are. */
export function speakersOf(result: StintResult): {
  leader: CornerResult | undefined;
  others: CornerResult[];
} {
  const corners = (['front', 'rear'] satisfies Axle[]).flatMap((axle) => cornerOf(result, axle) ?? []);
  const leader = corners.find(isOut) ?? corners[0];
  return { leader, others: corners.filter((corner) => corner !== leader) };
}

export function sentenceOf(result: StintResult, scenario: Scenario, { spans, spread }: Advice): Sentence {
  const { leader, others } = speakersOf(result);
  if (!leader) return { lead: [{ text: 'No disc was computed.' }], rest: [], doubt: [], driver: [] };
  const told = { result, scenario };
  const rest = others.flatMap((corner) =>
    spaced(clause(corner, subject(corner, told, ''), clauseOf(spans, corner))),
  );
  const across = (corner: CornerResult): Piece[] => acrossFrom(corner, otherSide(result, corner), told);
  const sides = [leader, ...others].flatMap((corner) => [corner, otherSide(result, corner) ?? []].flat());
  const doubt = doubtSentence(sides, spread, scenario);
  const driver = driverLine(result);
  const restWith = (isCounted: boolean): Piece[] => [
    ...safe(leader, spans, isCounted),
    ...across(leader),
    ...rest,
    ...others.flatMap(across),
    ...result.pulls.flatMap(pulling),
  ];
  const counted = restWith(true);
  // whether the doubt itself is there yet or not, so that no words go when it comes
  const letters = textOf(counted).length + Math.max(doubt.length, DOUBT_LETTERS);
  return {
    lead: clause(leader, subject(leader, told, ' blanked')),
    rest: letters <= MOST_LETTERS ? counted : restWith(false),
    doubt: doubt ? [{ text: doubt }] : [],
    driver: driver ? [{ text: driver }] : [],
  };
}

/** With a space after it: part of its last piece, for a piece of nothing would be pushed along by what comes before it. */
const spaced = (pieces: Piece[]): Piece[] =>
  pieces.map((piece, i) => (i < pieces.length - 1 ? piece : { ...piece, text: `${piece.text} ` }));

/** Its parts as they are read out, without those that say nothing. */
export const spokenParts = ({ lead, rest, doubt, driver }: Sentence): string[] =>
  [lead, rest, doubt, driver].map((line) => textOf(line).trim()).filter((text) => text !== '');

export const plainText = (sentence: Sentence): string => spokenParts(sentence).join(' ');

export const textOf = (pieces: readonly Piece[]): string => pieces.map(({ text }) => text).join('');

function subject(corner: CornerResult, told: Told, blanked: string): string {
  const name = capital(cornerName(corner));
  const spoken = spokenShare(corner, told);
  if (spoken === null) return `${name}, without a duct,`;
  return spoken === blankingOf(told.scenario, corner)
    ? `${name} ${percent(spoken)}${blanked}`
    : `${name}, by then ${percent(spoken)} blanked,`;
}

/** What is blanked when it happens that is spoken of; null without a duct. */
export const spokenShare = (corner: CornerResult, told: Told): number | null =>
  shareOn(lapSpokenOf(corner), corner, told) ?? blankingOf(told.scenario, corner);

/** The lap that the verdict's sentence is about. */
const lapSpokenOf = ({ verdict }: CornerResult): number =>
  verdict.firstLapOut ?? (verdict.hotMargin_K <= verdict.coldMargin_K ? verdict.hotLap : verdict.coldLap);

/** What is blanked on a lap: phases may have changed it. */
function shareOn(lap: number, corner: CornerResult, { result, scenario }: Told): number | null {
  const at = result.laps.find((each) => each.lap === lap);
  const phase = at && result.phases[at.phase];
  return blankingOf(phase ? { ...scenario, blanking_pct: phase.blanking_pct } : scenario, corner);
}

/** The verdict in a sentence; `more` goes on before the full stop. */
function clause(corner: CornerResult, who: string, more = ''): Piece[] {
  const { verdict } = corner;
  const end = { text: `${more}.` };
  const from = verdict.firstLapOut === null ? '' : ` from lap${NBSP}${verdict.firstLapOut}`;
  switch (verdict.status) {
    case 'hot':
      return [{ text: `${who} runs ` }, ...hot(corner, `${from},`), end];
    case 'cold':
      return [{ text: `${who} runs ` }, ...cold(corner, `${from},`), end];
    case 'both':
      return [
        { text: `${who} runs ` },
        ...hot(corner, ''),
        { text: ' and ' },
        ...cold(corner, ''),
        { text: tooWide(corner) },
        end,
      ];
    case 'in':
      return [{ text: `${who} stays in${spare(corner)}` }, end];
    case 'not judged':
      return [{ text: `${who} is not judged: ${reason(verdict.reason)}.` }];
  }
}

/** What the other side does, where the one that spoke is out and so tells only half. */
function acrossFrom(spoke: CornerResult, other: CornerResult | undefined, told: Told): Piece[] {
  if (!other || !isOut(spoke)) return [];
  const { status, hotMargin_K, coldMargin_K } = other.verdict;
  const isAlike = status === spoke.verdict.status && status !== 'both';
  if (!isAlike) return spaced(clause(other, subject(other, told, '')));
  const by = kelvins(status === 'hot' ? hotMargin_K : coldMargin_K);
  return [{ text: `${capital(cornerName(other))} too, by ${by}. ` }];
}

/** Discs that differ brake unequally. */
function pulling({ axle, by_K, calls }: Pull): Piece[] {
  if (calls === 'nothing') return [];
  const what = calls === 'fault' ? 'a fault, the car pulls' : 'the car pulls';
  return [{ text: `${capital(axle)} left and right part by ${kelvins(by_K)}: ${what}. ` }];
}

function hot({ verdict }: CornerResult, from: string): Piece[] {
  const where = verdict.hotLimit === 'bulk' ? ' in the bulk' : '';
  return [
    { text: 'too hot', tone: 'hot' },
    { text: `${where}${from} by ` },
    { text: kelvins(verdict.hotMargin_K), tone: 'hot' },
    { text: at(verdict.hotPlace) },
  ];
}

function cold({ verdict }: CornerResult, from: string): Piece[] {
  const onAverage = verdict.coldLimit === 'run';
  return [
    { text: 'too cold', tone: 'cold' },
    { text: `${onAverage ? ' on the mean of the lap' : ''}${from} by ` },
    { text: kelvins(verdict.coldMargin_K), tone: 'cold' },
    { text: onAverage ? '' : before(verdict.coldPlace) },
  ];
}

/** Which way it would fail first, and how far that is; a short excursion is allowed and said. */
function spare({ verdict }: CornerResult): string {
  const isHot = verdict.hotMargin_K <= verdict.coldMargin_K;
  const margin_K = isHot ? verdict.hotMargin_K : verdict.coldMargin_K;
  const where = isHot ? at(verdict.hotPlace) : verdict.coldLimit === 'run' ? '' : before(verdict.coldPlace);
  const way = isHot ? 'hot' : 'cold';
  return margin_K < 0
    ? `; ${excessWords(verdict)}${where} is ${ALLOWED}`
    : `, ${kelvins(margin_K)} from too ${way}${where}`;
}

function tooWide({ verdict, window }: CornerResult): string {
  const width_K = window.facePeak_K - window.bite_K;
  return verdict.swing_K !== null && verdict.swing_K > width_K
    ? `: its swing of ${kelvins(verdict.swing_K)} is wider than the window, ${kelvins(width_K)}`
    : '';
}

function safe(corner: CornerResult, found: FoundSpans, isCounted: boolean): Piece[] {
  if (corner.verdict.status === 'not judged') return [];
  if (found === null) return [{ text: 'The safe span follows. ' }];
  if (typeof found === 'string') return [{ text: `${found} ` }];
  const span = spanOf(found, corner);
  const text = span ? spanSentence(span, isCounted) : '';
  return text ? [{ text: `${text} ` }] : [];
}

function clauseOf(found: FoundSpans, corner: CornerResult): string {
  const span = found === null || typeof found === 'string' ? undefined : spanOf(found, corner);
  return span ? spanClause(span) : '';
}

const at = (place: string): string => (place === '' ? '' : ` at ${unbroken(place)}`);
const before = (place: string): string => (place === '' ? '' : ` before ${unbroken(place)}`);
const unbroken = (place: string): string => place.replace(/ (?=\S{1,4}$)/, NBSP);
const reason = (text: string | null): string => (text ?? 'no reason given').replace(/\.$/, '');
