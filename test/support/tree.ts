import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('../../', import.meta.url));

const notOurs = new Set(['node_modules', '.git', 'dist', 'test-results']);

/** Every file of the project below a folder, as a path from the top with forward slashes. */
export function filesUnder(folder = ''): string[] {
  const here = folder === '' ? '' : `${folder}/`;
  return entriesOf(folder)
    .filter((entry) => !notOurs.has(entry.name))
    .flatMap((entry) => (entry.isDirectory() ? filesUnder(here + entry.name) : [here + entry.name]));
}

function entriesOf(folder: string) {
  try {
    return readdirSync(root + folder, { withFileTypes: true });
  } catch {
    return []; // a part that is not there yet
  }
}

export function textOf(path: string): string {
  return readFileSync(root + path, 'utf8');
}

export const isSource = (path: string): boolean => /\.(ts|svelte)$/.test(path);
