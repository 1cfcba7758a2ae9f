/** The report of all cases: for the page as JSON, for the model's document as a table. Rounded, so that every machine writes the same. */
import { format, resolveConfig } from 'prettier';
import { root } from '../support/tree.ts';
import { judge, parseData, type Column, type Group, type Proof, type ValidationCase } from './gate.ts';

interface Line {
  quantity: string;
  unit: string;
  values: number;
  /** True: the errors are shares of the published value; else they are in the unit. */
  relative: boolean;
  mean: number;
  median: number;
  p90: number;
  max: number;
  /** Largest error over what is allowed. */
  share: number;
  allowed: { relative?: number; absolute?: number };
  uncertainty: string;
  why: string;
}

interface Entry {
  name: string;
  title: string;
  group: Group;
  proof: Proof;
  by: string;
  lines: Line[];
}

export interface Report {
  cases: Entry[];
}

export const REPORT_FILE = 'web/pages/trust/report.json';
export const MODEL_FILE = 'engine/MODEL.md';
const BEGINS = '<!-- validation report begins -->';
const ENDS = '<!-- validation report ends -->';

/** Shares of the value this small are rounding, of the source's digits or of the processor: they are told as 0. */
const ROUNDING = 1e-5;
const steady = (size: number, scale: number): number =>
  size < ROUNDING * scale ? 0 : Number(size.toPrecision(2));

export function reportOf(cases: readonly ValidationCase[]): Report {
  return { cases: cases.map(entryOf) };
}

function entryOf(validation: ValidationCase): Entry {
  const { name, title, group, proof, by, tolerance } = validation;
  const rows = parseData(validation.data);
  const lines = judge(validation).map((verdict): Line => {
    const { quantity, unit, relative, absolute, uncertainty, why } = tolerance[verdict.column] as Column;
    const largest = rows.reduce((most, row) => Math.max(most, Math.abs(row[verdict.column] || 0)), 0);
    const rounded = (size: number): number => steady(size, relative === undefined ? largest : 1);
    return {
      quantity,
      unit,
      values: verdict.compared,
      relative: relative !== undefined,
      mean: rounded(verdict.mean),
      median: rounded(verdict.median),
      p90: rounded(verdict.p90),
      max: rounded(verdict.max),
      share: Number(verdict.worstShare.toFixed(2)),
      allowed: { ...(relative && { relative }), ...(absolute && { absolute }) },
      uncertainty,
      why,
    };
  });
  return { name, title, group, proof, by, lines };
}

const percent = (share: number): string => `${Number((share * 100).toPrecision(2))} %`;

/** "1.4 %" or "0.0052 K". */
function errorWords({ relative, unit }: Line, size: number): string {
  if (size === 0) return 'rounding';
  return relative ? percent(size) : `${size} ${unit}`.trim();
}

const allowedWords = ({ allowed, unit }: Line): string =>
  [
    allowed.relative === undefined ? '' : percent(allowed.relative),
    allowed.absolute === undefined ? '' : `${allowed.absolute} ${unit}`.trim(),
  ]
    .filter(Boolean)
    .join(' + ');

const PROOF_WORDS: Record<Proof, string> = {
  measurement: 'measured',
  solution: 'solved another way',
  author: 'other author',
  code: 'other code',
};

function table(report: Report): string {
  const rows = report.cases.flatMap(({ name, title, proof, lines }) =>
    lines.map((line, i) => {
      const error = (size: number): string => errorWords(line, size);
      const link = i === 0 ? `[${title}](../test/validation/${name}/source.md)` : '';
      const sizes = [line.mean, line.median, line.p90, line.max].map(error).join(' | ');
      return `| ${link} | ${i === 0 ? PROOF_WORDS[proof] : ''} | ${line.quantity} | ${line.values} | ${sizes} | ${allowedWords(line)} |`;
    }),
  );
  return [
    '| case | against | quantity | values | mean error | median | nine of ten within | largest | allowed |',
    '| --- | --- | --- | --- | --- | --- | --- | --- | --- |',
    ...rows,
  ].join('\n');
}

async function formatted(text: string, file: string): Promise<string> {
  const options = await resolveConfig(root + file);
  return format(text, { ...options, filepath: root + file });
}

export const reportText = (report: Report): Promise<string> => formatted(JSON.stringify(report), REPORT_FILE);

/** The model's document with the table between its marks renewed. */
export async function modelText(document: string, report: Report): Promise<string> {
  const from = document.indexOf(BEGINS);
  const to = document.indexOf(ENDS);
  if (from < 0 || to < from) throw new Error(`marks: ${MODEL_FILE} needs "${BEGINS}" and "${ENDS}"`);
  const renewed = await formatted(table(report), MODEL_FILE);
  return `${document.slice(0, from)}${BEGINS}\n\n${renewed.trim()}\n\n${document.slice(to)}`;
}
