import { describe, expect, it } from 'vitest';
import { migrated } from '../../engine/scenario/migrate.ts';
import { parseScenario } from '../../engine/scenario/parse.ts';
import { baseOf } from '../../engine/shell/base.ts';
import { SCENARIO_VERSION } from '../../engine/scenario/schema.ts';
import { valueAt, withValues } from '../../engine/scenario/tree.ts';
import { deepFreeze, shipped } from '../support/shipped.ts';

const [, first] = shipped[0]!;

/** As it was written before `duct.flattened` and `wheel.ventilation_cm2` went. */
const old = (version: number | undefined): unknown => {
  const { open_pct: _, ...wheel } = first.brakes.front.wheel;
  const { clearance_mm: __, ...duct } = first.brakes.front.duct!;
  return withValues({ ...first, version }, [
    ['brakes.front.wheel', { ...wheel, ventilation_cm2: 350 }],
    ['brakes.front.duct', { ...duct, hose_mm: 80, flattened: 0.6 }],
    ['doubt', { ...first.doubt, 'brakes.front.wheel.ventilation_cm2': { low: 1, high: 2, reason: '' } }],
  ]);
};

describe('a scenario of an earlier version', () => {
  it.each([undefined, 0, 1])('with version %s and keys that went is brought to this one', (version) => {
    const brought = migrated(deepFreeze(old(version) as object));
    if (!brought.ok) throw new Error('refused');
    expect(brought.changed).toEqual([
      'brakes.front.duct.flattened 0.6 is now clearance_mm 48',
      'brakes.front.wheel.ventilation_cm2 went; open_pct says what share of the wheel is open, look at it',
      'the doubt about brakes.front.wheel.ventilation_cm2 went with its key',
    ]);
    expect(valueAt(brought.input, 'version')).toBe(SCENARIO_VERSION);
    const parsed = parseScenario(brought.input);
    if (!parsed.ok) throw new Error(parsed.problems[0]!.key);
    expect(parsed.scenario.brakes.front.duct).toMatchObject({ clearance_mm: 48 });
    expect(parsed.scenario.brakes.front.duct).not.toHaveProperty('flattened');
    expect(parsed.scenario.brakes.front.wheel.open_pct).toBe(35);
    expect(parsed.scenario.brakes.front.wheel).not.toHaveProperty('ventilation_cm2');
    expect(parsed.scenario.doubt).toEqual(first.doubt);
  });

  it('takes a round hose as one that nothing narrows, and a side by the hose of its axle', () => {
    const brought = migrated({
      brakes: { front: { duct: { hose_mm: 100 } }, rear: { duct: { flattened: 1 } } },
      sides: { front_left: { duct: { flattened: 0.5 } } },
    });
    if (!brought.ok) throw new Error('refused');
    expect(valueAt(brought.input, 'brakes.rear.duct')).toEqual({ clearance_mm: null });
    expect(valueAt(brought.input, 'sides.front_left.duct')).toEqual({ clearance_mm: 50 });
  });

  it('that has no key that went is left as it is, with or without a version', () => {
    for (const input of [first, { conditions: { ambient_C: 3 } }, {}, [], 'text', null])
      expect(migrated(input)).toEqual({ ok: true, input, changed: [] });
    expect(migrated({ version: 0, note: 1 })).toEqual({
      ok: true,
      input: { version: SCENARIO_VERSION, note: 1 },
      changed: [],
    });
  });
});

describe('a scenario of another version', () => {
  it('that is newer is refused by that alone', () => {
    const brought = migrated({ version: SCENARIO_VERSION + 1, conditions: 'of another shape' });
    expect(brought).toEqual({
      ok: false,
      problems: [
        {
          key: 'version',
          value: `${SCENARIO_VERSION + 1}`,
          expected: `at most ${SCENARIO_VERSION}`,
          hint: 'it was written by a newer Emberlap',
        },
      ],
    });
  });

  it.each(['1', null, -1, 0.5])('that is none, %j, is told by the check', (version) => {
    const brought = migrated({ version });
    if (!brought.ok) throw new Error('refused');
    const parsed = parseScenario(brought.input);
    expect(parsed.ok ? [] : parsed.problems.map(({ key }) => key)).toEqual(['version']);
  });
});

describe('in a terminal', () => {
  it('what was changed in an old file is said with the answer', () => {
    const { scenario, said } = baseOf({
      scenario: { brakes: { rear: { duct: { flattened: 0.5, hose_mm: 60 } } } },
    });
    expect(scenario.brakes.rear.duct?.clearance_mm).toBe(30);
    expect(said).toEqual([
      { kind: 'file', text: 'file: brakes.rear.duct.flattened 0.5 is now clearance_mm 30' },
    ]);
  });

  it('a newer file is refused', () => {
    expect(() => baseOf({ scenario: { version: 9 } })).toThrow(
      /^version: expected at most 1, got 9 \(it was/,
    );
  });
});
