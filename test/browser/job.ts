/**
 * One whole job, however it is done: another circuit, the front's window, the blanking that is proposed, a pin, a change, the
 * difference, a file. Each way of doing it brings its own hand; what the page must answer is the same.
 */
import { readFile } from 'node:fs/promises';
import { expect, type Download, type Locator, type Page } from '@playwright/test';

export interface Hand {
  chooseCircuit(name: string): Promise<void>;
  /** From what the sheet opens with. */
  setWindow(from: Window, to: Window): Promise<void>;
  blank(from_pct: number, to_pct: number): Promise<void>;
  pin(): Promise<void>;
  save(): Promise<void>;
}

export interface Window {
  bite_C: number;
  facePeak_C: number;
}

const CIRCUIT = 'Orrowfell';
const OPENS_WITH: Window = { bite_C: 400, facePeak_C: 650 };
const WINDOW: Window = { bite_C: 370, facePeak_C: 660 };
const LESS_PCT = 5;

/** What the eye reads: the same words are read out later. */
const sentenceOf = (page: Page): Locator => page.locator('.sentence .lead');
const restOf = (page: Page): Locator => page.locator('.sentence .rest');

/** Opens the sheet and does nothing else, so that the focus is where a page begins. */
export async function arrive(page: Page): Promise<void> {
  await page.goto('/');
  await expect(page.locator('.sentence').getByRole('status')).toContainText(/alibrated/);
  await expect(page.getByRole('slider', { name: 'Front blanking', exact: true })).toBeAttached();
}

export async function wholeJob(page: Page, hand: Hand): Promise<void> {
  await expect(sentenceOf(page)).toHaveText(/^Front 70\s% blanked runs too hot from lap/);
  await hand.chooseCircuit(CIRCUIT);
  await expect(page.getByRole('contentinfo')).toContainText(`${CIRCUIT}, dry`);
  await expect(sentenceOf(page)).toContainText(/swing of 278\sK is wider than the window, 250\sK/);
  const before = (await sentenceOf(page).textContent())!;
  await hand.setWindow(OPENS_WITH, WINDOW);
  await expect(page.locator('summary').filter({ hasText: 'Window, front' })).toContainText('370 to 660');
  await expect(sentenceOf(page)).not.toHaveText(before);

  await expect(restOf(page)).toHaveText(/^Safe on counted laps from\s\d+\sto\s\d+\s%; fit [^;]*\d+\s%/);
  const proposed = Number(/; fit [^;.]*?(\d+)\s%/.exec((await restOf(page).textContent())!)![1]);
  await hand.blank(70, proposed);
  await expect(sentenceOf(page)).toHaveText(new RegExp(`^Front ${proposed}\\s% blanked stays in`));

  await hand.pin();
  await expect(page.getByText('Pinned. Change something to see the difference.')).toBeVisible();
  await hand.blank(proposed, proposed - LESS_PCT);
  await expect(sentenceOf(page)).toHaveText(new RegExp(`^Front ${proposed - LESS_PCT}\\s% blanked`));
  const difference = page.getByText(new RegExp(`^Against pinned ${proposed}\\s%: face peak \\d+\\sK cooler`));
  await expect(difference).toBeVisible();

  const download = page.waitForEvent('download');
  await hand.save();
  await expect(page.getByText(/^Saved in /)).toBeInViewport();
  expect(await chosenIn(await download)).toEqual({
    circuit: CIRCUIT,
    window: WINDOW,
    front_pct: proposed - LESS_PCT,
  });
}

async function chosenIn(download: Download): Promise<unknown> {
  const file = JSON.parse(await readFile(await download.path(), 'utf8')) as {
    circuit: { name: string };
    brakes: { front: { window: { bite_C: number; face_peak_C: number } } };
    blanking_pct: { front: number };
  };
  const { bite_C, face_peak_C: facePeak_C } = file.brakes.front.window;
  return { circuit: file.circuit.name, window: { bite_C, facePeak_C }, front_pct: file.blanking_pct.front };
}
