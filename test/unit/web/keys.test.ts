import { describe, expect, it } from 'vitest';
import { shortcutOf } from '../../../web/frame/keys.svelte.ts';
import { COMMANDS, ON_DRAWINGS, ON_MAP, SINGLE } from '../../../web/frame/shortcuts.ts';

const none = { ctrlKey: false, metaKey: false, altKey: false, shiftKey: false };

describe('a shortcut', () => {
  it('is written as controls say it, whichever case was typed', () => {
    expect(shortcutOf({ ...none, key: 'p' })).toBe('P');
    expect(shortcutOf({ ...none, key: 'P', shiftKey: true })).toBe('P');
    expect(shortcutOf({ ...none, key: '?', shiftKey: true })).toBe('?');
    expect(shortcutOf({ ...none, key: 'p', altKey: true })).toBe('Alt+P');
  });

  it('is a command by the key that any keyboard has for commands', () => {
    expect(shortcutOf({ ...none, key: 'z', ctrlKey: true })).toBe('Control+Z');
    expect(shortcutOf({ ...none, key: 'Z', metaKey: true, shiftKey: true })).toBe('Control+Shift+Z');
  });
});

describe('the list of shortcuts', () => {
  it('names no key twice for one place', () => {
    for (const there of [ON_DRAWINGS, ON_MAP]) {
      const keys = [...SINGLE, ...COMMANDS, ...there].flatMap((each) => each.keys);
      expect(new Set(keys).size).toBe(keys.length);
    }
  });
});
