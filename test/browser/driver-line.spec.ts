import { expect, test } from './fixtures.ts';
import { openSheet } from './sheet.ts';

const stints = [
  ['sorrelby-20', /From cold the front takes \d+ corners to warm\./],
  ['restart', /Restart on lap\s14: (front|rear) starts its first hard stop, .*\sK under bite;/],
  ['night-rain', /From cold the (front|rear) /],
  ['club-evening', /Parked, (front|rear) caliper peaks at \d+\s°C in \d+\smin/],
] as const;

test('the third line speaks to the driver and is spoken with the sentence, and nothing below it moves', async ({
  page,
}) => {
  await page.setViewportSize({ width: 1360, height: 800 });
  const { sentence } = await openSheet(page);
  const line = page.locator('.sentence .driver');
  const tops: number[] = [];
  for (const [id, words] of stints) {
    await page.getByRole('combobox', { name: 'Stint' }).selectOption(id);
    await expect(line).toHaveText(words);
    await expect(sentence).toHaveText(words);
    expect((await line.boundingBox())!.height).toBeLessThanOrEqual(24);
    tops.push((await page.locator('.columns').boundingBox())!.y);
  }
  expect(new Set(tops).size).toBe(1);
});

for (const height of [800, 900]) {
  test(`every shipped stint stands in a window of 1360 by ${height} without scrolling, once its span is known`, async ({
    page,
  }) => {
    await page.setViewportSize({ width: 1360, height });
    await openSheet(page);
    const hash = page.locator('.hash');
    let before = '';
    for (const [id] of stints) {
      await page.getByRole('combobox', { name: 'Stint' }).selectOption(id);
      await expect(hash).not.toHaveText(before);
      before = (await hash.textContent()) ?? '';
      await expect(page.locator('.sentence .rest')).toHaveText(/Safe on|Too hot even|No blanking|holds/, {
        timeout: 20_000,
      });
      const overflow = await page.evaluate(() => document.documentElement.scrollHeight - window.innerHeight);
      expect(overflow).toBeLessThanOrEqual(0);
    }
  });
}
