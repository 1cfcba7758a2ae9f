/** What a key is called in running text: its field's label, which begins with a capital on the page. */
import { fieldAt } from './keys.ts';

export function nameOf(key: string): string {
  const label = fieldAt(key)?.label ?? key;
  return label.charAt(0).toLowerCase() + label.slice(1);
}
