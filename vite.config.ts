import { svelte } from '@sveltejs/vite-plugin-svelte';
import { fileURLToPath } from 'node:url';
import { defineConfig, type Plugin } from 'vite';

const root = fileURLToPath(new URL('web/', import.meta.url));

const policy =
  "default-src 'self'; worker-src 'self'; style-src 'self'; img-src 'self' data: blob:; object-src 'none'";

/** Writes the content security policy into the built page, wherever it is then served from. */
function policyInPage(): Plugin {
  return {
    name: 'policy-in-page',
    apply: 'build',
    transformIndexHtml: () => [
      {
        tag: 'meta',
        attrs: { 'http-equiv': 'Content-Security-Policy', content: policy },
        injectTo: 'head-prepend',
      },
    ],
  };
}

const firstRun = 'first-run';

/** Loads the script that starts the first stint beside the page's own, so that the calculation does not wait for the page. */
function firstRunInPage(): Plugin {
  return {
    name: 'first-run-in-page',
    apply: 'build',
    transformIndexHtml: (_, { bundle = {} }) => {
      const script = Object.values(bundle).find((part) => part.type === 'chunk' && part.name === firstRun);
      if (!script) throw new Error(`${firstRun}: no such script in the bundle`);
      const attrs = { type: 'module', async: true, crossorigin: true, src: `./${script.fileName}` };
      return [{ tag: 'script', attrs, injectTo: 'head' }];
    },
  };
}

export default defineConfig({
  root,
  base: './',
  plugins: [svelte({ configFile: '../svelte.config.js' }), policyInPage(), firstRunInPage()],
  worker: { format: 'es' },
  build: {
    outDir: '../dist',
    emptyOutDir: true,
    target: 'es2022',
    rolldownOptions: {
      input: { page: `${root}index.html`, [firstRun]: `${root}state/first-run.ts` },
    },
    assetsInlineLimit: 0, // a font or picture inlined as data: would be refused by the policy
  },
  preview: { host: 'localhost', headers: { 'Content-Security-Policy': policy } },
});
