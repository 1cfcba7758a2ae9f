import { describe, expect, it } from 'vitest';
import { override, type Changes } from '../../../engine/scenario/override.ts';
import { defaultScenario } from '../../../engine/scenario/library.ts';
import type { Problem } from '../../../engine/scenario/problem.ts';

const key = (field: string): string => `brakes.front.disc.${field}`;

/** Problems of the heavy car's front disc (380/256 mm, 60 curved vanes of 4.5 mm) with changes. */
function problemsWith(changes: Changes): Pick<Problem, 'key' | 'expected'>[] {
  const own = Object.fromEntries(Object.entries(changes).map(([field, value]) => [key(field), value]));
  const result = override(defaultScenario(), own);
  return result.ok ? [] : result.problems.map((each) => ({ key: each.key, expected: each.expected }));
}

const solid = { kind: 'solid', gap_mm: 0, thickness_mm: 18.4 };

describe('a disc is refused with one problem, that names the field', () => {
  it.each<[string, Changes, string, string]>([
    ['a vented disc without vanes', { vanes: 0 }, 'vanes', 'above 0 for a vented disc'],
    ['vanes of no thickness', { vane_mm: 0 }, 'vane_mm', 'above 0 for a vented disc'],
    [
      'a vented disc whose vanes have no shape',
      { vane_shape: 'none' },
      'vane_shape',
      'straight, curved or pillars for a vented disc',
    ],
    ['a vented disc with nothing given', { vane_shape: 'none', vanes: 0, vane_mm: 0 }, 'vane_shape', ''],
    ['a solid disc with vanes', solid, 'vane_shape', 'none for a solid disc'],
    // π 256 / 4.5 = 178.7, and 155.4 where they lean
    [
      'vanes that fill the inner edge',
      { vanes: 179, vane_shape: 'straight' },
      'vanes',
      'fewer than fill the inner circumference, 178',
    ],
    [
      'leaning vanes that fill it sooner',
      { vanes: 156 },
      'vanes',
      'fewer than fill the inner circumference, 155',
    ],
    // π (190² − 128²) / 16² = 241.9
    [
      'pillars that touch',
      { vane_shape: 'pillars', vanes: 242, vane_mm: 16 },
      'vanes',
      'fewer than fill the ring, 241',
    ],
  ])('%s', (_, changes, field, expected) => {
    const problems = problemsWith(changes);
    expect(problems).toHaveLength(1);
    expect(problems[0]!.key).toBe(key(field));
    expect(problems[0]!.expected).toContain(expected);
  });
});

describe('a disc is taken', () => {
  it.each<[string, Changes]>([
    ['with as many straight vanes as leave a gap', { vanes: 178, vane_shape: 'straight' }],
    ['with as many leaning vanes as leave a gap', { vanes: 155 }],
    ['with pillars that do not touch', { vane_shape: 'pillars', vanes: 241, vane_mm: 16 }],
    ['solid without vanes', { ...solid, vane_shape: 'none', vanes: 0, vane_mm: 0 }],
    ['solid, with what its vanes were left in the file', { ...solid, vane_shape: 'none' }],
  ])('%s', (_, changes) => {
    expect(problemsWith(changes)).toEqual([]);
  });
});
