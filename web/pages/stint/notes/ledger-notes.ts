/** Notes on the parts of the ledger, on one lap or over the stint: what each is, and its equation with today's means. */
import { ledgerView, IN, megajoules, OUT, type LedgerView, type Part } from '../../../charts/ledger-parts.ts';
import { heat, ledgerAt, PART_WORDS } from '../../../charts/ledger-words.ts';
import type { CornerColumns, CornerResult, Ledger, StintResult } from '../../../../engine/index.ts';
import { NBSP } from '../../../display/format.ts';
import { bracketed, worked, type Line, type Maker } from './note.ts';

/** A part of the stint on the clock: the step that ends at each of these samples belongs to it. */
interface Stretch {
  first: number;
  last: number;
  result: StintResult;
}

function stretchOf(result: StintResult, lap: number | null): Stretch {
  const at = result.laps.find((each) => each.lap === lap);
  return at
    ? { first: at.firstSample, last: at.lastSample, result }
    : { first: 0, last: result.clock.time_s.length - 1, result };
}

/** The sum over time of what is given at each sample. */
function summed({ first, last, result }: Stretch, of: (sample: number) => number): number {
  const { time_s } = result.clock;
  let sum = 0;
  for (let i = first + 1; i <= last; i++) sum += ((time_s[i] ?? 0) - (time_s[i - 1] ?? 0)) * of(i);
  return sum;
}

function ambientAt({ phases, clock }: StintResult, sample: number): number {
  const time_s = clock.time_s[sample] ?? 0;
  return (phases.findLast(({ start_s }) => start_s <= time_s) ?? phases[0])?.ambient_K ?? 0;
}

/** Which temperature drives a part. */
const DRIVES: Partial<Record<Part, readonly [key: keyof CornerColumns, name: string, ledger: keyof Ledger]>> =
  {
    vanes: ['wall_K', 'vane wall', 'vaneAir'],
    faces: ['face_K', 'face', 'faceAir'],
    others: ['caliper_K', 'caliper', 'otherAir'],
    conducted: ['bell_K', 'bell', 'conducted'],
  };

const MJ = 1e6;

/** G · ΔT · t with the mean conductance of the stretch. */
function conductanceLine(part: Part, columns: CornerColumns, ledger: Ledger, stretch: Stretch, step: number) {
  const drive = DRIVES[part];
  if (!drive) return null;
  const [key, name, book] = drive;
  const seconds = summed(stretch, () => 1);
  const excess_K =
    summed(stretch, (i) => (columns[key][i] ?? 0) - ambientAt(stretch.result, i)) / Math.max(seconds, 1e-9);
  const heat_J = Math.max(0, ledger[book]);
  if (excess_K < 1 || heat_J <= 0) return null;
  return worked({
    equation: `Q = G (T ${name} − T₀) t / 10⁶; G in W/K, T in K, t in s`,
    values: [heat_J / (excess_K * seconds), excess_K, seconds],
    write: ([conductance, excess, time]) => `${conductance} · ${excess} · ${time} / 10⁶`,
    of: ([conductance = 0, excess = 0, time = 0]) => (conductance * excess * time) / MJ,
    unit: 'MJ',
    step,
  });
}

/** Stefan and Boltzmann's constant for temperatures in hundreds of kelvin [W/m² (100 K)⁴], CODATA */
const SIGMA = 5.670374;
const HUNDRED_K = 100;

function radiationLine(
  columns: CornerColumns,
  { radiation }: Ledger,
  stretch: Stretch,
  step: number,
): Line | null {
  const seconds = summed(stretch, () => 1);
  const mean4 = (of: (i: number) => number): number =>
    (summed(stretch, (i) => of(i) ** 4) / Math.max(seconds, 1e-9)) ** 0.25 / HUNDRED_K;
  const face = mean4((i) => columns.face_K[i] ?? 0);
  const around = mean4((i) => ambientAt(stretch.result, i));
  const excess = face ** 4 - around ** 4;
  if (radiation <= 0 || excess < 1) return null;
  return worked({
    equation: 'Q = ε A σ (T face⁴ − T₀⁴) t / 10⁶; σ and T for 100 K, fourth-power means',
    values: [radiation / (SIGMA * excess * seconds), SIGMA, face, around, seconds],
    write: ([area, sigma, hot, cold, time]) => `${area} · ${sigma} · (${hot}⁴ − ${cold}⁴) · ${time} / 10⁶`,
    of: ([area = 0, sigma = 0, hot = 0, cold = 0, time = 0]) =>
      (area * sigma * (hot ** 4 - cold ** 4) * time) / MJ,
    unit: 'MJ',
    step,
  });
}

