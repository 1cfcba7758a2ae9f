import type { Locator, Page } from '@playwright/test';
import { withoutFileAccess } from './files.ts';
import { expect, test } from './fixtures.ts';
import { focusTrouble } from './focus-seen.ts';
import { arrive, wholeJob, type Hand, type Window } from './job.ts';

const FINGER_PX = 44;

/** Nothing but keys, and at every stop on the way the focus must be seen. */
class Keys implements Hand {
  readonly troubles = new Set<string>();
  constructor(readonly page: Page) {}

  async press(key: string, times = 1): Promise<void> {
    for (let i = 0; i < times; i++) await this.page.keyboard.press(key);
  }
  async stop(key: 'Tab' | 'Shift+Tab'): Promise<void> {
    await this.press(key);
    const trouble = await focusTrouble(this.page);
    if (trouble) this.troubles.add(trouble);
  }
  async tabTo(target: Locator, key: 'Tab' | 'Shift+Tab' = 'Tab'): Promise<void> {
    const most = 120;
    for (let i = 0; i < most; i++) {
      await this.stop(key);
      if (await target.evaluate((element) => element === document.activeElement)) return;
    }
    await expect(target, `reached by ${key}`).toBeFocused();
  }

  async chooseCircuit(name: string): Promise<void> {
    await this.tabTo(this.page.getByLabel('Circuit', { exact: true }));
    await this.page.keyboard.type(name.slice(0, 3));
  }
  async setWindow(from: Window, to: Window): Promise<void> {
    const slider = (name: string): Locator => this.page.getByRole('slider', { name, exact: true });
    await this.tabTo(this.page.locator('summary').filter({ hasText: 'Window, front' }));
    await this.press('Enter');
    await expect(slider('Bite, front')).toBeVisible();
    await this.tabTo(slider('Bite, front'));
    await this.press('ArrowLeft', (from.bite_C - to.bite_C) / 5);
    await this.tabTo(this.page.getByRole('spinbutton', { name: 'Face peak, front, typed', exact: true }));
    await this.page.keyboard.type(String(to.facePeak_C));
    await this.press('Enter');
    await this.press('Escape');
    await expect(this.page.locator('summary').filter({ hasText: 'Window, front' })).toBeFocused();
  }
  async blank(from_pct: number, to_pct: number): Promise<void> {
    const front = this.page.getByRole('slider', { name: 'Front blanking', exact: true });
    if (!(await front.evaluate((range) => range === document.activeElement))) await this.press('f');
    await expect(front).toBeFocused();
    expect(await focusTrouble(this.page)).toBe('');
    await this.press(to_pct < from_pct ? 'ArrowLeft' : 'ArrowRight', Math.abs(to_pct - from_pct));
  }
  async pin(): Promise<void> {
    await this.tabTo(this.page.getByRole('button', { name: 'Pin this run' }), 'Shift+Tab');
    await this.press('Space');
  }
  async save(): Promise<void> {
    await this.tabTo(this.page.getByRole('button', { name: 'Sheet', exact: true }), 'Shift+Tab');
    await this.press('Enter');
    const save = this.page.getByRole('button', { name: 'Save', exact: true });
    await expect(save).toBeVisible();
    await this.tabTo(save);
    await this.press('Enter');
  }
}

for (const [width, height, what] of [
  [1360, 800, 'wide'],
  [640, 400, 'at 200 %'],
] as const) {
  test.describe(what, () => {
    test.use({ viewport: { width, height }, deviceScaleFactor: what === 'wide' ? 1 : 2 });

    test(`${what}: a whole job is done by keys alone, and the focus is seen at every stop`, async ({
      page,
    }) => {
      await withoutFileAccess(page);
      await arrive(page);
      const keys = new Keys(page);
      await wholeJob(page, keys);
      expect([...keys.troubles]).toEqual([]);
    });
  });
}

/** Nothing but taps: no key, no drag; and whatever is tapped must be as large as a finger. */
class Taps implements Hand {
  readonly small = new Set<string>();
  constructor(readonly page: Page) {}

  async tap(target: Locator, times = 1): Promise<void> {
    const { width, height } = (await target.boundingBox())!;
    if (Math.min(width, height) < FINGER_PX - 0.5) this.small.add(`${String(target)}: ${width} x ${height}`);
    for (let i = 0; i < times; i++) await target.tap();
  }
  button(name: string): Locator {
    return this.page.getByRole('button', { name, exact: true });
  }

  async chooseCircuit(name: string): Promise<void> {
    const circuits = this.page.getByLabel('Circuit', { exact: true });
    await this.tap(circuits);
    // the list that opens is the system's own, and out of reach of a test
    await circuits.selectOption(name);
  }
  async setWindow(from: Window, to: Window): Promise<void> {
    await this.tap(this.page.locator('summary').filter({ hasText: 'Window, front' }));
    await this.tap(this.button('Less: Bite, front'), (from.bite_C - to.bite_C) / 5);
    await this.tap(this.button('More: Face peak, front'), (to.facePeak_C - from.facePeak_C) / 5);
  }
  async blank(from_pct: number, to_pct: number): Promise<void> {
    const [atHand, less] = [this.button('5 percent less, front'), this.button('Less: Front blanking')];
    const isAtHand = from_pct - to_pct === 5 && (await atHand.isVisible());
    if (isAtHand) await this.tap(atHand);
    else await this.tap(less, from_pct - to_pct);
  }
  async pin(): Promise<void> {
    await this.tap(this.button('Pin this run'));
  }
  async save(): Promise<void> {
    await this.tap(this.button('Sheet'));
    await this.tap(this.button('Save'));
  }
}

for (const [width, height] of [
  [1024, 768],
  [390, 844],
] as const) {
  test.describe(`a finger at ${width} pixels`, () => {
    test.use({ viewport: { width, height }, hasTouch: true, isMobile: true });

    test(`at ${width} pixels a whole job is done by taps alone, each on something as large as a finger`, async ({
      page,
    }) => {
      await withoutFileAccess(page);
      await arrive(page);
      const taps = new Taps(page);
      await wholeJob(page, taps);
      await taps.tap(page.getByRole('button', { name: /^Unpin pinned/ }));
      expect([...taps.small]).toEqual([]);
    });
  });
}
