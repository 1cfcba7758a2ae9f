/**
 * `npm run bench`: every measure in one table, which also goes to result.json beside this file. `npm run bench -- kernel log`
 * takes these measures only and leaves the file alone. Times gate nothing: machines are noisy. Errors and allocations have
 * tests.
 */
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { batch } from './batch.ts';
import { conditions } from './conditions.ts';
import { drag } from './drag.ts';
import { feel } from './feel.ts';
import { growth } from './growth.ts';
import { kernel } from './kernel.ts';
import { library } from './library.ts';
import { lighthouse } from './lighthouse.ts';
import { log } from './log.ts';
import { machine } from './machine.ts';
import { pool } from './pool.ts';
import { Missing, tableOf, type Row } from './rows.ts';
import { scipy } from './scipy.ts';
import { start } from './start.ts';
import { stint } from './stint.ts';

/** A measure a file; each gives its lines of the table. */
const measures: Record<string, () => Promise<Row[]>> = {
  stint,
  kernel,
  scipy,
  library,
  growth,
  drag,
  feel,
  start,
  lighthouse,
  pool,
  conditions,
  batch,
  log,
};

const asked = process.argv.slice(2);
const unknown = asked.filter((name) => !(name in measures));
if (unknown.length > 0)
  throw new Error(`bench: ${unknown.join()}; known: ${Object.keys(measures).join(', ')}`);

const rows: Row[] = [];
const missing: string[] = [];
for (const [name, measure] of Object.entries(measures)) {
  if (asked.length > 0 && !asked.includes(name)) continue;
  process.stderr.write(`${name} ...\n`);
  try {
    rows.push(...(await measure()));
  } catch (error) {
    if (!(error instanceof Missing)) throw error;
    missing.push(`${name}: ${error.message}`);
  }
}
const where = await machine();
console.log(
  Object.entries(where)
    .map(([key, value]) => `${key}: ${value ?? 'none'}`)
    .join(', '),
);
console.log(tableOf(rows));
for (const line of missing) console.log(`not measured, ${line}`);
if (asked.length === 0) {
  const path = fileURLToPath(new URL('result.json', import.meta.url));
  writeFileSync(path, `${JSON.stringify({ machine: where, rows, missing }, null, 2)}\n`);
}
