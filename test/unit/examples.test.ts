import { describe, expect, it } from 'vitest';
import { examplesOf, readDigits, type Example } from '../support/examples.ts';
import { exportedFunctions } from '../support/functions.ts';
import { filesUnder, isSource, root } from '../support/tree.ts';

const examples = filesUnder('engine').filter(isSource).flatMap(exportedFunctions).flatMap(examplesOf);

describe('the examples in the documentation of the engine', () => {
  it('exist', () => expect(examples.length).toBeGreaterThan(0));

  it.each(examples.map(titled))('%s', async (_title, example) => {
    const digits = readDigits(example.printed);
    if (!digits) throw new Error(`example of ${example.name}: expected digits, got "${example.printed}"`);
    const got = await evaluated(example);
    expect(Math.abs(got - digits.value), `${example.call} gave ${got}`).toBeLessThanOrEqual(digits.tolerance);
  });
});

function titled(example: Example): [title: string, example: Example] {
  const call = example.call.replace(/\s+/g, ' ');
  return [`${example.path}: ${call} // => ${example.printed}`, example];
}

/** An example may use what its own module exports and the unit conversions. */
async function evaluated({ path, call }: Example): Promise<number> {
  const units = (await import('../../engine/units.ts')) as object;
  const own = (await import(/* @vite-ignore */ root + path)) as object;
  const names = { ...units, ...own };
  const run = new Function(...Object.keys(names), `return (${call});`) as (...values: unknown[]) => number;
  return run(...Object.values<unknown>(names));
}
