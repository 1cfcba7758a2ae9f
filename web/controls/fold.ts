/** Escape folds an open part away and gives the focus back to its heading, unless a field inside took the key for itself. */
export function foldByEscape(event: KeyboardEvent & { currentTarget: HTMLDetailsElement }): void {
  const part = event.currentTarget;
  if (event.key !== 'Escape' || event.defaultPrevented || !part.open) return;
  event.preventDefault();
  part.open = false;
  part.querySelector('summary')?.focus();
}
