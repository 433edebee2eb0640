import { svelte } from '@sveltejs/vite-plugin-svelte';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const root = fileURLToPath(new URL('../', import.meta.url));

/** Unit tests: everything under tests/ except what needs the real window (Playwright runs that). */
export default defineConfig({
  root,
  cacheDir: `${root}.cache/vitest`,
  plugins: [svelte({ configFile: false })],
  test: {
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/window/**', 'tests/electron/window/**', '**/node_modules/**'],
    environment: 'node',
    // SQLite's native part and worker threads are safest in processes of their own.
    pool: 'forks',
    // The longest test takes 25 s on a quiet machine: a limit tells what hangs, not how busy the machine is.
    testTimeout: 120_000,
    hookTimeout: 120_000,
  },
});
