import { expect, type Locator, type Page } from '@playwright/test';

/** Moves the focus to an element as a person without a mouse would: forward, or back. */
export async function tabTo(page: Page, target: Locator, key: 'Tab' | 'Shift+Tab' = 'Tab'): Promise<void> {
  const most = 150;
  for (let i = 0; i < most; i++) {
    await page.keyboard.press(key);
    if (await target.evaluate((element) => element === document.activeElement)) return;
  }
  await expect(target, `reached by ${key}`).toBeFocused();
}

/** Picks an option of the native select that has the focus by typing how it begins. */
export async function typeChoice(page: Page, select: Locator, text: string): Promise<void> {
  await expect(select).toBeFocused();
  await page.keyboard.type(text);
  await expect(select.locator('option:checked')).toHaveText(text);
}

/** Opens a file with the keyboard alone, from anywhere on the sheet. */
export async function openByKeys(page: Page, name: string, content: string): Promise<void> {
  const opener = page.getByLabel('Open a speed trace');
  const chooser = page.waitForEvent('filechooser'); // listens before the key, or the key comes first
  await tabTo(page, opener);
  await page.keyboard.press('Enter');
  await (await chooser).setFiles({ name, mimeType: 'text/csv', buffer: Buffer.from(content) });
}
