/** One stint that somebody asks for: on a command line, or in a line of a batch. */
import * as v from 'valibot';
import type { Sample } from '../advise/doubt.ts';
import { count, flag } from '../scenario/field.ts';
import type { Changes } from '../scenario/changes.ts';
import { problem, type Problem } from '../scenario/problem.ts';
import { isTree, type Tree } from '../scenario/tree.ts';
import { Refused } from './refused.ts';

export interface Job {
  /** Of whoever asks, given back with the answer; undefined: none. */
  id?: unknown;
  /** A file, or what would stand in it; undefined: the default scenario. */
  scenario?: string | Tree | undefined;
  /** A logger's file to drive on. */
  trace?: string | undefined;
  set: Changes;
  /** How many draws from which seed; undefined: the spread is not asked for. */
  spread?: Sample | undefined;
  /** Whether the safe span is searched, which costs some 45 stints. */
  span: boolean;
}

/** As many as the page draws, from the same seed: both say the same. */
const SAMPLE: Sample = { draws: 100, seed: 1 };

/** JSON keeps no larger number exactly, and an id that comes back changed finds nothing. */
const isKept = (id: unknown): boolean => typeof id !== 'number' || Math.abs(id) <= Number.MAX_SAFE_INTEGER;

const isText = (value: unknown): boolean => typeof value === 'string';

/** An object, and no list, that has no other keys. */
const objectOf = <const T extends v.ObjectEntries>(what: string, entries: T) =>
  v.pipe(
    v.custom<Tree>(isTree, 'an object'),
    v.strictObject(entries, `a key of ${what}: ${Object.keys(entries).join(', ')}`),
  );

const sampleSchema = objectOf('the spread', {
  draws: v.optional(count('Draws', [1, 10_000], 'Runs with every doubted value drawn'), SAMPLE.draws),
  seed: v.optional(count('Seed', [0, 2 ** 31 - 1], 'The same seed draws the same'), SAMPLE.seed),
});

const jobSchema = objectOf('a job', {
  id: v.optional(v.pipe(v.unknown(), v.check(isKept, 'text, or a number that JSON keeps exactly'))),
  scenario: v.optional(v.custom<string | Tree>((it) => isText(it) || isTree(it), 'a file or an object')),
  trace: v.optional(v.string('a file')),
  set: v.optional(v.custom<Changes>(isTree, 'an object of keys and values'), {}),
  spread: v.optional(sampleSchema),
  span: v.optional(flag('Span', 'Whether the safe span is searched'), true),
});

/** Throws every problem with what was asked for at once. */
export function jobFrom(input: unknown): Job {
  const checked = v.safeParse(jobSchema, input);
  if (!checked.success) throw new Refused(checked.issues.map(problemOf));
  return checked.output;
}

function problemOf({ path, input, message }: v.BaseIssue<unknown>): Problem {
  const key = path?.map((part) => String(part.key)).join('.');
  return problem(key ?? 'job', path ? path.at(-1)!.value : input, message);
}
