import { svelte } from '@sveltejs/vite-plugin-svelte';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';

const root = fileURLToPath(new URL('../', import.meta.url));

/**
 * The window's files: renderer/ becomes dist/renderer/. Paths start with '/', because both shells serve the
 * folder as the root of their own origin. Nothing is inlined: a strict content security policy allows files of
 * the same origin only.
 */
export default defineConfig({
  root: `${root}renderer`,
  base: '/',
  publicDir: false,
  cacheDir: `${root}.cache/vite`,
  plugins: [svelte({ configFile: false })],
  build: {
    outDir: `${root}dist/renderer`,
    emptyOutDir: true,
    target: 'es2024',
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    sourcemap: false,
    reportCompressedSize: false,
    chunkSizeWarningLimit: 4000,
  },
  worker: { format: 'es' },
});
