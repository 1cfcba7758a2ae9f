import { on } from 'svelte/events';

/** Escape folds an open part away and gives the focus back to its heading, unless a field inside took the key for itself. */
export const foldByEscape = (part: HTMLDetailsElement): (() => void) =>
  on(part, 'keydown', (event) => {
    if (event.key !== 'Escape' || event.defaultPrevented || !part.open) return;
    event.preventDefault();
    part.open = false;
    part.querySelector('summary')?.focus();
  });
