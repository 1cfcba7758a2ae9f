/** A scenario in the fragment of a link: what it has different from the shipped parts that are nearest to it. Nothing reaches a server. */
import type { Scenario } from '../../engine/index.ts';
import { cars, circuits, stints } from '../../engine/scenario/catalogue.ts';
import { shippedStint, withCar, withCircuit } from '../../engine/scenario/library.ts';
import { migrated } from '../../engine/scenario/migrate.ts';
import { parseScenario } from '../../engine/scenario/parse.ts';
import { problemLine } from '../../engine/scenario/problem.ts';
import { LINK_MARK } from './link-mark.ts';
import { scenarioHash } from './scenario-hash.ts';
import { differenceOf, differing } from './tree-difference.ts';

/** Longer ones are cut off by what carries links: letters, chats, codes to photograph [characters] */
export const LONGEST_LINK = 1500;

/** More than any scenario without a trace takes: a code that unpacks to more is none [bytes] */
const LARGEST = 2_000_000;

const FORM = 1;

/** Form, shipped parts, their hash, the scenario's hash, what differs. */
type Content = readonly [form: number, parts: string, partsHash: string, hash: string, difference: unknown];

export type Linked = { ok: true; scenario: Scenario; notes: readonly string[] } | { ok: false; why: string };

/** The shipped parts of a name such as `sorrelby-20.heavy.sorrelby` together. Throws on one that is not in the library. */
function partsNamed(name: string): Scenario {
  const [stint = '', car = '', circuit = ''] = name.split('.');
  return withCircuit(withCar(shippedStint(stint), car), circuit);
}

/** Every stint with every car on every circuit. */
const names = (): string[] =>
  stints.flatMap((stint) =>
    cars.flatMap((car) => circuits.map((circuit) => `${stint.id}.${car.id}.${circuit.id}`)),
  );

/** The fragment of a link to a scenario that carries no trace. */
export async function fragmentOf(scenario: Scenario): Promise<string> {
  const plain = JSON.parse(JSON.stringify(scenario)) as Scenario;
  const tries = names().map((name) => {
    const parts = partsNamed(name);
    const content: Content = [FORM, name, hashOf(parts), hashOf(plain), differenceOf(parts, plain)];
    return JSON.stringify(content);
  });
  const shortest = tries.reduce((best, next) => (next.length < best.length ? next : best));
  const packed = await through(new TextEncoder().encode(shortest), new CompressionStream('deflate-raw'));
  return `${LINK_MARK}${textOf(packed)}`;
}

/** The scenario of such a fragment, checked as a file is. */
export async function scenarioOf(fragment: string): Promise<Linked> {
  try {
    const bytes = bytesOf(fragment.slice(LINK_MARK.length));
    const text = new TextDecoder().decode(await through(bytes, new DecompressionStream('deflate-raw')));
    return opened(JSON.parse(text) as Content);
  } catch {
    return { ok: false, why: 'a part of it is missing or was changed on the way' };
  }
}

function opened([form, name, partsHash, hash, difference]: Content): Linked {
  if (form > FORM) return { ok: false, why: 'it was made by a newer Emberlap' };
  const parts = partsNamed(name);
  const isSameParts = hashOf(parts) === partsHash;
  const brought = migrated(differing(parts, difference));
  const parsed = brought.ok ? parseScenario(brought.input) : brought;
  if (!parsed.ok) {
    const [first, ...more] = parsed.problems.map(problemLine);
    return { ok: false, why: more.length > 0 ? `${first}, and ${more.length} more` : String(first) };
  }
  if (isSameParts && hashOf(parsed.scenario) !== hash) throw new Error('not what was sent');
  const changed = brought.ok ? brought.changed : [];
  const notes = isSameParts ? changed : [...changed, OTHER_PARTS];
  return { ok: true, scenario: parsed.scenario, notes };
}

const OTHER_PARTS =
  'the shipped parts that the link builds on have changed since it was made: look at every value';

const hashOf = (scenario: Scenario): string => scenarioHash(scenario).replace(' ', '');

async function through(bytes: Uint8Array<ArrayBuffer>, stream: CompressionStream | DecompressionStream) {
  const reader = new Blob([bytes]).stream().pipeThrough(stream).getReader();
  const chunks: Uint8Array[] = [];
  let size = 0;
  for (let next = await reader.read(); !next.done; next = await reader.read()) {
    const chunk: Uint8Array = next.value;
    size += chunk.length;
    if (size > LARGEST) throw new Error('too large');
    chunks.push(chunk);
  }
  const whole = new Uint8Array(size);
  let at = 0;
  for (const chunk of chunks) {
    whole.set(chunk, at);
    at += chunk.length;
  }
  return whole;
}

/** Bytes in the letters that a link may hold, 6 bits each (base64url without padding). */
const textOf = (bytes: Uint8Array): string =>
  btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(''))
    .replaceAll('+', '-')
    .replaceAll('/', '_')
    .replace(/=+$/, '');

const bytesOf = (text: string): Uint8Array<ArrayBuffer> =>
  Uint8Array.from(atob(text.replaceAll('-', '+').replaceAll('_', '/')), (letter) => letter.charCodeAt(0));
