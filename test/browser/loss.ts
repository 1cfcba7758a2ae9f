import type { Page } from '@playwright/test';

/** Words that are cut, that lie on each other, or that reach beyond the side of the page. */
export function lostWords(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const lost: string[] = [];
    const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    const seen: { text: string; of: Element; box: DOMRect }[] = [];
    for (let node = texts.nextNode(); node; node = texts.nextNode()) {
      const of = node.parentElement;
      const text = node.textContent?.trim() ?? '';
      // what a drawing says is placed by the drawing
      if (!of || !text || of.closest('.unseen, svg, option, script, style, [popover]')) continue;
      if (!of.checkVisibility({ opacityProperty: true, visibilityProperty: true })) continue;
      // for the ear alone, in windows that have no room for it
      if (getComputedStyle(of).clipPath === 'inset(50%)') continue;
      const range = document.createRange();
      range.selectNodeContents(node);
      for (const box of range.getClientRects())
        if (box.width > 1) seen.push({ text: text.slice(0, 40), of, box });
    }
    for (const { text, of, box } of seen) {
      for (
        let around: Element | null = of;
        around && around !== document.body;
        around = around.parentElement
      ) {
        const { overflowX, textOverflow } = getComputedStyle(around);
        if (overflowX === 'auto' || overflowX === 'scroll') break;
        // said in full where it is pointed at, or opened
        if (textOverflow === 'ellipsis' && around.closest('[title], summary')) break;
        const edge = around.getBoundingClientRect();
        const isButton = around.matches('button, label, summary, .button');
        const isCut = isButton || (overflowX !== 'visible' && getComputedStyle(around).position !== 'fixed');
        const beyond = Math.max(edge.left - box.left, box.right - edge.right, box.bottom - edge.bottom - 3);
        if (isCut && beyond > 1) lost.push(`cut by ${Math.round(beyond)}: ${text}`);
      }
    }
    const sideways = document.documentElement.scrollWidth - innerWidth;
    if (sideways > 0) lost.push(`the page is ${sideways} wider than the window`);
    for (const field of document.querySelectorAll<HTMLInputElement>('input[type=text]')) {
      if (field.scrollWidth > field.clientWidth + 1) lost.push(`cut in its field: ${field.value}`);
    }
    const isWhole = (of: Element): boolean => getComputedStyle(of).textOverflow !== 'ellipsis';
    const flow = seen.filter(({ of }) => !of.closest('aside') && isWhole(of));
    flow.forEach((a, i) => {
      for (const b of flow.slice(i + 1)) {
        if (a.of.contains(b.of) || b.of.contains(a.of)) continue;
        const across = Math.min(a.box.right, b.box.right) - Math.max(a.box.left, b.box.left);
        const down = Math.min(a.box.bottom, b.box.bottom) - Math.max(a.box.top, b.box.top);
        if (across > 3 && down > 8) lost.push(`one on the other: ${a.text} | ${b.text}`);
      }
    });
    return [...new Set(lost)];
  });
}

/** As a person sets text to be able to read it (WCAG 2.2, 1.4.12). */
export const SPACED =
  '* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important } p { margin-bottom: 2em !important }';
