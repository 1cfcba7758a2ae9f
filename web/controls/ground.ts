import { getContext, setContext } from 'svelte';

const KEY = Symbol('ground of refusals');

/** Names what every refusal below a page is about: when it changes, what was refused on it is past. */
export const setGroundOfRefusals = (ground: () => unknown): void => void setContext(KEY, ground);

export const groundOfRefusals = (): (() => unknown) =>
  getContext<(() => unknown) | undefined>(KEY) ?? (() => null);
