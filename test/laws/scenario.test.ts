import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fieldAt } from '../../engine/scenario/keys.ts';
import { valueAt } from '../../engine/scenario/tree.ts';
import { override } from '../../engine/scenario/override.ts';
import { parseScenario } from '../../engine/scenario/parse.ts';
import { problemLine } from '../../engine/scenario/problem.ts';
import { deepFreeze, shipped } from '../support/shipped.ts';

const [, first] = shipped[0]!;
const lines = (input: unknown): string[] => {
  const parsed = parseScenario(input);
  return parsed.ok ? [] : parsed.problems.map(problemLine);
};

describe('parse of serialise is identity', () => {
  it.each(shipped)('for %s', (_, scenario) => {
    const parsed = parseScenario(JSON.parse(JSON.stringify(scenario)));
    expect(parsed).toEqual({ ok: true, scenario });
  });

  it('keys beyond the schema are kept, at any depth', () => {
    const noted = { note: 'kept', car: { colour: 'grey' }, conditions: { wind: { from: 'west' } } };
    const parsed = parseScenario(noted);
    if (!parsed.ok) throw new Error('refused');
    expect(parsed.scenario).toMatchObject(noted);
  });
});

describe('override', () => {
  it.each(shipped)('never mutates %s', (_, scenario) => {
    const frozen = deepFreeze(structuredClone(scenario));
    const before = JSON.stringify(frozen);
    override(frozen, { 'conditions.ambient_C': 3, 'blanking_pct.front_left': 10, 'car.fuel_kg': 10 });
    override(frozen, { 'conditions.ambient_C': 300, 'no.such.key': 1 });
    expect(JSON.stringify(frozen)).toBe(before);
  });

  const numbers = Object.keys(first.doubt).concat(
    ['conditions.ambient_C', 'conditions.altitude_m', 'blanking_pct.front', 'blanking_pct.rear'],
    ['car.mass_kg', 'car.fuel_kg', 'driver.coast_s', 'brakes.rear.disc.ring_mass_kg'],
  );

  it('sets what it was told and nothing else', () => {
    fc.assert(
      fc.property(fc.constantFrom(...numbers), fc.double({ min: 0, max: 1, noNaN: true }), (key, share) => {
        const { min = 0, max = 0 } = fieldAt(key)!;
        const value = min + share * (max - min);
        const result = override(first, { [key]: value });
        if (!result.ok) return;
        expect(valueAt(result.scenario, key)).toBe(value);
        const back = override(result.scenario, { [key]: valueAt(first, key) as number });
        expect(back).toEqual({ ok: true, scenario: first });
      }),
      { numRuns: 150, seed: 7 },
    );
  });
});

describe('everything wrong comes back at once', () => {
  it('with key, value, range and a guess at the slip', () => {
    const found = lines({
      conditions: { ambient_C: 295, humidity_pct: -1, wet: 'yes' },
      blanking_pct: { front: 140 },
      car: { grip_dry: '1.4', rolling_coefficient: 0.015 },
      driver: { grip_share_braking_dry: 74 },
      stint: { laps: 2.5 },
    });
    for (const line of [
      'conditions.ambient_C: expected -30 to 55, got 295 (kelvin?)',
      'conditions.humidity_pct: expected 0 to 100, got -1',
      "conditions.wet: expected true or false, got 'yes'",
      'blanking_pct.front: expected 0 to 100, got 140',
      'stint.laps: expected a whole number, 1 to 300, got 2.5',
    ]) {
      expect(found).toContain(line);
    }
    expect(found.find((line) => line.startsWith('car.grip_dry'))).toMatch(
      /got '1\.4' \(a number in quotes\?\)$/,
    );
    expect(found.find((line) => line.startsWith('driver.grip_share_braking_dry'))).toMatch(
      /got 74 \(a percentage\?/,
    );
    expect(found).toHaveLength(7);
  });

  it('for keys that do not exist', () => {
    const result = override(first, { 'conditions.ambiant_C': 20, 'blanking.front': 3 });
    if (result.ok) throw new Error('accepted');
    expect(result.problems.map(({ key, value }) => [key, value])).toEqual([
      ['conditions.ambiant_C', '20'],
      ['blanking.front', '3'],
    ]);
  });

  it.each([null, 3, 'text', [], undefined])('and for %j, which is no scenario', (input) => {
    expect(lines(input)).toEqual([expect.stringMatching(/^scenario: expected a JSON object, got /)]);
  });
});
