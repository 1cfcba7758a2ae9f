import { expect, test } from '../fixtures.ts';
import { openSheet } from '../sheet.ts';
import { frontInStorage } from '../storage.ts';

test('what is changed is in the browser’s storage within a second, draws under way or not', async ({
  page,
}) => {
  const { field } = await openSheet(page);
  for (const blanking of [62, 44, 57]) {
    await field('Front blanking').fill(String(blanking));
    await field('Front blanking').press('Enter');
    await expect.poll(() => frontInStorage(page), { timeout: 1000, intervals: [50] }).toBe(blanking);
  }
});
