import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { together, type Steps } from '../../../engine/advise/search.ts';
import { lastThat, type Guess } from '../../../engine/advise/whole-percents.ts';

/** Drives a search that asks nothing, and counts how often it looks. */
function found(end: number, most: number, guess: Guess): { last: number; looks: number } {
  let looks = 0;
  // eslint-disable-next-line require-yield -- what is looked at here needs no run
  const holds = function* (at: number): Steps<boolean> {
    expect(at).toBeGreaterThanOrEqual(0);
    expect(at).toBeLessThanOrEqual(most);
    looks += 1;
    return at <= end;
  };
  const { value } = together([lastThat(holds, most, guess)]).next();
  return { last: (value as unknown as number[])[0]!, looks };
}

describe('the last percent that holds', () => {
  it('is found from any guess, wherever it is', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -1, max: 85 }),
        fc.integer({ min: -40, max: 140 }),
        fc.constantFrom(1, 16),
        (end, at, step) => {
          expect(found(end, 85, { at, step }).last).toBe(end);
        },
      ),
      { seed: 7 },
    );
  });

  it('takes two looks from a guess that is right, and three from one beside it', () => {
    expect(found(40, 100, { at: 40, step: 1 }).looks).toBe(2);
    expect(found(41, 100, { at: 40, step: 1 }).looks).toBeLessThanOrEqual(3);
    expect(found(39, 100, { at: 40, step: 1 }).looks).toBe(2);
  });

  it('takes one look where all hold, or none, as was guessed', () => {
    expect(found(100, 100, { at: 104, step: 1 }).looks).toBe(1);
    expect(found(-1, 100, { at: -3, step: 1 }).looks).toBe(1);
  });
});
