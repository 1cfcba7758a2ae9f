import { expect, test } from './fixtures.ts';
import { openSheet } from './sheet.ts';

test('one number can be followed from the page to its source and its check', async ({ page }) => {
  await page.goto('/');
  await page.getByRole('link', { name: 'How far to trust this' }).click();
  const follow = page.getByRole('region', { name: 'Follow one number to its source' });
  await expect(follow.getByRole('listitem').first()).toContainText('E = ½ κ m (V₁² − V₂²)');
  await expect(follow.getByText('Where a settled disc stands')).toBeVisible();
  await expect(follow.getByText(/the model’s bulk, lap’s mean: \d+\s°C/)).toBeVisible();
  const flash = follow.getByRole('listitem').filter({ hasText: 'Flash of the face' });
  await expect(flash).toContainText('Carslaw & Jaeger');
  const check = /Checked below: ([^,]+),/.exec((await flash.textContent()) ?? '')![1]!;
  await expect(page.getByRole('table').filter({ hasText: check })).toHaveCount(1);
});

test('the other axle has numbers of its own, and each law says where it holds', async ({ page }) => {
  await page.goto('/#trust');
  const follow = page.getByRole('region', { name: 'Follow one number to its source' });
  const first = follow.getByRole('listitem').nth(2);
  await expect(first).toContainText('heat of this brake');
  const front = await first.textContent();
  await follow.getByRole('radio', { name: 'Rear' }).check();
  await expect(first).not.toHaveText(front!);
  await expect(page.getByText('Reynolds number of the passages')).toBeVisible();
});

test('the number that is followed is named first, with its stint, and the lines arrive at it', async ({
  page,
}) => {
  await openSheet(page);
  const hash = (await page.locator('footer .hash').textContent())!;
  await page.getByRole('link', { name: 'How far to trust this' }).click();
  const follow = page.getByRole('region', { name: 'Follow one number to its source' });
  const named = /^\s*Front face (\d+)\u00a0°C, .+, lap\u00a0\d+, of (.+): here is where it comes from/;
  await expect(follow.getByText('here is where it comes from')).toHaveText(named);
  const [, peak] = named.exec((await follow.getByText('here is where').textContent())!)!;
  await expect(follow).toContainText(`Hash of the stint: ${hash}`);
  const sum = follow.getByRole('listitem').filter({ hasText: 'the number on the page' });
  await expect(sum.locator('strong')).toHaveText(`T\u00a0=\u00a0${peak}\u00a0°C`);
});

test('it starts at the axle in view on the stint’s page', async ({ page }) => {
  await openSheet(page);
  await page.getByRole('radio', { name: 'rear' }).check();
  await page.getByRole('link', { name: 'How far to trust this' }).click();
  const follow = page.getByRole('region', { name: 'Follow one number to its source' });
  await expect(follow.getByRole('radio', { name: 'Rear' })).toBeChecked();
  await expect(follow.getByText('here is where it comes from')).toHaveText(/Rear face/);
});

test('what the count of runs means is said, with how many values are varied', async ({ page }) => {
  await page.goto('/#trust');
  const means = page.locator('section', { hasText: 'What the count of runs means' }).last();
  await expect(means).toContainText(/varied at once, [1-9]\d+ of this scenario/);
});

for (const width of [320, 1360]) {
  test(`at ${width} pixels nothing jumps when the numbers arrive`, async ({ page }) => {
    await page.setViewportSize({ width, height: 800 });
    await page.addInitScript(() => {
      new PerformanceObserver((list) => {
        for (const entry of list.getEntries() as unknown as { value: number }[])
          (window as unknown as { moved: number }).moved =
            ((window as unknown as { moved?: number }).moved ?? 0) + entry.value;
      }).observe({ type: 'layout-shift', buffered: true });
    });
    await page.goto('/#trust');
    await page.getByText('Where a settled disc stands').waitFor();
    await page.evaluate(
      () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))),
    );
    const moved = await page.evaluate(() => (window as unknown as { moved?: number }).moved ?? 0);
    expect(moved).toBeLessThan(0.1);
  });
}

test('where the worker fails there is one message, and the checks stand without it', async ({
  page,
  complaints,
}) => {
  await page.route(/worker.*\.js$/, (route) => route.abort());
  await page.goto('/#trust');
  await expect(page.getByText(/could not be (computed|started)/)).toHaveCount(1);
  await expect(page.getByText('Being computed')).toHaveCount(0);
  await expect(page.getByRole('table').first()).toBeVisible();
  complaints.length = 0;
});
