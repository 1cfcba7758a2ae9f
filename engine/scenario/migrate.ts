/** Files of earlier versions, brought to this one step by step. What a step changes is told in a line each. */
import { defaultScenario } from './default-scenario.ts';
import { problem, type Problem } from './problem.ts';
import { SCENARIO_VERSION } from './schema.ts';
import { isTree, valueAt, type Tree } from './tree.ts';

/** A file as this version reads it, and what was changed for that; or why it cannot be. Its values are not checked yet. */
export type Migrated =
  { ok: true; input: unknown; changed: readonly string[] } | { ok: false; problems: Problem[] };

interface Change {
  input: Tree;
  changed: readonly string[];
}

/** From the version of its place to the next. */
const STEPS: readonly ((input: Tree) => Change)[] = [withoutKeysThatWent];

export function migrated(input: unknown): Migrated {
  if (!isTree(input)) return { ok: true, input, changed: [] };
  const { version } = input;
  if (typeof version === 'number' && version > SCENARIO_VERSION) {
    const newer = 'it was written by a newer Emberlap';
    return { ok: false, problems: [problem('version', version, `at most ${SCENARIO_VERSION}`, newer)] };
  }
  const start: Change = { input, changed: [] };
  const end = STEPS.slice(versionOf(input)).reduce((before, step) => {
    const after = step(before.input);
    return { input: after.input, changed: [...before.changed, ...after.changed] };
  }, start);
  return { ok: true, ...end };
}

/** Version 1 was also written before its last keys went: who still has one of those is of version 0, whatever it says. */
function versionOf(input: Tree): number {
  const { version } = input;
  if (version === undefined || version === 0 || withoutKeysThatWent(input).changed.length > 0) return 0;
  return SCENARIO_VERSION; // this one, or no version at all, which the check tells
}

const BRAKES = [
  ...['brakes.front', 'brakes.rear'],
  ...['sides.front_left', 'sides.front_right', 'sides.rear_left', 'sides.rear_right'],
];

/** `duct.flattened` is a clearance now, `wheel.ventilation_cm2` a share of the wheel. */
function withoutKeysThatWent(input: Tree): Change {
  const changed: string[] = [];
  let at: Tree = input;
  for (const brake of BRAKES) {
    const flattened = valueAt(at, `${brake}.duct.flattened`);
    if (typeof flattened === 'number') {
      const clearance_mm = flattened < 1 ? flattened * hoseOf(input, brake) : null;
      at = replaced(at, `${brake}.duct`, 'flattened', { clearance_mm });
      changed.push(`${brake}.duct.flattened ${flattened} is now clearance_mm ${clearance_mm ?? 'none'}`);
    }
    if (valueAt(at, `${brake}.wheel.ventilation_cm2`) !== undefined) {
      at = replaced(at, `${brake}.wheel`, 'ventilation_cm2', {});
      changed.push(
        `${brake}.wheel.ventilation_cm2 went; open_pct says what share of the wheel is open, look at it`,
      );
    }
  }
  const doubts = Object.keys(isTree(at['doubt']) ? at['doubt'] : {});
  for (const key of doubts.filter((each) => /\.(flattened|ventilation_cm2)$/.test(each))) {
    at = replaced(at, 'doubt', key, {});
    changed.push(`the doubt about ${key} went with its key`);
  }
  if (changed.length === 0 && at['version'] !== 0) return { input, changed };
  return { input: { ...at, version: 1 }, changed };
}

/** Inner diameter of the hose that a brake, or what one side has of it, is fed by [mm] */
function hoseOf(input: Tree, brake: string): number {
  const axle = brake.includes('front') ? 'front' : 'rear';
  const key = `brakes.${axle}.duct.hose_mm`;
  const own = valueAt(input, `${brake}.duct.hose_mm`) ?? valueAt(input, key);
  return Number(own ?? valueAt(defaultScenario(), key));
}

/** A copy in which the object at a key has others in the place of one of its keys. */
function replaced(tree: Tree, at: string, went: string, others: Tree): Tree {
  const [first = '', ...rest] = at.split('.');
  const own = isTree(tree[first]) ? tree[first] : {};
  if (rest.length > 0) return { ...tree, [first]: replaced(own, rest.join('.'), went, others) };
  const { [went]: _, ...kept } = own;
  return { ...tree, [first]: { ...kept, ...others } };
}
