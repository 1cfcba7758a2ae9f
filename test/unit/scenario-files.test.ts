import { describe, expect, it } from 'vitest';
import { layoutCircuit } from '../../engine/circuit/layout.ts';
import * as catalogue from '../../engine/scenario/catalogue.ts';
import type { Entry } from '../../engine/scenario/entry.ts';
import { keysUnknown } from '../../engine/scenario/keys.ts';
import { assembled, defaultScenario, isCatalogueFile, shippedStint } from '../../engine/scenario/library.ts';
import * as library from '../../engine/scenario/library.ts';
import { scenarioHash } from '../../web/state/scenario-hash.ts';
import restart from '../../scenarios/stints/restart.json' with { type: 'json' };
import light from '../../scenarios/cars/light.json' with { type: 'json' };
import * as driving from '../support/driving.ts';
import { changed, driven } from '../support/stints.ts';

describe('a file of the catalogue', () => {
  it('is the stint it names, with its car and circuit', () => {
    expect(isCatalogueFile(restart)).toBe(true);
    expect(assembled(restart)).toEqual(shippedStint('restart'));
  });

  it('puts a car on the first circuit', () => {
    expect(assembled(light)).toMatchObject({ car: { mass_kg: 1010 }, circuit: { name: 'Sorrelby' } });
  });

  it('must name a car of the library', () => {
    expect(() => assembled({ ...restart, car: 'no such car' })).toThrow('not in the library: no such car');
  });
});

describe('the lists of the library', () => {
  it('name what is in its files', () => {
    const named = ({ id, name, purpose }: Entry) => ({ id, name, purpose });
    for (const list of ['cars', 'circuits', 'stints'] as const)
      expect(catalogue[list].map(named)).toEqual(library[list].map(named));
  });

  it('tell how long each circuit is', () => {
    const lengths = catalogue.circuits.map(({ length_km }) => length_km);
    const { circuits } = driving;
    expect(lengths).toEqual(
      [circuits.sorrelby, circuits.long, circuits.slow].map((file) =>
        Number((layoutCircuit(file).length_m / 1000).toFixed(1)),
      ),
    );
  });
});

describe('keys that the schema does not know', () => {
  it('are all named', () => {
    const file = { conditions: { ambient_c: 45 }, blanking_pct: { frnot: 90 }, foo: 1 };
    expect(keysUnknown(file)).toEqual(['conditions.ambient_c', 'blanking_pct.frnot', 'foo']);
  });

  it('are none in what ships', () => {
    expect(keysUnknown({ ...defaultScenario() })).toEqual([]);
  });
});

describe('the hash of a scenario', () => {
  it('is the same after a change and back again', () => {
    const wet = changed({ 'conditions.wet': true });
    expect(scenarioHash(changed({ 'conditions.wet': false }, wet))).toBe(scenarioHash(defaultScenario()));
    expect(scenarioHash(wet)).not.toBe(scenarioHash(defaultScenario()));
  });
});

describe('the weather of a lap', () => {
  it('follows what the phases set', () => {
    const { laps } = driven(shippedStint('night-rain'));
    expect(laps.map((lap) => lap.wet).indexOf(true)).toBe(11);
    expect(laps.map((lap) => Math.round(lap.ambient_K - 273.15)).indexOf(11)).toBe(7);
  });
});
