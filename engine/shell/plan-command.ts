/** The terminal's door to the plan of an event: which panels to bring, when to fit which, and what a wrong one costs. */
import { parseArgs } from 'node:util';
import weekend from '../../scenarios/events/sorrelby-weekend.json' with { type: 'json' };
import { finished } from '../advise/finished.ts';
import { planFor } from '../advise/plan.ts';
import { planLines } from '../report/plan-lines.ts';
import { planRecord, type PlanRecord } from '../report/plan-record.ts';
import { parseEvent } from '../scenario/event-parse.ts';
import { planGround } from '../scenario/plan-ground.ts';
import { isExampleWindow } from '../scenario/example-window.ts';
import { jsonFrom } from './base.ts';
import { messageOf, Refused } from './refused.ts';

const USAGE = 'usage: npm run --silent plan -- [event.json] [--json]';

class Misused extends Error {
  constructor(reason: string) {
    super(`command line: ${reason}\n${USAGE}`);
  }
}

function main(args: string[]): void {
  const { values, positionals } = commandLine(args);
  if (values.help) return print([USAGE]);
  const [file] = positionals;
  const record = planOf(file === undefined ? weekend : jsonFrom(file, 'event'));
  print(values.json ? [JSON.stringify(record)] : planLines(record));
}

function commandLine(args: string[]) {
  try {
    const options = { help: { type: 'boolean' }, json: { type: 'boolean' } } as const;
    const line = parseArgs({ args, options, allowPositionals: true });
    if (line.positionals.length > 1) throw new Error(`one event file, got ${line.positionals.length}`);
    return line;
  } catch (error) {
    throw new Misused(messageOf(error));
  }
}

function planOf(input: unknown): PlanRecord {
  const parsed = parseEvent(input);
  if (!parsed.ok) throw new Refused(parsed.problems);
  const { event } = parsed;
  const { scenario, left } = planGround(event.scenario);
  const notices = [
    ...(isExampleWindow(scenario) ? ['a window without a named source: not for use on a car'] : []),
    ...event.changed.map((text) => `file: ${text}`),
    ...left.map((key) => `stint.${key} left out: the sessions and the plan say it`),
  ];
  return planRecord(event.name, finished(planFor(scenario, event)), notices);
}

const print = (lines: readonly string[]): void => void process.stdout.write(`${lines.join('\n')}\n`);

try {
  main(process.argv.slice(2));
} catch (error) {
  if (!(error instanceof Refused || error instanceof Misused)) throw error;
  process.stderr.write(`${error.message}\n`);
  process.exitCode = 2;
}
