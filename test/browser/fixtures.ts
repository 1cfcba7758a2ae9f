import { test as base, expect, type BrowserContext, type ConsoleMessage } from '@playwright/test';

export { expect };

/** Each worker of the page's pool has the engine to compile, which is most of what a short test costs: one is enough. */
const ONE_CORE = `Object.defineProperty(navigator, 'hardwareConcurrency', { value: 1, configurable: true })`;

interface Fixtures {
  /** What the page did wrong so far. A test that provokes something on purpose empties it itself. */
  complaints: string[];
}

/** Fails a test on any console warning or error, any uncaught error and any request that leaves the page's origin. */
export const test = base.extend<Fixtures>({
  complaints: [
    async ({ context, baseURL }, use) => {
      await context.addInitScript(ONE_CORE);
      const complaints: string[] = [];
      listen(context, new URL(baseURL ?? '').origin, complaints);
      await use(complaints);
      expect(complaints, 'the page stays quiet and at home').toEqual([]);
    },
    { auto: true },
  ],
});

function listen(context: BrowserContext, origin: string, complaints: string[]): void {
  context.on('console', (message) => {
    if (isComplaint(message)) complaints.push(`console ${message.type()}: ${message.text()}`);
  });
  context.on('weberror', (problem) => complaints.push(`uncaught: ${problem.error().message}`));
  context.on('request', (request) => {
    if (!isAtHome(request.url(), origin)) complaints.push(`request: ${request.url()}`);
  });
}

function isComplaint(message: ConsoleMessage): boolean {
  // the browser's driver says so itself, where no service worker may work
  if (message.text() === 'Service Worker registration blocked by Playwright') return false;
  return ['warning', 'error', 'assert'].includes(message.type());
}

function isAtHome(url: string, origin: string): boolean {
  return url.startsWith('data:') || new URL(url).origin === origin;
}
