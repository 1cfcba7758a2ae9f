import { existsSync, rmSync } from 'node:fs';
import { root, runTool } from './tool.ts';
import { tallyPlaywright, tallyVitest, type Tally } from './tally.ts';

export function unitTests(): Promise<Tally> {
  const report = 'test-results/unit.json';
  const command = `vitest run --reporter=default --reporter=json --outputFile.json=${report}`;
  return runSuite(command, report, tallyVitest);
}

/** Builds first: the browser opens what a visitor would get. */
export async function browserTests(): Promise<Tally> {
  if (!(await runTool('vite build'))) return { passed: 0, failed: 1, skipped: 0 };
  return runSuite('playwright test --config test/browser', 'test-results/browser.json', tallyPlaywright);
}

/** A runner that ends badly although no test failed, or that leaves no report, counts as one failed test. */
async function runSuite(command: string, report: string, tallyOf: (path: string) => Tally): Promise<Tally> {
  const path = root + report;
  rmSync(path, { force: true });
  const endedWell = await runTool(command);
  const tally = existsSync(path) ? tallyOf(path) : { passed: 0, failed: 0, skipped: 0 };
  if (!endedWell && tally.failed === 0) tally.failed = 1;
  return tally;
}
