import { readFileSync } from 'node:fs';

export interface Tally {
  passed: number;
  failed: number;
  skipped: number;
}

interface VitestReport {
  testResults: { status: string; assertionResults: { status: string }[] }[];
}

interface PlaywrightReport {
  errors: unknown[];
  stats: { expected: number; unexpected: number; flaky: number; skipped: number };
}

export function added(a: Tally, b: Tally): Tally {
  return { passed: a.passed + b.passed, failed: a.failed + b.failed, skipped: a.skipped + b.skipped };
}

/** A file that failed before its first test counts as one failed test. */
export function tallyVitest(path: string): Tally {
  const { testResults } = readJson(path) as VitestReport;
  const tests = testResults.flatMap((file) => file.assertionResults.map((test) => test.status));
  const passed = tests.filter((status) => status === 'passed').length;
  const failed = tests.filter((status) => status === 'failed').length;
  const broken = testResults.filter(
    (file) => file.status === 'failed' && file.assertionResults.every((test) => test.status !== 'failed'),
  ).length;
  return { passed, failed: failed + broken, skipped: tests.length - passed - failed };
}

/** A test that passed only on a second try counts as failed; so does an error outside any test. */
export function tallyPlaywright(path: string): Tally {
  const { errors, stats } = readJson(path) as PlaywrightReport;
  return {
    passed: stats.expected,
    failed: stats.unexpected + stats.flaky + errors.length,
    skipped: stats.skipped,
  };
}

function readJson(path: string): unknown {
  return JSON.parse(readFileSync(path, 'utf8'));
}
