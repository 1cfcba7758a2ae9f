import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { newColumns } from '../../engine/disc/columns.ts';
import { parseScenario } from '../../engine/scenario/parse.ts';
import type { Scenario } from '../../engine/scenario/schema.ts';
import { compile } from '../../engine/stint/compile.ts';
import type { Stepper } from '../../engine/disc/stepper.ts';
import { entryOf, ledgersOf, type Entry } from '../../engine/stint/books.ts';
import { judgedCorner } from '../../engine/stint/driven.ts';
import { clockOf, run } from '../../engine/stint/run.ts';
import { expectLaw, LAW_TIMEOUT } from '../support/law-runs.ts';
import { anyScenario } from '../support/random-scenario.ts';
import { changed } from '../support/stints.ts';

const parts = [
  'car',
  'driver',
  'brakes',
  'conditions',
  'traffic',
  'blanking_pct',
  'initial',
  'stint',
] as const;

/** The same, but for one part that it has of the other; null where the parts do not fit. */
function mixed(one: Scenario, other: Scenario, part: (typeof parts)[number]): Scenario | null {
  const parsed = parseScenario({ ...one, [part]: other[part] });
  return parsed.ok ? parsed.scenario : null;
}

/** What a run of the scenario tells of each corner, against that corner driven anew. */
function expectAsDrivenAnew(scenario: Scenario): void {
  const model = compile(scenario);
  const { corners } = run(model);
  const clock = clockOf(model);
  model.corners.forEach((corner, i) => {
    const columns = newColumns(model.samples);
    const entries: Entry[] = [];
    const note = (stepper: Stepper): void => void entries.push(entryOf(stepper));
    const { laps, stops, verdict } = judgedCorner({ model, corner, clock }, columns, note);
    const ledgers = ledgersOf(model.passages, entries);
    expect({ ...corners[i] }).toMatchObject({ laps, stops, verdict, ...ledgers });
    expect(corners[i]!.columns).toEqual(columns);
  });
}

describe('a corner that is remembered', () => {
  it(
    'is as it would be if it were driven anew, whichever part of the scenario has changed',
    () => {
      const pair = fc
        .tuple(anyScenario, anyScenario, fc.constantFrom(...parts))
        .map(([one, other, part]) => ({ one, next: mixed(one, other, part) }));
      let tried = 0;
      const law = ({ one, next }: { one: Scenario; next: Scenario | null }): void => {
        if (!next) return;
        tried += 1;
        run(compile(one));
        expectAsDrivenAnew(next);
      };
      expectLaw(80, law, pair);
      expect(tried).toBeGreaterThan(40);
    },
    LAW_TIMEOUT,
  );

  it.each([
    ['correction.emissivity.factor', 1.2],
    ['correction.heat.factor', 1.2],
    ['correction.cooling.factor', 1.2],
    ['brakes.front.window.bite_C', 350],
  ])('is another with another %s', (key, value) => {
    run(compile(changed({})));
    expectAsDrivenAnew(changed({ [key]: value }));
  });

  it('gives each who asks columns of his own', () => {
    const model = compile(changed({}));
    const [first] = run(model).corners;
    first!.columns!.face_K.fill(0);
    expect(run(model).corners[0]!.columns!.face_K.every((T) => T > 0)).toBe(true);
  });
});
