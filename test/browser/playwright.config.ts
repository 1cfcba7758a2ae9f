import { createServer, type AddressInfo } from 'node:net';
import { fileURLToPath } from 'node:url';
import { defineConfig } from '@playwright/test';
import { chromiumArgs, findBrowser } from './find-browser.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
const results = `${root}test-results/`;

// Playwright reads this file again in every worker process: what was found the first time is handed on.
const browser = (process.env['EMBERLAP_TEST_BROWSER'] ??= await findBrowser());
const port = (process.env['EMBERLAP_TEST_PORT'] ??= String(await freePort()));
const baseURL = `http://localhost:${port}`;

const ALONE = '**/alone/**';

export default defineConfig({
  testDir: '.',
  testMatch: '**/*.spec.ts',
  outputDir: `${results}browser`,
  snapshotPathTemplate: '{testDir}/pictures/{arg}{ext}',
  workers: 2,
  // what measures how soon something is done has the machine to itself
  projects: [
    { name: 'by two', testIgnore: ALONE },
    { name: 'alone', testMatch: ALONE, dependencies: ['by two'], workers: 1 },
  ],
  forbidOnly: process.env['CI'] !== undefined,
  timeout: 60_000,
  // two tests share a machine that may be slow: what has to be fast names its own time
  expect: { timeout: 15_000 },
  reporter: [['list'], ['json', { outputFile: `${results}browser.json` }]],
  use: {
    browserName: 'chromium',
    headless: true,
    baseURL,
    viewport: { width: 1280, height: 800 },
    screenshot: 'only-on-failure',
    // a trace of every test takes a third of its time: asked for by `--trace on`
    trace: 'off',
    // it would answer in place of the network that a test cuts; the tests of it let it work
    serviceWorkers: 'block',
    launchOptions: { executablePath: browser, args: chromiumArgs },
  },
  webServer: {
    command: `npx vite preview --port ${port} --strictPort`,
    cwd: root,
    url: baseURL,
    reuseExistingServer: false,
  },
});

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const server = createServer().once('error', reject);
    server.listen(0, 'localhost', () => {
      const { port } = server.address() as AddressInfo;
      server.close(() => resolve(port));
    });
  });
}
