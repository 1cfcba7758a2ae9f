/** Finds where, on the way from 0 to the most, something ends to hold: by few looks where the guess is near. */
import type { Steps } from './search.ts';

export interface Guess {
  at: number;
  /** The first two steps away from it; then they double until the end is passed, and the rest is halved. */
  step: number;
}

/** The last whole number up to `most` that holds, where all before one do and none after it; -1 where none does. */
export function* lastThat(
  holds: (at: number) => Steps<boolean>,
  most: number,
  { at: guess, step: first }: Guess,
): Steps<number> {
  let [last, beyond] = [-1, most + 1];
  let [step, steps] = [first, 0];
  let at = Math.min(most, Math.max(0, Math.round(guess)));
  while (beyond - last > 1) {
    if (yield* holds(at)) last = at;
    else beyond = at;
    if (last >= 0 && beyond <= most) at = (last + beyond) >> 1;
    else at = last < 0 ? Math.max(0, beyond - step) : Math.min(most, last + step);
    if (++steps > 1) step *= 2;
  }
  return last;
}
