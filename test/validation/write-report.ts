/** `npm run validate`: runs every case and writes what they found for the page and for the model's document. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { root, textOf } from '../support/tree.ts';
import { loadCases } from './load-cases.ts';
import { MODEL_FILE, modelText, REPORT_FILE, reportOf, reportText } from './report.ts';

const report = reportOf(await loadCases());
mkdirSync(dirname(join(root, REPORT_FILE)), { recursive: true });
writeFileSync(join(root, REPORT_FILE), await reportText(report));
writeFileSync(join(root, MODEL_FILE), await modelText(textOf(MODEL_FILE), report));

for (const { name, lines } of report.cases) {
  for (const { quantity, values, max, relative, unit, share } of lines) {
    const error = relative ? `${Number((max * 100).toPrecision(2))} %` : `${max} ${unit}`;
    // NaN is a failure too
    const verdict = share <= 1 ? 'passes' : 'FAILS';
    console.log(
      `${verdict} ${name}: ${quantity}, ${values} values, largest error ${error}, ${share} of allowed`,
    );
    if (verdict === 'FAILS') process.exitCode = 1;
  }
}
console.log(`${report.cases.length} cases; wrote ${REPORT_FILE} and the table of ${MODEL_FILE}`);
