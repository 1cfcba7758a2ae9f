/** The words of the ledger: names of its parts, what each is, the take-away title, the summary, the change. */
import type { CornerResult, LapKind, Ledger } from '../../engine/index.ts';
import { cornerName } from '../display/corner.ts';
import { capital, decimal, NBSP } from '../display/format.ts';
import { megajoules, OUT, type Account, type LedgerView, type Part } from './ledger-parts.ts';
import type { PinnedRun } from './stint-view.ts';

interface PartWords {
  /** In the picture and the table. */
  name: string;
  /** In a sentence: who, and does what. */
  who: string;
  does: string;
  what: string;
  equation: string;
  /** Where `engine/MODEL.md` has it. */
  model: string;
}

export const PART_WORDS: Record<Part, PartWords> = {
  friction: {
    name: 'made by friction',
    who: 'friction',
    does: 'made',
    what: 'Braking force times speed, less what the tyres slip away, shared by brake balance and halved between the sides; pads that drag add a little.',
    equation: 'P = F V (1 − s)',
    model: 'Speed and heat',
  },
  givenBack: {
    name: 'given back',
    who: 'the brake itself',
    does: 'gave back',
    what: 'The brake ends colder than it began, so heat that it held leaves with the rest. It is reckoned from the temperatures at both ends.',
    equation: 'H = Σ m h(T), end less start',
    model: 'Disc, State',
  },
  takenUp: {
    name: 'taken up',
    who: 'the brake',
    does: 'took up',
    what: 'A part was colder than the air, the hub or the upright beside it, and was warmed by it.',
    equation: 'G (T₀ − T)',
    model: 'Disc',
  },
  vanes: {
    name: 'air through the vanes',
    who: 'the vanes’ air',
    does: 'took',
    what: 'Air that the duct feeds and the turning disc pumps warms along the passages between the cheeks.',
    equation: 'ṁ c (1 − exp(−hA/ṁc)) (T − T₀)',
    model: 'Disc, Vanes',
  },
  faces: {
    name: 'air over the faces',
    who: 'the faces’ air',
    does: 'took',
    what: 'Both rubbed faces give heat to the air that passes and to the air that they turn with them; the duct’s leak washes the inner one.',
    equation: 'h A (T − T₀)',
    model: 'Disc, Faces',
  },
  others: {
    name: 'other air and spray',
    who: 'other air and spray',
    does: 'took',
    what: 'Rim edge, bell and caliper give heat to the air around them; in the wet, water that boils off faces and vanes is in it.',
    equation: 'Σ h A (T − T₀) + spray',
    model: 'Disc, Edge and Wet',
  },
  radiation: {
    name: 'radiation',
    who: 'radiation',
    does: 'took',
    what: 'Hot surfaces shine on wheel, plate and road; it grows with the fourth power of the temperature.',
    equation: 'ε A σ (T⁴ − T₀⁴)',
    model: 'Disc, Radiation',
  },
  conducted: {
    name: 'into hub and upright',
    who: 'hub and upright',
    does: 'took',
    what: 'The bell warms the hub and the caliper the upright; both are taken to stay at ambient.',
    equation: 'G (T − T₀)',
    model: 'Disc, Pads, caliper, fluid',
  },
  kept: {
    name: 'kept in the brake',
    who: 'the brake itself',
    does: 'kept',
    what: 'The brake ends hotter than it began: disc, bell, pads, caliper and fluid hold more heat. It is reckoned from the temperatures at both ends.',
    equation: 'H = Σ m h(T), end less start',
    model: 'Disc, State',
  },
};

const KINDS: Record<LapKind, string> = {
  out: 'an out-lap',
  push: 'a push lap',
  safety: 'a lap behind the safety car',
  in: 'an in-lap',
};

/** Unexplained heat up to this share of all is not worth a word: it is under what is printed. */
const CLOSED = 1e-6;

/** The books of a lap, or of the whole stint; undefined where there is no such lap. */
export function ledgerAt(corner: CornerResult, lap: number | null): Ledger | undefined {
  if (lap === null) return corner.ledger_J;
  return corner.lapLedgers_J[corner.laps.findIndex((each) => each.lap === lap)];
}

/** "2.25 MJ" */
export const heat = (units: number, digits: number): string =>
  `${decimal(megajoules(Math.abs(units), digits), digits)}${NBSP}MJ`;

const share = (pct: number): string => `${pct}${NBSP}%`;

