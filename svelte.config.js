import { vitePreprocess } from '@sveltejs/vite-plugin-svelte';

/** Styles go to files: the content security policy of the page refuses injected ones. */
export default {
  preprocess: vitePreprocess(),
  compilerOptions: { css: 'external', runes: true },
};