/** The heat of all four brakes, and the share of it that was made on this one. */
function frictionLine({ brakeHeat }: Ledger, stretch: Stretch, step: number): Line | null {
  const all_J = summed(stretch, (i) => stretch.result.clock.brakePower_W[i] ?? 0);
  if (all_J <= 0) return null;
  return worked({
    equation: 'Q = share of this brake · ∫ F V (1 − s) dt of all four, in MJ',
    values: [brakeHeat / all_J, all_J / MJ],
    write: ([share, all]) => `${share} · ${all}`,
    of: ([share = 0, all = 0]) => share * all,
    unit: 'MJ',
    step,
  });
}

/** What went in less what went out, as printed: parts add up on paper, too. */
function balanceLine(part: Part, { now, digits, rows }: LedgerView, step: number): Line {
  const there = (parts: readonly Part[]): Part[] =>
    parts.filter((each) => each !== part && rows.some((row) => row.part === each));
  const isIn = IN.some((each) => each === part);
  const [plus, less] = isIn ? [OUT, IN] : [IN, OUT];
  const [added, taken] = [there(plus), there(less)];
  const names = (parts: Part[], sign: string): string =>
    parts.map((each) => PART_WORDS[each].name).join(sign);
  return worked({
    equation: `${names(added, ' + ')}${taken.length > 0 ? ` − ${names(taken, ' − ')}` : ''}`,
    values: [...added, ...taken].map((each) => megajoules(now.steps[each].units, digits)),
    write: (texts) =>
      texts.map((text, i) => `${i === 0 ? '' : i < added.length ? ' + ' : ' − '}${bracketed(text)}`).join(''),
    of: (values) => values.reduce((sum, value, i) => sum + (i < added.length ? value : -value), 0),
    unit: 'MJ',
    step,
  });
}

function ownLine(
  part: Part,
  corner: CornerResult,
  ledger: Ledger,
  stretch: Stretch,
  step: number,
): Line | null {
  if (part === 'friction') return frictionLine(ledger, stretch, step);
  if (!corner.columns) return null;
  return part === 'radiation'
    ? radiationLine(corner.columns, ledger, stretch, step)
    : conductanceLine(part, corner.columns, ledger, stretch, step);
}

const partNote =
  (part: Part): Maker =>
  ({ corner, more }, { run: { result } }) => {
    const lap = more[0] === 'stint' ? null : Number(more[0]);
    const ledger = ledgerAt(corner, lap);
    if (!ledger) return null;
    const view = ledgerView(ledger, null);
    const { name, what, equation, model } = PART_WORDS[part];
    const step = 10 ** -view.digits;
    const { units, pct } = view.now.steps[part];
    const own = ownLine(part, corner, ledger, stretchOf(result, lap), step);
    const isBalanced = own === null && view.now.units > 0;
    const total = megajoules(view.now.units, view.digits);
    const share =
      view.now.units > 0 &&
      worked({
        equation: 'share = 100 Q / all heat',
        values: [megajoules(units, view.digits), total],
        write: ([one, all]) => `100 · ${one} / ${all}`,
        of: ([one = 0, all = 1]) => (100 * one) / all,
        unit: '%',
      });
    return {
      name,
      value: `${heat(units, view.digits)}, ${pct}${NBSP}%`,
      what,
      lines: [{ equation, filled: '' }, own, isBalanced && balanceLine(part, view, step), share].filter(
        (line) => line !== null && line !== false,
      ),
      source:
        'the heat is from the books of the run shown, temperatures are means of the run; the first factor is the mean that both give. Rounded so that all parts add up',
      model,
    };
  };

export const ledgerNotes = Object.fromEntries(
  [...IN, ...OUT].map((part) => [`ledger.${part}`, partNote(part)]),
);
