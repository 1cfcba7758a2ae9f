import { staticChecks } from './run/static-checks.ts';
import { browserTests, unitTests } from './run/suites.ts';
import { added, type Tally } from './run/tally.ts';

/** Runs what was asked for (`check`, `unit`, `browser`; all of it by default) and ends with one line of sums. */
const suites = { check: staticChecks, unit: unitTests, browser: browserTests };
type SuiteName = keyof typeof suites;

const asked = process.argv.slice(2);
const unknown = asked.filter((name) => !(name in suites));
if (unknown.length > 0)
  throw new Error(`suite: ${unknown.join(', ')}; known: ${Object.keys(suites).join(', ')}`);

const names = (asked.length > 0 ? asked : Object.keys(suites)) as SuiteName[];
let total: Tally = { passed: 0, failed: 0, skipped: 0 };
for (const name of names) {
  console.log(`\n== ${name}`);
  const tally = await suites[name]();
  if (tally.passed + tally.failed === 0) {
    console.log(`${name}: ran nothing`);
    tally.failed += 1;
  }
  total = added(total, tally);
}

const skipped = total.skipped > 0 ? `, ${total.skipped} skipped` : '';
process.exitCode = total.failed > 0 ? 1 : 0;
console.log(`\n${total.passed} passed, ${total.failed} failed${skipped}`);
