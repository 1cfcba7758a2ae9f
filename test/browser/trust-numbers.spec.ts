import { expect, test } from './fixtures.ts';

test('one number can be followed from the page to its source and its check', async ({ page }) => {
  await page.goto('/');
  await page.getByRole('link', { name: 'How far to trust this' }).click();
  const follow = page.getByRole('region', { name: 'Follow one number to its source' });
  await expect(follow.getByRole('listitem').first()).toContainText('E = ½ κ m (V₁² − V₂²)');
  await expect(follow.getByText('Where a settled disc stands')).toBeVisible();
  await expect(follow.getByText(/the model’s bulk, lap’s mean: \d+ °C/)).toBeVisible();
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
