import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { nightHeat, paperHeat } from '../../../web/display/heat-scale.ts';
import { PAGE_COLOURS, shownTheme } from '../../../web/state/look.ts';

const css = readFileSync('web/theme.css', 'utf8');
type Palette = Record<string, string>;

/** The custom properties of one rule of the theme's file; what a theme leaves out is Paper's. */
function palette(selector: string): Palette {
  const rule = css.slice(css.indexOf(`${selector} {`)).split('}')[0] ?? '';
  return Object.fromEntries(
    [...rule.matchAll(/--([\w-]+): ([^;]+);/g)].map(([, name, value]) => [name, value]),
  );
}

const paper = palette(':root');
const themes = {
  paper,
  night: { ...paper, ...palette(":root[data-theme='night']") },
  sun: { ...paper, ...palette(":root[data-theme='sun']") },
};

/** Contrast of two colours. Source: WCAG 2.2, relative luminance and contrast ratio. */
function contrast(one: string, other: string): number {
  const [dark, bright] = [one, other].map(luminance).sort((a, b) => a - b) as [number, number];
  return (bright + 0.05) / (dark + 0.05);
}

function luminance(hex: string): number {
  const bits = parseInt(hex.slice(1), 16);
  const [r, g, b] = [bits >> 16, (bits >> 8) & 255, bits & 255].map((byte) => {
    const c = byte / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

describe('the look of the sheet', () => {
  it('follows the system unless a theme is chosen that this version knows', () => {
    expect(shownTheme('system', true)).toBe('night');
    expect(shownTheme('system', false)).toBe('paper');
    expect(shownTheme('sun', true)).toBe('sun');
    expect(shownTheme('dusk', true)).toBe('night');
  });

  it.each(Object.entries(themes))(
    '%s: words stand out from page and sheet, edges of controls too',
    (_, of) => {
      for (const ground of ['page', 'sheet']) {
        for (const name of ['ink', 'label', 'pinned', 'move', 'hot'])
          expect(contrast(of[name]!, of[ground]!), `${name} on ${ground}`).toBeGreaterThanOrEqual(4.5);
        expect(contrast(of['rule']!, of[ground]!), `rule on ${ground}`).toBeGreaterThanOrEqual(3);
      }
    },
  );

  it('colours the bars of the browser as the page', () => {
    for (const name of ['paper', 'night', 'sun'] as const)
      expect(PAGE_COLOURS[name]).toBe(themes[name]['page']);
  });

  it('takes the heat scale of day or night', () => {
    const stops = (of: Palette): string[] => [1, 2, 3, 4, 5, 6, 7].map((stop) => of[`heat-${String(stop)}`]!);
    expect(stops(themes.paper)).toEqual(paperHeat.map((stop) => stop.toLowerCase()));
    expect(stops(themes.sun)).toEqual(stops(themes.paper));
    expect(stops(themes.night)).toEqual(nightHeat.map((stop) => stop.toLowerCase()));
  });
});
