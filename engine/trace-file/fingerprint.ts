/** Files with the same header are understood alike: what a person corrected in one holds for the next. */
import type { Format } from './cut-rows.ts';
import type { Header } from './header.ts';
import { plainName } from './role-names.ts';

const OFFSET = 0xcbf29ce484222325n;
const PRIME = 0x100000001b3n;

/** Hash of a text. Source: Fowler, Noll & Vo, FNV-1a with 64 bit, over the text's UTF-16 units as two bytes each. */
export function fnv1a(text: string): string {
  let hash = OFFSET;
  for (let i = 0; i < text.length; i++) {
    const unit = text.charCodeAt(i);
    for (const byte of [unit & 0xff, unit >> 8]) hash = BigInt.asUintN(64, (hash ^ BigInt(byte)) * PRIME);
  }
  return hash.toString(16).padStart(16, '0');
}

export function fingerprintOf({ names, units, isNamed }: Header, { delimiter }: Format): string {
  const header = isNamed
    ? names.map((name, i) => `${plainName(name)} ${units[i]!.toLowerCase()}`)
    : [delimiter];
  return fnv1a([...header, names.length].join('\n'));
}
