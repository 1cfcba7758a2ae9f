/** What opens a sheet's own file that was dropped, loaded with the first one. */
export { isSheetFile } from '../state/sheet-file.ts';
export { actsOn } from '../state/sheet-acts.svelte.ts';
