import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig, type Plugin } from 'vite';

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

export default defineConfig({
  root: 'web',
  base: './',
  plugins: [svelte({ configFile: '../svelte.config.js' }), policyInPage()],
  worker: { format: 'es' },
  build: {
    outDir: '../dist',
    emptyOutDir: true,
    target: 'es2022',
    assetsInlineLimit: 0, // a font or picture inlined as data: would be refused by the policy
  },
  preview: { host: 'localhost', headers: { 'Content-Security-Policy': policy } },
});
