import { expect, type Locator, type Page } from '@playwright/test';

/** The page as a test uses it. */
export interface Sheet {
  sentence: Locator;
  slider(name: string): Locator;
  field(name: string): Locator;
  cursor(): Promise<number>;
}

export async function openSheet(page: Page): Promise<Sheet> {
  await page.goto('/');
  const sentence = page.locator('.sentence').getByRole('status');
  await expect(sentence).toContainText(/alibrated/);
  // the levers come after the first stint
  await page
    .getByRole('slider', { name: /^(Front|Rear)( left)? blanking$/ })
    .first()
    .waitFor({ state: 'attached' });
  return {
    sentence,
    slider: (name) => page.getByRole('slider', { name, exact: true }),
    field: (name) => page.getByRole('spinbutton', { name: `${name}, typed`, exact: true }),
    cursor: async () =>
      Number(await page.getByRole('slider', { name: 'Position in the stint' }).inputValue()),
  };
}

/** Drags a native range by its thumb with the mouse from where it is to a share of its track. */
export async function dragTo(page: Page, slider: Locator, share: number): Promise<void> {
  const box = (await slider.boundingBox())!;
  const thumb = 16;
  const at = (part: number): number => box.x + thumb / 2 + part * (box.width - thumb);
  const [min, max, value] = await slider.evaluate((input: HTMLInputElement) =>
    [input.min, input.max, input.value].map(Number),
  );
  const y = box.y + box.height / 2;
  await page.mouse.move(at((value! - min!) / (max! - min!)), y);
  await page.mouse.down();
  await page.mouse.move(at(share), y, { steps: 12 });
  await page.mouse.up();
}
