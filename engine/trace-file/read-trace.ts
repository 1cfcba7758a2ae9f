/** Reads a logger's text file: what was understood, what is in the way, and one lap of it in SI units. */
import type { TraceColumns } from '../circuit/trace.ts';
import type { TraceChoices, TraceReading, UnderstoodTrace } from '../circuit/understood.ts';
import { cutRows } from './cut-rows.ts';
import { guessFormat, type GuessedFormat } from './guess-format.ts';
import { headerOf } from './header.ts';
import { kindsOf, readColumns } from './read-columns.ts';
import { tooWide, whyNoTable } from './no-table.ts';
import { rolesOf } from './roles.ts';
import { sampleOf, type Sample } from './sample.ts';
import { understandColumns } from './understand.ts';
import { listed } from './words.ts';

/** Structured text and web pages. */
const NO_ROWS = /^\s*(\{\s*["'\n]|\[\s*\{|<[a-z!?])/i;

const refused = (problem: string): TraceReading => ({ problems: [problem], understood: null, columns: null });

/**
 * Nothing is silent: what was left out or set right is said in `mended`, what cannot be is a problem with its row and
 * column, and where two readings fit there is one question.
 */
export function readTrace(
  text: string,
  choices: TraceChoices = {},
  progress: (share: number) => void = () => undefined,
): TraceReading {
  const clean = text.replace(/^\uFEFF/, '');
  if (clean.trim() === '') return refused('file: it is empty');
  if (NO_ROWS.test(clean))
    return refused('file: it is no table of rows; export it from the logger as text (CSV) first');
  const sample = sampleOf(clean);
  const wide = tooWide(sample);
  if (wide) return refused(wide);
  const { format, problems } = formatFor(sample, choices);
  if (!format) return refused(whyNoTable(sample));
  const rowsOf = (lines: readonly string[]): string[][] =>
    cutRows(lines.join('\n'), format).filter((row) => row.some((cell) => cell.trim() !== ''));
  const head = rowsOf(sample.head);
  const pieces = rowsOf(sample.pieces);
  const header = headerOf(head, pieces, format);
  if (!header) return refused(whyNoTable(sample));
  const kinds = kindsOf([...head, ...pieces], header, format);
  const columns = readColumns(clean, format, header, kinds, (share) => progress(READING * share));
  const roles = rolesOf(header, columns, choices);
  const reading = understandColumns({ format, header, columns, roles, choices });
  progress(1);
  return settled(reading.understood, [...problems, ...reading.problems], reading.columns);
}

/** Share of the time that goes into cutting cells. */
const READING = 0.9;

/** A lap is handed out when nothing is open. */
function settled(
  understood: UnderstoodTrace,
  problems: string[],
  columns: TraceColumns | null,
): TraceReading {
  const isOpen = problems.length > 0 || understood.question !== null;
  return { problems: listed(problems), understood, columns: isOpen ? null : columns };
}

/** A choice that makes no table is said, and the file shown as it is guessed, so that another can be made. */
function formatFor(sample: Sample, choices: TraceChoices): { format?: GuessedFormat; problems: string[] } {
  const format = guessFormat(sample, choices);
  if (format) return { format, problems: [] };
  const { delimiter: _delimiter, decimal: _decimal, ...others } = choices;
  const guessed = guessFormat(sample, others);
  return guessed
    ? {
        format: guessed,
        problems: ['file: the chosen delimiter and decimal mark make no rows of numbers; choose others'],
      }
    : { problems: [] };
}
