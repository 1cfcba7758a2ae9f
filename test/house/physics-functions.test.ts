import { describe, expect, it } from 'vitest';
import { examplesOf } from '../support/examples.ts';
import { exportedFunctions, type ExportedFunction } from '../support/functions.ts';
import { filesUnder, isSource } from '../support/tree.ts';

const folders = ['air', 'duct', 'disc', 'car', 'circuit', 'evidence'].map((name) => `engine/${name}`);
const exported = folders.flatMap(filesUnder).filter(isSource).flatMap(exportedFunctions);
const physics = exported.filter(({ returns }) => returns === 'number');

function missing(f: ExportedFunction): string[] {
  const needs = [
    ['@returns with [unit]', /^@returns [^@]*\[[^\]]+\]/m.test(f.doc)],
    ['Source:', /Source:/.test(f.doc)],
    ['@example that calls it', examplesOf(f).some(({ call }) => call.includes(`${f.name}(`))],
  ] as const;
  return needs.filter(([, isThere]) => !isThere).map(([what]) => `${f.path}: ${f.name} lacks ${what}`);
}

describe('physics functions', () => {
  it('state what they return', () => {
    const silent = exported.filter(({ returns }) => returns === '');
    expect(silent.map(({ path, name }) => `${path}: ${name}`)).toEqual([]);
  });

  it('have a unit, a source and an example', () => {
    expect(physics.flatMap(missing)).toEqual([]);
  });
});
