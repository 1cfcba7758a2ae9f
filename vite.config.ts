import { svelte } from '@sveltejs/vite-plugin-svelte';
import { createHash } from 'node:crypto';
import { fileURLToPath } from 'node:url';
import { build, defineConfig, type LogLevel, type Plugin, type Rolldown } from 'vite';

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

/** A file by its address; one whose name carries no hash of what is in it comes with one. */
function listed(file: Rolldown.OutputAsset | Rolldown.OutputChunk) {
  const content = file.type === 'chunk' ? file.code : file.source;
  const revision = createHash('sha256').update(content).digest('hex').slice(0, 16);
  return { url: file.fileName, revision: file.fileName.startsWith('assets/') ? null : revision };
}

/**
 * Builds the service worker beside the page once it is known what that consists of. A build of its own: it must be one file
 * with a fixed name and share no chunk with the page.
 */
function offline(): Plugin {
  let logLevel: LogLevel = 'info';
  return {
    name: 'offline',
    apply: 'build',
    configResolved: (config) => void (logLevel = config.logLevel ?? logLevel),
    async writeBundle({ dir }, bundle) {
      // browsers that keep a page for later read woff2
      const files = Object.values(bundle).filter(({ fileName }) => !/\.(map|woff)$/.test(fileName));
      await build({
        configFile: false,
        root,
        logLevel,
        define: { FILES: JSON.stringify(files.map(listed)) },
        build: {
          ...(dir === undefined ? {} : { outDir: dir }),
          emptyOutDir: false,
          target: 'es2022',
          rolldownOptions: {
            input: `${root}offline/service-worker.ts`,
            output: { format: 'iife', entryFileNames: 'service-worker.js' },
          },
        },
      });
    },
  };
}

export default defineConfig({
  root,
  base: './',
  plugins: [svelte({ configFile: '../svelte.config.js' }), policyInPage(), earlyInPage(), offline()],
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
