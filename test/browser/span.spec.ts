import { finished } from '../../engine/advise/finished.ts';
import { safeSpans } from '../../engine/advise/safe-span.ts';
import type { SafeSpan } from '../../engine/advise/span.ts';
import { defaultScenario } from '../../engine/scenario/library.ts';
import { override } from '../../engine/scenario/override.ts';
import { dragTo, openSheet } from './sheet.ts';
import { expect, test } from './fixtures.ts';

const front = (ambient_C?: number): SafeSpan => {
  const base = defaultScenario();
  const changed = ambient_C === undefined ? null : override(base, { 'conditions.ambient_C': ambient_C });
  return finished(safeSpans(changed?.ok ? changed.scenario : base))[0]!;
};
const inWords = ({ span_pct }: SafeSpan): RegExp => {
  const [low, high] = span_pct!;
  return new RegExp(`Safe on counted laps from ${Math.ceil(low)} to\\s${Math.floor(high)}\\s%`);
};

test('the safe span of the engine stands in the sentence, over the mouth and under the chart’s title', async ({
  page,
}) => {
  const { sentence } = await openSheet(page);
  const span = front();
  await expect(sentence).toContainText(inWords(span));
  const range = new RegExp(`safe ${Math.ceil(span.span_pct![0])} to\\s${Math.floor(span.span_pct![1])}\\s%`);
  await expect(page.getByLabel('front mouth').getByText(range)).toBeVisible();
  await expect(page.getByRole('slider', { name: 'Front blanking', exact: true })).toHaveAccessibleDescription(
    new RegExp(`^The window is kept at ${Math.ceil(span.span_pct![0])} to\\s`),
  );
  const why = new RegExp(`below, ${span.low!.place} starts under bite on lap\\s${span.low!.lap}`);
  await expect(page.getByText(why)).toBeVisible();
});

test('by keyboard alone the blanking is brought to what is proposed, and stays in', async ({ page }) => {
  const { sentence, slider } = await openSheet(page);
  const { proposal } = front();
  await expect(sentence).toContainText(/Safe on counted laps/);
  const lever = slider('Front blanking');
  await lever.focus();
  for (let at = 70; at > proposal!.blanking_pct; at--) await page.keyboard.press('ArrowLeft');
  await expect(lever).toHaveValue(String(proposal!.blanking_pct));
  await expect(sentence).toContainText(/Front \d+\s% blanked stays in/);
  await expect(sentence).toContainText(inWords(front()));
});

test('the span stays in sight while the blanking is dragged, and nothing is searched again', async ({
  page,
}) => {
  const { sentence, slider } = await openSheet(page);
  await expect(sentence).toContainText(/Safe on counted laps/);
  await page.evaluate(`{
    window.waits = 0;
    const lines = document.querySelector('.sentence');
    new MutationObserver(() => { if (/safe span follows/i.test(lines.textContent)) window.waits += 1; })
      .observe(lines, { subtree: true, childList: true, characterData: true });
  }`);
  await dragTo(page, slider('Front blanking'), 0.2);
  await dragTo(page, slider('Front blanking'), 0.6);
  expect(await page.evaluate('window.waits')).toBe(0);
  await expect(sentence).toContainText(inWords(front()));
});

test('another day has another span: the old one goes at once and the new one comes', async ({ page }) => {
  const { sentence, slider } = await openSheet(page);
  await expect(sentence).toContainText(inWords(front()));
  await slider('Ambient').fill('12');
  await expect(sentence).toContainText(inWords(front(12)));
});

test('an empty span says by how much each side fails and what would help', async ({ page }) => {
  const { sentence } = await openSheet(page);
  await page.getByLabel('Stint', { exact: true }).selectOption('club-evening');
  await expect(sentence).toContainText(/Too hot even fully open; one hose more would gain \d+\sK/);
  await expect(page.getByText(/Least bad 0\s%: \d+\sK too hot/)).toBeVisible();
});
