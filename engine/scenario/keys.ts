/** What the schema says about the field that a dotted key names. */
import * as v from 'valibot';
import type { FieldInfo } from './field.ts';
import { scenarioSchema } from './schema.ts';
import { isTree, type Tree } from './tree.ts';

interface AnySchema {
  type?: string;
  entries?: Record<string, AnySchema>;
  wrapped?: AnySchema;
  item?: AnySchema;
  literal?: unknown;
  /** Kinds of an item where they differ; a choice of words has its words here. */
  options?: readonly (AnySchema | string)[];
  pipe?: readonly { type: string; metadata?: FieldInfo }[];
}

/** A side of an axle, and what lies in it. */
const IS_SIDE = /^sides\.(front|rear)_(left|right)$/;
const OF_SIDE = /^sides\.(front|rear)_(left|right)\./;

/** The schema of one field, or undefined when the scenario has no such key. */
function schemaAt(key: string): AnySchema | undefined {
  let at: AnySchema | undefined = scenarioSchema;
  // what one side has of its own is described where its axle's is
  const described = key.replace(OF_SIDE, 'brakes.$1.');
  for (const part of described.split('.')) {
    while (at?.wrapped) at = at.wrapped;
    if (at?.type === 'array') at = /^\d+$/.test(part) ? at.item : undefined;
    else at = at?.entries && Object.hasOwn(at.entries, part) ? at.entries[part] : undefined;
  }
  return at;
}

/** Whether the value at a key may be null, which "none" stands for on a command line. */
export const isNullable = (key: string): boolean =>
  schemaAt(key)?.type === 'nullable' || schemaAt(key)?.wrapped?.type === 'nullable';

/** Whether the key names one single value that can be changed. */
export function isLeaf(key: string): boolean {
  let at = schemaAt(key);
  while (at?.wrapped) at = at.wrapped;
  return at !== undefined && ['number', 'boolean', 'string', 'picklist', 'literal'].includes(at.type ?? '');
}

/** What the field at a key expects instead of a value, or null when the value will do. */
export function misfit(key: string, value: unknown): string | null {
  const checked = v.safeParse(schemaAt(key) as v.GenericSchema, value);
  return checked.success ? null : checked.issues[0].message;
}

/** What a list of unlike items, such as the phases, says of one name: the first kind of item that has it. */
function itemFieldAt(key: string): AnySchema | undefined {
  const [, list, name] = /^(.+)\.\d+\.(\w+)$/.exec(key) ?? [];
  let at = list === undefined ? undefined : schemaAt(list);
  while (at?.wrapped) at = at.wrapped;
  const kinds = at?.item?.options?.filter((kind) => typeof kind !== 'string') ?? [];
  return kinds.map(({ entries }) => entries?.[name ?? '']).find(Boolean);
}

/** Label, meaning and range of a field, such as `conditions.ambient_C` or `stint.phases.0.laps`. */
export function fieldAt(key: string): FieldInfo | undefined {
  let at = schemaAt(key) ?? itemFieldAt(key);
  while (at?.wrapped) at = at.wrapped;
  return at?.pipe?.find((step) => step.type === 'metadata')?.metadata;
}

/** Of an item of a list: by the kind that it says it is, where its kinds differ. */
function itemKeysUnknown(item: AnySchema, value: unknown): string[] {
  if (!isTree(value)) return [];
  const kinds = item.options?.filter((kind) => typeof kind !== 'string') ?? [item];
  const own = kinds.find(({ entries }) => entries?.['kind']?.literal === value['kind']) ?? kinds[0];
  const known = own?.entries;
  return known ? Object.keys(value).filter((name) => !Object.hasOwn(known, name)) : [];
}

/** Dotted keys of a tree that the scenario's schema does not know; free tables are not looked into. */
export function keysUnknown(tree: Tree, prefix = ''): string[] {
  return Object.entries(tree).flatMap(([name, value]) => {
    const key = prefix ? `${prefix}.${name}` : name;
    let at = schemaAt(key);
    if (!at) return [key];
    while (at.wrapped) at = at.wrapped;
    const { item } = at;
    if (item && Array.isArray(value)) {
      return value.flatMap((each, i) => itemKeysUnknown(item, each).map((own) => `${key}.${i}.${own}`));
    }
    return isTree(value) && (at.entries || IS_SIDE.test(key)) ? keysUnknown(value, key) : [];
  });
}
