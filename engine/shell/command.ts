/** The terminal's door: one stint to a table, JSON or CSV, or a file of stints to a line of JSON each. */
import { writeFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { parseArgs } from 'node:util';
import { doubtLines } from '../report/doubt-lines.ts';
import { stintCsv, stintTable } from '../report/table.ts';
import { valueFromText, type Changes } from '../scenario/override.ts';
import { problem } from '../scenario/problem.ts';
import { run } from '../stint/run.ts';
import { batch } from './batch.ts';
import { jobFrom } from './job.ts';
import { attempt, messageOf, Refused } from './refused.ts';
import { prepared, recordOf } from './stint-job.ts';

const COMMAND = 'npm run --silent stint --';
const USAGE = [
  `usage: ${COMMAND} [scenario.json] [--trace trace.csv] [--set key=value ...] [--spread [draws] [--seed n]] [--no-span] [--json | --csv FILE]`,
  `       ${COMMAND} --batch jobs.jsonl [--threads n]     (--batch - reads standard input)`,
];

class Misused extends Error {
  constructor(reason: string) {
    super([`command line: ${reason}`, ...USAGE].join('\n'));
  }
}

const OPTIONS = {
  help: { type: 'boolean' },
  json: { type: 'boolean' },
  csv: { type: 'string' },
  trace: { type: 'string' },
  set: { type: 'string', multiple: true },
  spread: { type: 'string' },
  seed: { type: 'string' },
  'no-span': { type: 'boolean' },
  batch: { type: 'string' },
  threads: { type: 'string' },
} as const;

type Options = ReturnType<typeof commandLine>['values'];

/** The status to end with. */
async function main(args: string[]): Promise<number> {
  const { values, positionals } = commandLine(args);
  if (values.help) print(USAGE);
  else if (values.batch !== undefined) return batch(values.batch, threadsFrom(values.threads));
  else oneStint(values, positionals[0]);
  return 0;
}

function oneStint({ csv, json, ...values }: Options, scenario: string | undefined): void {
  const spread = values.spread === undefined ? undefined : sampleFrom(values.spread, values.seed);
  const [set, span] = [changesFrom(values.set ?? []), !values['no-span']];
  const job = jobFrom({ scenario, trace: values.trace, set, spread, span });
  if (csv !== undefined) {
    const rows = [...stintCsv(run(prepared(job).model)), ''].join('\n');
    return attempt(['csv', csv, 'a file that can be written'], () => writeFileSync(csv, rows));
  }
  const record = recordOf(job);
  if (json) return print([JSON.stringify(record)]);
  const { spread: drawn, measureFirst } = record;
  print([stintTable(record), ...(drawn && measureFirst ? doubtLines(drawn, measureFirst) : [])]);
}

const print = (lines: string[]): void => void process.stdout.write(`${lines.join('\n')}\n`);

function commandLine(args: string[]) {
  try {
    const line = parseArgs({ args: args.flatMap(withDraws), options: OPTIONS, allowPositionals: true });
    const clash = clashIn(Object.keys(line.values), line.positionals.length);
    if (clash) throw new Error(clash);
    return line;
  } catch (error) {
    throw new Misused(messageOf(error));
  }
}

/** What cannot be asked for together; empty where all can. */
function clashIn(given: string[], files: number): string {
  const has = (option: string): boolean => given.includes(option);
  if (has('batch') && (files > 0 || given.some((option) => !['batch', 'threads'].includes(option))))
    return '--batch goes with --threads only: each line of it says the rest';
  if (has('threads') && !has('batch')) return '--threads goes with --batch';
  if (files > 1) return `one scenario file, got ${files}`;
  if (has('json') && has('csv')) return 'either --json or --csv, not both';
  if (has('spread') && has('csv')) return 'either --spread or --csv, not both';
  if (has('seed') && !has('spread')) return '--seed goes with --spread';
  return '';
}

/** A number of draws may be left out after `--spread`. */
const withDraws = (arg: string, i: number, args: string[]): string[] =>
  arg === '--spread' && !/^[+-]?[\d.]+$/.test(args[i + 1] ?? '') ? ['--spread='] : [arg];

const sampleFrom = (draws: string, seed: string | undefined) => ({
  draws: draws === '' ? undefined : valueFromText('', draws),
  seed: seed === undefined ? undefined : valueFromText('', seed),
});

function changesFrom(settings: string[]): Changes {
  const malformed = settings.filter((setting) => !/^[^=]+=/.test(setting));
  if (malformed.length > 0)
    throw new Refused(malformed.map((setting) => problem('--set', setting, 'key=value')));
  return Object.fromEntries(
    settings.map((setting) => {
      const at = setting.indexOf('=');
      const key = setting.slice(0, at);
      return [key, valueFromText(key, setting.slice(at + 1))];
    }),
  );
}

function threadsFrom(text = String(availableParallelism())): number {
  const threads = Number(text);
  if (Number.isInteger(threads) && threads >= 1 && threads <= 1000) return threads;
  throw new Refused([problem('--threads', text, 'a whole number, 1 to 1000')]);
}

try {
  process.exitCode = await main(process.argv.slice(2));
} catch (error) {
  if (!(error instanceof Refused || error instanceof Misused)) throw error;
  process.stderr.write(`${error.message}\n`);
  process.exitCode = 2;
}
