/** A short name for a long trace, so that keys of memories need not hold a megabyte of text. */
import type { Scenario } from '../scenario/schema.ts';

type Trace = NonNullable<Scenario['trace']>;

/** Traces that a session moves between; one more is numbered anew, and what was made from it is made again. */
const REMEMBERED = 8;

const byObject = new WeakMap<Trace, number>();
const byText = new Map<string, number>();
let last = 0;

/** The same number for traces with the same content; the text is made once for each object. */
export function traceNumber(trace: Trace): number {
  const seen = byObject.get(trace);
  if (seen !== undefined) return seen;
  const text = JSON.stringify(trace);
  const number = byText.get(text) ?? ++last;
  byText.set(text, number);
  if (byText.size > REMEMBERED) byText.delete(byText.keys().next().value!);
  byObject.set(trace, number);
  return number;
}
