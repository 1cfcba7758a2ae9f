/** Every case of this folder, read from disk: for the tests and for the report alike. */
import { pathToFileURL } from 'node:url';
import { join } from 'node:path';
import { filesUnder, root, textOf } from '../support/tree.ts';
import { GROUPS, type Compute, type Statement, type ValidationCase } from './gate.ts';

export const caseNames = (): string[] =>
  filesUnder('test/validation')
    .filter((path) => path.endsWith('/data.csv'))
    .map((path) => path.split('/').at(-2) ?? '');

async function loadCase(name: string): Promise<ValidationCase> {
  const folder = `test/validation/${name}`;
  const read = (file: string): string => textOf(`${folder}/${file}`);
  const address = pathToFileURL(join(root, folder, 'case.ts')).href;
  const { compute } = (await import(/* @vite-ignore */ address)) as { compute: Compute };
  const stated = JSON.parse(read('case.json')) as Statement;
  return { ...stated, name, source: read('source.md'), data: read('data.csv'), compute };
}

/** In the order of the report: by group, then by name. */
export async function loadCases(): Promise<ValidationCase[]> {
  const cases = await Promise.all(caseNames().map(loadCase));
  const place = ({ group }: ValidationCase): number => GROUPS.indexOf(group);
  return cases.sort((a, b) => place(a) - place(b) || (a.name < b.name ? -1 : 1));
}
