import { answering } from './answering.ts';
import type { Search } from './search.ts';
import { supposing } from './supposing.ts';

/** Drives a search to its end here and now, one run after the other. */
export function finished<T>({ ground, steps }: Search<T>): T {
  const answer = answering(ground, supposing);
  let step = steps.next();
  while (!step.done) step = steps.next(step.value.map((ask) => [...answer(ask)]));
  return step.value;
}
