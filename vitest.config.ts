import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vitest/config';

const patient = {
  environment: 'node',
  testTimeout: 30_000,
  hookTimeout: 30_000,
  maxWorkers: '100%',
} as const;
const ofPage = ['test/unit/{web,charts}/**/*.test.ts'];

export default defineConfig({
  test: {
    projects: [
      {
        test: {
          ...patient,
          name: 'engine',
          include: ['test/{unit,laws,validation,regression,house}/**/*.test.ts'],
          exclude: ofPage,
          // as Node loads it: vitest's own loader reads every import through an object, which makes hot loops three times slower
          execArgv: ['--import', 'tsx'],
          experimental: { viteModuleRunner: false, nodeLoader: false },
          // a process for each of some 130 files costs more than the tests in them; no file leaves anything behind in a module
          isolate: false,
        },
      },
      // the Svelte plugin is here for the state classes in `.svelte.ts` files
      { plugins: [svelte()], test: { ...patient, name: 'page', include: ofPage } },
    ],
  },
});
