import { expect, test } from './fixtures.ts';
import { dragTo, openSheet } from './sheet.ts';

test('the page opens with a full stint and its sentence', async ({ page }) => {
  const { sentence } = await openSheet(page);
  await expect(sentence).toHaveText(/^Front 70\s% blanked (runs too hot from lap\s\d+, by|stays in)/);
  await expect(page.getByRole('img', { name: /Disc in section: .*face \d+/ })).toBeVisible();
  await expect(page.getByRole('img', { name: /Face temperature around lap/ })).toBeVisible();
  await expect(page.getByText('example, replace. Not for use on a car')).toBeVisible();
});

for (const { name, share } of [
  { name: 'Front blanking', share: 0.2 },
  { name: 'Rear blanking', share: 0.9 },
  { name: 'Ambient', share: 0.9 },
  { name: 'Altitude', share: 0.8 },
  { name: 'Gap to the car ahead', share: 0.06 },
  { name: 'Laps', share: 0.7 },
]) {
  test(`dragging "${name}" recomputes the stint, and undo takes the drag back as one step`, async ({
    page,
  }) => {
    const { slider } = await openSheet(page);
    const hash = page.locator('.hash');
    const [before, hashBefore] = [await slider(name).inputValue(), await hash.textContent()];
    await dragTo(page, slider(name), share);
    await expect(slider(name)).not.toHaveValue(before);
    await expect(hash).not.toHaveText(hashBefore ?? '');
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect(slider(name)).toHaveValue(before);
    await expect(hash).toHaveText(hashBefore ?? '');
    await expect(page.getByRole('button', { name: 'Undo' })).toBeDisabled();
  });
}

test('the sentence follows the blanking: more is hotter', async ({ page }) => {
  const { slider, sentence } = await openSheet(page);
  await slider('Front blanking').fill('100');
  await expect(sentence).toHaveText(/^Front 100\s% blanked runs too hot/);
  const atFull = Number(/by (\d+)/.exec((await sentence.textContent()) ?? '')?.[1]);
  await slider('Front blanking').fill('85');
  await expect(sentence).toHaveText(/^Front 85\s%/);
  expect(Number(/by (\d+)/.exec((await sentence.textContent()) ?? '')?.[1] ?? 0)).toBeLessThan(atFull);
});

test("the mouth's edge can be dragged", async ({ page }) => {
  const { slider } = await openSheet(page);
  const grip = (await page.locator('.mouth .grip').first().boundingBox())!;
  await page.mouse.move(grip.x + grip.width / 2, grip.y + grip.height / 2);
  await page.mouse.down();
  await page.mouse.move(grip.x - 50, grip.y, { steps: 8 });
  await page.mouse.up();
  expect(Number(await slider('Front blanking').inputValue())).toBeLessThan(60);
});

test('minus, plus and arrow keys move by one step', async ({ page }) => {
  const { slider, field } = await openSheet(page);
  await page.getByRole('button', { name: 'Less: Front blanking' }).click();
  await expect(slider('Front blanking')).toHaveValue('69');
  await slider('Front blanking').press('ArrowRight');
  await slider('Front blanking').press('ArrowRight');
  await expect(slider('Front blanking')).toHaveValue('71');
  await field('Ambient').press('ArrowUp');
  await expect(slider('Ambient')).toHaveValue('27');
});

test('typed nonsense is answered with the range and loses nothing', async ({ page }) => {
  const { slider, field } = await openSheet(page);
  await field('Front blanking').fill('lots');
  await field('Front blanking').press('Enter');
  await expect(page.getByRole('alert')).toHaveText(/Expected 0 to 100 %, got “lots”\. 70\s% stays\./);
  await field('Front blanking').fill('33,4');
  await field('Front blanking').press('Enter');
  await expect(page.getByRole('alert')).toHaveCount(0);
  await expect(slider('Front blanking')).toHaveValue(/^33/);
  await field('Laps').fill('1');
  await field('Laps').press('Enter');
  await expect(page.getByRole('alert')).toHaveText(/Expected at least \d+, the laps of its phases, got “1”/);
});

test('a gap is cleared by the far end of its range or by its name', async ({ page }) => {
  const { slider, field } = await openSheet(page);
  await field('Gap to the car ahead').fill('8 m');
  await field('Gap to the car ahead').press('Enter');
  await expect(slider('Gap to the car ahead')).toHaveAttribute('aria-valuetext', /^8\sm$/);
  await slider('Gap to the car ahead').press('End');
  await expect(slider('Gap to the car ahead')).toHaveAttribute('aria-valuetext', 'clear air');
});

test('rain cools the discs', async ({ page }) => {
  await openSheet(page);
  await page.getByRole('button', { name: 'Pin this run' }).click();
  await page.getByRole('radio', { name: 'wet' }).check();
  await expect(page.getByText(/^Against pinned dry: face peak \d+\sK cooler/)).toBeVisible();
});

test('a pinned run is compared in words', async ({ page }) => {
  const { slider } = await openSheet(page);
  await page.getByRole('button', { name: 'Pin this run' }).click();
  await slider('Front blanking').fill('30');
  await expect(
    page.getByText(/^Against pinned 70\s%: face peak \d+\sK cooler, coldest stop \d+\sK colder/),
  ).toBeVisible();
  await page.getByRole('button', { name: /^Unpin pinned 70/ }).click();
  await expect(page.getByText(/Against pinned/)).toHaveCount(0);
});

test('another car, circuit and stint can be chosen', async ({ page }) => {
  const { sentence } = await openSheet(page);
  await page.getByLabel('Car', { exact: true }).selectOption('light');
  await expect(sentence).toHaveText(/^Front 55\s% blanked/);
  await expect(page.getByText('No duct at this axle')).toBeVisible();
  await page.getByLabel('Circuit', { exact: true }).selectOption('slow');
  await expect(page.getByRole('contentinfo')).toContainText('Tibbinlow');
  await page.getByLabel('Stint', { exact: true }).selectOption('restart');
  await expect(sentence).toHaveText(/^(Front|Rear) 50\s% blanked/);
});

test('the window keeps bite and face peak 50 °C apart', async ({ page }) => {
  const { slider, field } = await openSheet(page);
  await page.getByText('Window, front').click();
  await field('Bite, front').fill('640');
  await field('Bite, front').press('Enter');
  await expect(page.getByRole('alert')).toHaveText(/Expected 0 to 600 °C/);
  await slider('Face peak, front').fill('800');
  await expect(page.getByText(/400 to 800/)).toBeVisible();
});

test('the table says the same as the sentence', async ({ page }) => {
  const { sentence } = await openSheet(page);
  await page.getByRole('radio', { name: 'table' }).check();
  const rows = page.getByRole('table').getByRole('row');
  await expect(rows).toHaveCount(21);
  const from = /from lap\s(\d+)/.exec((await sentence.textContent()) ?? '')?.[1];
  await expect(rows.nth(Number(from))).toContainText('out: too hot');
  await expect(rows.nth(Number(from) - 1)).not.toContainText('out:');
});

test('the lap can be seen in full', async ({ page }) => {
  await openSheet(page);
  await page.getByRole('radio', { name: 'lap' }).check();
  await expect(page.getByText(/^Lap\s\d+, push: front face up to \d+\s°C/)).toBeVisible();
});
