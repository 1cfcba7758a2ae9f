import { createSubscriber } from 'svelte/reactivity';
import { devicePixelRatio } from 'svelte/reactivity/window';
import { readTheme, type ChartTheme } from './theme.ts';

/** Wakes when the page changes its palette: an attribute of the root, the system's scheme, forced colours. */
const paletteMayChange = createSubscriber((update) => {
  const root = new MutationObserver(update);
  root.observe(document.documentElement, { attributes: true });
  const queries = ['(prefers-color-scheme: dark)', '(forced-colors: active)', 'print'].map((query) =>
    matchMedia(query),
  );
  for (const query of queries) query.addEventListener('change', update);
  return () => {
    root.disconnect();
    for (const query of queries) query.removeEventListener('change', update);
  };
});

/** The palette at an element, read once and again when it may have changed. */
export function themeAt(element: () => Element | undefined): { readonly current: ChartTheme | null } {
  const theme = $derived.by(() => {
    paletteMayChange();
    const at = element();
    return at ? readTheme(at) : null;
  });
  return {
    get current() {
      return theme;
    },
  };
}

/** A cleared context in CSS pixels. The canvas is resized only when its size or the screen's density changed. */
export function surface(canvas: HTMLCanvasElement, width: number, height: number): CanvasRenderingContext2D {
  const density = devicePixelRatio.current ?? 1;
  const [columns, rows] = [Math.round(width * density), Math.round(height * density)];
  if (canvas.width !== columns || canvas.height !== rows) {
    canvas.width = columns;
    canvas.height = rows;
  }
  const context = canvas.getContext('2d');
  if (!context) throw new Error('canvas: no 2d context');
  context.setTransform(columns / width, 0, 0, rows / height, 0, 0);
  context.clearRect(0, 0, width, height);
  return context;
}
