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

/** Scripts beside the page's own, each as soon as it is there: the look, without which nothing is drawn, and the first stint, which does not wait for the page. */
const early: Record<string, Record<string, string>> = {
  'first-look': { blocking: 'render' },
  'first-run': {},
};

function earlyInPage(): Plugin {
  return {
    name: 'early-in-page',
    apply: 'build',
    transformIndexHtml: (_, { bundle = {} }) =>
      Object.entries(early).map(([name, more]) => {
        const script = Object.values(bundle).find((part) => part.type === 'chunk' && part.name === name);
        if (!script) throw new Error(`${name}: no such script in the bundle`);
        const attrs = {
          type: 'module',
          async: true,
          crossorigin: true,
          src: `./${script.fileName}`,
          ...more,
        };
        return { tag: 'script', attrs, injectTo: 'head' };
      }),
  };
}

export default defineConfig({
  root,
  base: './',
  plugins: [svelte({ configFile: '../svelte.config.js' }), policyInPage(), earlyInPage()],
  worker: { format: 'es' },
  build: {
    outDir: '../dist',
    emptyOutDir: true,
    target: 'es2022',
    rolldownOptions: {
      input: {
        page: `${root}index.html`,
        ...Object.fromEntries(Object.keys(early).map((name) => [name, `${root}state/${name}.ts`])),
      },
    },
    assetsInlineLimit: 0, // a font or picture inlined as data: would be refused by the policy
  },
  preview: { host: 'localhost', headers: { 'Content-Security-Policy': policy } },
});
