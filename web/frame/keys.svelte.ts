/**
 * The shortcuts. A control says its own by `aria-keyshortcuts`; the keys then do to it what a hand would: a range is taken hold
 * of, all else is pressed. So there is no list of them but the one that a person reads (`shortcuts.ts`).
 */
import { prefs } from '../state/prefs.svelte.ts';

/** A single letter or digit as a control says it; nothing where a person has switched these off. */
export const single = (key: string | undefined): string | undefined => (prefs.shortcuts ? key : undefined);

let asked = $state(0);
/** How often the list of the shortcuts was asked for. */
export const listAsked = (): number => asked;

const LIST = '?';
const TYPED_IN =
  'input:not([type=range], [type=radio], [type=checkbox], [type=file]), textarea, [contenteditable]';
/** There a letter chooses, or belongs to what lies over the sheet. */
const OWN_LETTERS = 'select, [popover]';

/** "Control+Shift+Z", "P", "?": as `aria-keyshortcuts` writes them; the key for commands of any keyboard is Control. */
export function shortcutOf(
  pressed: Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'altKey' | 'shiftKey'>,
): string {
  const { key, ctrlKey, metaKey, altKey, shiftKey } = pressed;
  const isCommand = ctrlKey || metaKey;
  const held = [isCommand ? 'Control' : '', altKey ? 'Alt' : '', isCommand && shiftKey ? 'Shift' : ''];
  return [...held, key.length === 1 ? key.toUpperCase() : key].filter(Boolean).join('+');
}

export function onkeydown(event: KeyboardEvent): void {
  const { target } = event;
  if (event.defaultPrevented || !(target instanceof Element) || target.closest(TYPED_IN)) return;
  const shortcut = shortcutOf(event);
  if (!shortcut.includes('Control') && target.closest(OWN_LETTERS)) return;
  const said = [...document.querySelectorAll<HTMLElement>(`[aria-keyshortcuts~="${CSS.escape(shortcut)}"]`)];
  // of two that share a key, the one that is not chosen
  const control = said.find((each) => each.checkVisibility() && !each.matches(':disabled, :checked'));
  if (!control) return;
  event.preventDefault();
  if (shortcut === LIST) asked += 1;
  if (control.matches('[type=range]')) control.focus();
  else control.click();
}
