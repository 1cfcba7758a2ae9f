import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vitest/config';

/** The Svelte plugin is here for the state classes in `.svelte.ts` files. */
export default defineConfig({
  plugins: [svelte()],
  test: {
    environment: 'node',
    include: ['test/{unit,laws,validation,regression,house}/**/*.test.ts'],
    testTimeout: 30_000,
    hookTimeout: 30_000,
  },
});