function stretchName(corner: CornerResult, lap: number | null): string {
  const { length } = corner.laps;
  const stretch =
    lap === null ? `over ${length === 1 ? 'one lap' : `${length}${NBSP}laps`}` : `on lap${NBSP}${lap}`;
  return `${capital(cornerName(corner))} ${stretch}`;
}

const largestFirst = ({ steps }: Account): Part[] =>
  [...OUT].sort((a, b) => steps[b].to_J - steps[b].from_J - (steps[a].to_J - steps[a].from_J));

/** "Front on lap 5: of 2.25 MJ, the vanes’ air took 49 %, the faces’ air 31 %" */
export function ledgerTitle(corner: CornerResult, lap: number | null, { now, digits }: LedgerView): string {
  const name = stretchName(corner, lap);
  if (now.units === 0) return `${name}: no heat to speak of`;
  const [first, second] = largestFirst(now) as [Part, Part];
  const [most, next] = [PART_WORDS[first], PART_WORDS[second]];
  const verb = next.does === most.does ? '' : ` ${next.does}`;
  return `${name}: of ${heat(now.units, digits)}, ${most.who} ${most.does} ${share(now.steps[first].pct)}, ${next.who}${verb} ${share(now.steps[second].pct)}`;
}

/** Whose heat it is, how much of it went into air, and whether the books close. */
export function ledgerSummary(corner: CornerResult, lap: number | null, { now }: LedgerView): string {
  const { steps, total_J, residual_J, units } = now;
  const kind = corner.laps.find((each) => each.lap === lap)?.kind;
  const when = kind ? `on ${KINDS[kind]}` : 'standing included';
  const which = corner.side === 'both' ? 'One' : 'The';
  const whose = `${which} ${cornerName(corner)} brake, disc to fluid, ${when}.`;
  const air = steps.vanes.pct + steps.faces.pct + steps.others.pct;
  const isClosed = Math.abs(residual_J) <= CLOSED * total_J;
  const end = isClosed
    ? 'All heat is accounted for.'
    : `${decimal(residual_J / 1e6, 3)}${NBSP}MJ is not accounted for.`;
  return [whose, units > 0 ? `Air took ${share(air)}.` : '', end].filter(Boolean).join(' ');
}

/** How many changes are told in words; the table has all. */
const TOLD = 3;

/** "Dashed: pinned 50 %. Against it the vanes’ air took 3.1 MJ less, radiation took 1.9 MJ more." */
export function ledgerChange(
  { rows, pinned, digits }: LedgerView,
  run: PinnedRun,
  lap: number | null,
): string {
  if (!pinned) return lap === null ? '' : `The run ${run.label} has no lap${NBSP}${lap}.`;
  const changes = rows.flatMap(({ part, change }) => (change ? [{ part, change }] : []));
  if (changes.length === 0) return `Dashed: ${run.label}; the same, to ${heat(1, digits)}.`;
  const words = changes
    .toSorted((a, b) => Math.abs(b.change) - Math.abs(a.change))
    .slice(0, TOLD)
    .map(({ part, change }) => {
      const { who, does } = PART_WORDS[part];
      return `${who} ${does} ${heat(change, digits)} ${change > 0 ? 'more' : 'less'}`;
    });
  return `Dashed: ${run.label}. Against it ${words.join(', ')}.`;
}

/** "+0.12", "−0.30", "0.00": a change, under a heading that has the unit. */
export const signed = (units: number, digits: number): string =>
  `${units > 0 ? '+' : ''}${decimal(megajoules(units, digits), digits)}`;

/** The table as a file: headings with their units, then each part as printed. */
export function ledgerRows({ rows, digits }: LedgerView, run: PinnedRun | null): string[][] {
  const label = run?.label.replaceAll(NBSP, ' ') ?? '';
  const number = (units: number): string => megajoules(units, digits).toFixed(digits);
  return [
    ['Part', 'Way', 'Heat, MJ', 'Share, %', ...(run ? [`${label}, MJ`, 'Change, MJ'] : [])],
    ...rows.map(({ part, isIn, now, pinned, change }) => [
      PART_WORDS[part].name.replaceAll('’', "'"),
      isIn ? 'in' : 'out',
      number(now.units),
      String(now.pct),
      ...(run ? [pinned ? number(pinned.units) : '', change === null ? '' : number(change)] : []),
    ]),
  ];
}
