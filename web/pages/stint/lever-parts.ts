/** What the levers load when it is opened. */
export const tapeFields = () => import('./TapeFields.svelte');
export const windowFields = () => import('./WindowFields.svelte');
