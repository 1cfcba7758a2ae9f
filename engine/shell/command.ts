/** The terminal's door: one stint from a file and settings to a table, JSON or CSV. */
import { readFileSync, statSync, writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import type { TraceQuestion, UnderstoodTrace } from '../circuit/understood.ts';
import { tooLarge } from '../scenario/file-size.ts';
import { isCalibrated } from '../scenario/calibrated.ts';
import { isTree, keysUnknown, valueAt } from '../scenario/keys.ts';
import { assembled, defaultScenario, isCatalogueFile } from '../scenario/library.ts';
import { override, unknownKeys, valueFromText, type Changes } from '../scenario/override.ts';
import { checkScenario, parseScenario } from '../scenario/parse.ts';
import { problem, problemLine, type Problem } from '../scenario/problem.ts';
import type { Scenario } from '../scenario/schema.ts';
import { tracePart } from '../scenario/trace-part.ts';
import { compile } from '../stint/compile.ts';
import type { Notice } from '../stint/result.ts';
import { run } from '../stint/run.ts';
import type { Sample } from '../advise/doubt.ts';
import { finished } from '../advise/look.ts';
import { safeSpans } from '../advise/safe-span.ts';
import { sensitivity } from '../advise/sensitivity.ts';
import { spread } from '../advise/spread.ts';
import { doubtLines } from '../report/doubt-lines.ts';
import { measureFirstRecord, spreadRecord } from '../report/doubt-record.ts';
import { summarise } from '../report/summary.ts';
import { stintCsv, stintTable } from '../report/table.ts';
import { readTrace } from '../trace-file/read-trace.ts';
import { decodeText } from './decode-text.ts';

const USAGE =
  'usage: npm run --silent stint -- [scenario.json] [--trace trace.csv] [--set key=value ...] [--spread [draws] [--seed n]] [--json | --csv FILE]';

/** Ends with one line a problem on stderr and nothing on stdout. */
class Refused extends Error {
  constructor(readonly lines: string[]) {
    super(lines.join('\n'));
  }
}

function main(args: string[]): void {
  const { values, positionals } = commandLine(args);
  if (values.help) return void process.stdout.write(`${USAGE}\n`);
  const sample = sampleFrom(values);
  const plain = scenarioFrom(positionals[0]);
  const { base, said } =
    values.trace === undefined ? { base: plain, said: [] } : withTrace(plain, values.trace);
  const changed = set(base, values.set ?? []);
  const model = compile(changed, { driven: base });
  if (values.csv !== undefined) {
    const rows = [...stintCsv(run(model))].join('\n');
    attempt(values.csv, 'a file that can be written', () => writeFileSync(values.csv!, `${rows}\n`));
    return;
  }
  const record = summarise(run(model, 'summary'), finished(safeSpans(changed, { driven: base })));
  const isSaid = ({ text }: Notice): boolean => said.some((notice) => notice.text === text);
  record.notices = [...said, ...record.notices.filter((notice) => !isSaid(notice))];
  const doubt = sample && doubtOf(changed, sample, base);
  if (values.json) return void process.stdout.write(`${JSON.stringify({ ...record, ...doubt })}\n`);
  const lines = doubt ? doubtLines(doubt.spread, doubt.measureFirst) : [];
  process.stdout.write([stintTable(record), ...lines, ''].join('\n'));
}

function commandLine(args: string[]) {
  const options = {
    help: { type: 'boolean' },
    json: { type: 'boolean' },
    csv: { type: 'string' },
    trace: { type: 'string' },
    set: { type: 'string', multiple: true },
    spread: { type: 'string' },
    seed: { type: 'string' },
  } as const;
  try {
    const line = parseArgs({ args: args.flatMap(withDraws), options, allowPositionals: true });
    if (line.positionals.length > 1) throw new Error(`one scenario file, got ${line.positionals.length}`);
    if (line.values.json && line.values.csv !== undefined)
      throw new Error('either --json or --csv, not both');
    if (line.values.spread !== undefined && line.values.csv !== undefined)
      throw new Error('either --spread or --csv, not both');
    if (line.values.seed !== undefined && line.values.spread === undefined)
      throw new Error('--seed goes with --spread');
    return line;
  } catch (error) {
    throw new Refused([`command line: ${messageOf(error)}`, USAGE]);
  }
}

/** As many as the page draws, from the same seed: both say the same. */
const SAMPLE: Sample = { draws: 100, seed: 1 };

/** A number of draws may be left out after `--spread`. */
const withDraws = (arg: string, i: number, args: string[]): string[] =>
  arg === '--spread' && !/^[+-]?[\d.]+$/.test(args[i + 1] ?? '') ? [`--spread=${SAMPLE.draws}`] : [arg];

function sampleFrom({ spread: draws, seed }: { spread?: string; seed?: string }): Sample | null {
  if (draws === undefined) return null;
  return {
    draws: wholeNumber('--spread', draws, [1, 10_000]),
    seed: seed === undefined ? SAMPLE.seed : wholeNumber('--seed', seed, [0, 2 ** 31 - 1]),
  };
}

function wholeNumber(option: string, text: string, [min, max]: [number, number]): number {
  const value = Number(text);
  if (text.trim() !== '' && Number.isInteger(value) && value >= min && value <= max) return value;
  throw refusedFor([problem(option, text, `a whole number, ${min} to ${max}`)]);
}

/** The spread of the answer and what to measure first, as they are printed. */
function doubtOf(scenario: Scenario, sample: Sample, driven: Scenario) {
  return {
    spread: spreadRecord(finished(spread(scenario, sample, { driven })), isCalibrated(scenario)),
    measureFirst: measureFirstRecord(finished(sensitivity(scenario, { driven }))),
  };
}

function scenarioFrom(file: string | undefined): Scenario {
  if (file === undefined) return defaultScenario();
  const text = attempt(file, 'a scenario file that can be read', () => readFileSync(file, 'utf8'));
  const json = attempt(file, 'JSON', () => JSON.parse(text) as unknown);
  const whole = isCatalogueFile(json)
    ? attempt(file, 'a car and a circuit of the library', () => assembled(json))
    : json;
  const parsed = parseScenario(whole);
  const unknown = isTree(whole)
    ? keysUnknown(whole).map((key) => problem(key, valueAt(whole, key), 'a key of the scenario'))
    : [];
  if (unknown.length > 0) throw refusedFor([...unknown, ...(parsed.ok ? [] : parsed.problems)]);
  return accepted(parsed);
}

/** The scenario on the file's lap, and how the file was understood. */
function withTrace(scenario: Scenario, file: string): { base: Scenario; said: Notice[] } {
  const bytes = attempt(file, 'a trace file that can be read', () => {
    const problem = tooLarge(statSync(file).size);
    if (problem) throw new Refused([`${file}: ${problem}`]);
    return readFileSync(file);
  });
  const decoded = decodeText(new Uint8Array(bytes).buffer);
  if (!('text' in decoded)) throw new Refused([`${file}: ${decoded.problem}`]);
  const { columns, problems, understood } = readTrace(decoded.text);
  const question = understood?.question;
  const open = question ? [...problems, questionLine(question)] : problems;
  if (!columns) throw new Refused(open.map((line) => `${file}: ${line}`));
  const base = accepted(checkScenario({ ...scenario, trace: tracePart(file, columns) }));
  return { base, said: understood ? traceSaid(understood) : [] };
}

/** Which lap, what was read as another unit, and what was left out or set right. */
const traceSaid = ({ laps, lap, columns, mended }: UnderstoodTrace): Notice[] =>
  [
    ...(lap !== null && laps.length > 1 ? [`lap ${laps[lap]!.lap}, one of ${laps.length} in the file`] : []),
    ...columns.flatMap(({ name, unitReason }) => (unitReason ? [`${name}: ${unitReason}`] : [])),
    ...mended,
  ].map((text) => ({ kind: 'trace', text: `trace: ${text}` }));

/** Nobody answers here: the file itself must say it. */
const questionLine = ({ text, answers }: TraceQuestion): string =>
  `${text} (${answers.map((answer) => answer.text).join(' or ')}) The page asks; here the file must say it`;

function set(base: Scenario, settings: string[]): Scenario {
  const malformed = settings.filter((setting) => !/^[^=]+=/.test(setting));
  if (malformed.length > 0)
    throw refusedFor(malformed.map((setting) => problem('--set', setting, 'key=value')));
  const changes: Changes = Object.fromEntries(
    settings.map((setting) => {
      const at = setting.indexOf('=');
      const key = setting.slice(0, at);
      return [key, valueFromText(key, setting.slice(at + 1))];
    }),
  );
  const unknown = unknownKeys(changes);
  const known = Object.fromEntries(
    Object.entries(changes).filter(([key]) => !unknown.some((p) => p.key === key)),
  );
  const result = override(base, known);
  const problems = [...unknown, ...(result.ok ? [] : result.problems)];
  if (problems.length > 0 || !result.ok) throw refusedFor(problems);
  return result.scenario;
}

function accepted(parsed: ReturnType<typeof parseScenario>): Scenario {
  if (!parsed.ok) throw refusedFor(parsed.problems);
  return parsed.scenario;
}

const refusedFor = (problems: Problem[]): Refused => new Refused(problems.map(problemLine));

function attempt<T>(file: string, expected: string, action: () => T): T {
  try {
    return action();
  } catch (error) {
    if (error instanceof Refused) throw error;
    throw new Refused([`${file}: expected ${expected}, got ${messageOf(error)}`]);
  }
}

const messageOf = (error: unknown): string =>
  (error instanceof Error ? error.message : String(error)).split('\n')[0]!;

try {
  main(process.argv.slice(2));
} catch (error) {
  if (!(error instanceof Refused)) throw error;
  process.stderr.write(`${error.lines.join('\n')}\n`);
  process.exitCode = 2;
}
