import { existsSync, rmSync } from 'node:fs';
import { runTool, root } from './tool.ts';
import { tallyPlaywright, tallyVitest, type Tally } from './tally.ts';

export function unitTests(): Promise<Tally> {
  const report = `${root}test-results/unit.json`;
  const command = `vitest run --reporter=default --reporter=json --outputFile.json=${report}`;
  return runSuite(command, report, tallyVitest);
}

/** The build that the browser opens counts as one test. */
export async function browserTests(): Promise<Tally> {
  if (!(await runTool('vite build'))) return { passed: 0, failed: 1, skipped: 0 };
  const report = `${root}test-results/browser.json`;
  const tally = await runSuite('playwright test --config test/browser', report, tallyPlaywright);
  return tally;
}

/** A runner that ends badly although no test failed, or that leaves no report, counts as one failed test. */
async function runSuite(command: string, report: string, tallyOf: (path: string) => Tally): Promise<Tally> {
  rmSync(report, { force: true });
  const endedWell = await runTool(command);
  const tally = existsSync(report) ? tallyOf(report) : { passed: 0, failed: 0, skipped: 0 };
  if (!endedWell && tally.failed === 0) tally.failed = 1;
  return tally;
}
