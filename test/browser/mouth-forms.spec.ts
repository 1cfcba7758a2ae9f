import type { Page } from '@playwright/test';
import { expect, test } from './fixtures.ts';
import { openSheet } from './sheet.ts';

async function drop(page: Page, scenario: object): Promise<void> {
  const data = await page.evaluateHandle(
    (text) => {
      const transfer = new DataTransfer();
      transfer.items.add(new File([text], 'forms.json'));
      return transfer;
    },
    JSON.stringify({ version: 1, ...scenario }),
  );
  await page.dispatchEvent('body', 'drop', { dataTransfer: data });
}

const mouth = (page: Page, axle: string) => page.getByRole('region', { name: `${axle} mouth` });

/** Of the edge's grip. */
async function middleOf(page: Page, axle: string): Promise<{ x: number; y: number }> {
  const { x, y, width, height } = (await mouth(page, axle).locator('.grip').boundingBox())!;
  return { x: x + width / 2, y: y + height / 2 };
}

async function dragDown(page: Page, axle: string, by: number): Promise<void> {
  const { x, y } = await middleOf(page, axle);
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x, y + by, { steps: 8 });
  await page.mouse.up();
}

test('a round mouth is drawn, dragged and taped as one, a plate with slots as one', async ({ page }) => {
  const { slider, sentence } = await openSheet(page);
  const front = { duct: { mouth_shape: 'round', mouth_width_mm: 100, blank_from: 'top', strip_mm: 25 } };
  await drop(page, {
    brakes: { front, rear: { duct: { blank: 'slots', blank_slots: 3 } } },
    blanking_pct: { front: 25, rear: 60 },
  });
  await expect(sentence).toContainText(/Front 25\s% blanked/);
  await expect(mouth(page, 'front')).toContainText(/100\smm round/);
  // a quarter of a circle is covered at 0.298 of its height
  await expect(mouth(page, 'front')).toContainText(/30\smm blanked, 70 open/);
  await expect(mouth(page, 'front')).toContainText(/1 strip of 25\smm gives 20\s%/);
  await expect(mouth(page, 'rear')).toContainText(/3 slots of \d+\.\d\smm/);
  await expect(mouth(page, 'rear').getByRole('button', { name: /strip/ })).toHaveCount(0);

  await mouth(page, 'front').getByRole('button', { name: 'One strip more, front' }).click();
  await expect(slider('Front blanking')).toHaveValue('50'); // two strips of 25 mm: half a circle
  const before = await middleOf(page, 'front');
  await dragDown(page, 'front', 20);
  const after = await middleOf(page, 'front');
  expect(Number(await slider('Front blanking').inputValue())).toBeGreaterThan(60);
  expect(after.y - before.y).toBeGreaterThan(15);
  expect(after.x).toBeCloseTo(before.x, 0);

  // as open as three slots can be, and no more
  await slider('Rear blanking').press('Home');
  await expect(slider('Rear blanking')).toHaveValue('0');
  await expect(mouth(page, 'rear')).toContainText('no plate');
  await slider('Rear blanking').press('ArrowRight');
  await expect(
    page.getByText(/Expected 0, or \d+ to 100: the least that a blank with these slots covers/),
  ).toBeVisible();
  await expect(slider('Rear blanking')).toHaveValue('0');
  // minus and plus go over what cannot be cut
  await page.getByRole('button', { name: 'More: Rear blanking' }).click();
  await expect(mouth(page, 'rear')).toContainText(/3 slots of/);
});
