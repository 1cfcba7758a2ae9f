import { axe } from './axe.ts';
import type { Locator, Page } from '@playwright/test';
import { finished } from '../../engine/advise/finished.ts';
import { safeSpans } from '../../engine/advise/safe-span.ts';
import { spread } from '../../engine/advise/spread.ts';
import { weighed } from '../../engine/advise/weighed.ts';
import { defaultScenario } from '../../engine/scenario/library.ts';
import { hottestRow } from '../../web/display/dots.ts';
import { expect, test } from './fixtures.ts';
import { openSheet } from './sheet.ts';

/** A hundred runs of both axles, and as many of all that can be fitted, after the spans, on a slow machine. */
const PATIENCE = { timeout: 90_000 };

test.beforeEach(() => test.setTimeout(180_000));

const section = (page: Page): Locator => page.getByRole('region', { name: /^How sure, front/ });

async function openSure(page: Page): Promise<Locator> {
  const { sentence } = await openSheet(page);
  await page.getByRole('radio', { name: 'how sure' }).check();
  await expect(section(page)).toContainText(/Being computed|runs stay in/);
  await expect(section(page).getByRole('heading', { name: /^As it is/ })).toBeVisible(PATIENCE);
  return sentence;
}

test('sentence, heading, squares and dots tell of the same runs as the engine', async ({ page }) => {
  const sentence = await openSure(page);
  const scenario = defaultScenario();
  const front = finished(spread(scenario, { draws: 100, seed: 1 })).corners[0]!;
  await expect(sentence).toContainText(
    new RegExp(` ${front.count.in} of\\s100 runs keeps? the front discs in`),
  );
  await expect(
    section(page).getByRole('heading', {
      name: `As it is, 70\u00a0%: ${front.count.in} of 100 runs stay in`,
    }),
  ).toBeVisible();
  const row = hottestRow(front, scenario.brakes.front.window.face_peak_C + 273.15);
  const dots = section(page).getByRole('img', {
    name: new RegExp(`^${row.good} of 20 runs stays? below 650`),
  });
  await expect(dots.first()).toBeVisible();
  await expect(dots.first().locator('circle')).toHaveCount(20);
  await expect(dots.first().locator('circle.bad')).toHaveCount(20 - row.good);
});

test('what most runs keep in is proposed, with its count, in the sentence and beside what is fitted', async ({
  page,
}) => {
  const sentence = await openSure(page);
  const scenario = defaultScenario();
  const spans = finished(safeSpans(scenario));
  const { proposal } = finished(weighed(scenario, { draws: 100, seed: 1, spans }))[0]!;
  const { blanking_pct, panel, count } = proposal!;
  const name = `panel\u00a0${'ABCDE'[panel!]} (${blanking_pct}\u00a0%)`;
  await expect(
    section(page).getByRole('heading', { name: `With ${name}: ${count!.in} of 100 runs stay in` }),
  ).toBeVisible(PATIENCE);
  await expect(sentence).toContainText(
    new RegExp(`; fit panel.*\\(${blanking_pct}\\s%\\), \\d+\\sK to spare, ${count!.in} of\\s100 runs in\\.`),
  );
  await expect(section(page).getByRole('heading', { name: 'What to measure first' })).toBeVisible(PATIENCE);
  await expect(section(page).getByRole('listitem')).toHaveCount(3);
  await expect(section(page).getByRole('listitem').first()).toContainText(/±\d+\sK.*To measure: /);
  expect((await axe(page).analyze()).violations).toEqual([]);
  // it does not hang on what is fitted
  await page.getByRole('slider', { name: 'Front blanking', exact: true }).fill('40');
  await expect(sentence).toContainText(
    new RegExp(`Front 40\\s%.*${count!.in} of\\s100 runs in\\..*doubt is being computed`),
  );
});

test('what is proposed is fitted from beside its count, as one step', async ({ page }) => {
  const sentence = await openSure(page);
  const fit = section(page).getByRole('button', { name: /^Fit / });
  await fit.click(PATIENCE);
  await expect(sentence).toContainText(/Front \d+\s% blanked stays in/);
  await expect(fit).toHaveCount(0);
  await expect(page.getByRole('button', { name: 'Undo', exact: true })).toHaveAccessibleDescription(
    /^Undo front blanking 70 to \d+\s%$/,
  );
});

test('one stint at a time runs on request, is paused, stepped and taken away', async ({ page }) => {
  await openSure(page);
  const press = (name: string): Promise<void> => section(page).getByRole('button', { name }).click();
  const told = section(page).getByText(/^Run \d+ of 100: face peak/);
  await expect(told).toHaveCount(0);
  await press('Show');
  await expect(told).toHaveText(/^Run 1 of 100/);
  await expect(told).toHaveText(/^Run [23] of 100/, { timeout: 5000 });
  await press('Pause');
  const paused = await told.textContent();
  await page.waitForTimeout(2000);
  await expect(told).toHaveText(paused!);
  await press('Next run');
  await expect(told).not.toHaveText(paused!);
  await press('Run before');
  await expect(told).toHaveText(paused!);
  await press('Take away');
  await expect(told).toHaveCount(0);
});

test('with reduced motion nothing plays: small stints stand side by side', async ({ page }) => {
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await openSure(page);
  await expect(section(page).getByRole('button', { name: 'Show' })).toHaveCount(0);
  await expect(section(page).getByRole('img', { name: /^Run \d+ of 100/ })).toHaveCount(12);
});

test('the fan is of what is shown, and gone as soon as that is another question', async ({ page }) => {
  const sentence = await openSure(page);
  await page.getByRole('radio', { name: 'chart', exact: true }).check();
  const note = page.getByText(/Shaded: spread of 100 runs\./);
  const word = page.locator('.plot text', { hasText: /^middle 80\s%$/ });
  await expect(note).toBeVisible();
  await expect(word).toBeVisible();
  await page.getByRole('slider', { name: 'Front blanking', exact: true }).fill('40');
  await expect(sentence).toContainText(/Front 40\s%/);
  await expect(note).toHaveCount(0);
  await expect(word).toHaveCount(0);
});
