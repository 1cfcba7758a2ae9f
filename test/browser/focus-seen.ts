import type { Page } from '@playwright/test';

/** What is wrong with where the focus is: no ring, out of the window, or under something. Empty where it is seen. */
export function focusTrouble(page: Page): Promise<string> {
  return page.evaluate(() => {
    const at = document.activeElement;
    if (!at || at === document.body) return '';
    const name = `${at.tagName.toLowerCase()} "${at.ariaLabel ?? (at.textContent.trim().slice(0, 40) || at.id)}"`;
    const hasRing = (element: Element): boolean => {
      const { outlineStyle, outlineWidth } = getComputedStyle(element);
      return outlineStyle !== 'none' && parseFloat(outlineWidth) >= 2;
    };
    // of a radio button or a file field it is the label that is drawn
    const drawn = [at.closest('label'), at].find((each) => each && hasRing(each));
    if (!drawn) return `${name} has no ring`;
    const box = drawn.getBoundingClientRect();
    // what is taller than the window is seen from its top on
    const [bottom, right] = [Math.min(box.bottom, Math.max(innerHeight, box.top + 1)), box.right];
    const isIn =
      box.top >= -0.5 && box.left >= -0.5 && bottom <= innerHeight + 0.5 && right <= innerWidth + 0.5;
    if (!isIn) return `${name} is outside of the window: ${JSON.stringify(box)}`;
    if (box.bottom > innerHeight && box.height < innerHeight) return `${name} reaches below the window`;
    const inset = 3;
    const xs = [box.left + inset, (box.left + right) / 2, right - inset];
    const ys = [box.top + inset, (box.top + bottom) / 2, bottom - inset];
    for (const [x, y] of xs.flatMap((x) => ys.map((y): [number, number] => [x, y]))) {
      const top = document.elementFromPoint(x, y);
      if (top && (drawn.contains(top) || top.contains(drawn))) continue;
      return `${name} is under ${top?.tagName ?? 'nothing'} .${top?.className.toString() ?? ''} at ${x} ${y}`;
    }
    return '';
  });
}
