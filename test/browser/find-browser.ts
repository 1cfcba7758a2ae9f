import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import { delimiter, join } from 'node:path';
import { chromium } from '@playwright/test';
import { installFromDebian, ran } from '../support/install.ts';

export const chromiumArgs = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

// one without windows draws the same and starts in half the time
const WITHOUT_WINDOWS = 'chromium-headless-shell';
const systemNames = [
  WITHOUT_WINDOWS,
  'chromium',
  'chromium-browser',
  'google-chrome',
  'google-chrome-stable',
  'chrome',
];
const macPaths = [
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
];

const playwrightCommand = createRequire(import.meta.url).resolve('@playwright/test/cli');

/** Path of a Chromium that has really started once here; installs one when there is none. */
export async function findBrowser(): Promise<string> {
  const wanted = process.env['EMBERLAP_CHROMIUM'];
  if (wanted) {
    if (await starts(wanted)) return wanted;
    throw new Error(`EMBERLAP_CHROMIUM: cannot start "${wanted}"`);
  }
  const found = (await firstThatStarts()) ?? (await installFromPlaywright()) ?? (await installedFromDebian());
  if (found) return found;
  throw new Error(
    'browser: no Chromium starts here and none could be installed. ' +
      'Install Chromium and put the path of its program in EMBERLAP_CHROMIUM.',
  );
}

async function firstThatStarts(): Promise<string | undefined> {
  for (const path of [chromium.executablePath(), ...systemPaths()]) {
    if (await starts(path)) return path;
  }
  return undefined;
}

function systemPaths(): string[] {
  const folders = (process.env['PATH'] ?? '').split(delimiter);
  return [...systemNames.flatMap((name) => folders.map((folder) => join(folder, name))), ...macPaths];
}

async function starts(path: string): Promise<boolean> {
  if (!existsSync(path)) return false;
  try {
    const browser = await chromium.launch({ executablePath: path, args: chromiumArgs, timeout: 60_000 });
    const page = await browser.newPage();
    await page.goto('about:blank');
    await browser.close();
    return true;
  } catch {
    return false;
  }
}

async function installFromPlaywright(): Promise<string | undefined> {
  return ran(process.execPath, [playwrightCommand, 'install', 'chromium']) ? firstThatStarts() : undefined;
}

async function installedFromDebian(): Promise<string | undefined> {
  for (const name of [WITHOUT_WINDOWS, 'chromium']) {
    const found = installFromDebian(name) ? await firstThatStarts() : undefined;
    if (found) return found;
  }
  return undefined;
}
