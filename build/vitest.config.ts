import { svelte } from '@sveltejs/vite-plugin-svelte';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const root = fileURLToPath(new URL('../', import.meta.url));

const pure = ['tests/{change,logic,statistics}/**/*.test.ts'];
const inTheWindow = ['tests/window/**', 'tests/electron/window/**'];

/** Unit tests: everything under tests/ except what needs the real window (Playwright runs that). */
export default defineConfig({
  root,
  cacheDir: `${root}.cache/vitest`,
  plugins: [svelte({ configFile: false })],
  test: {
    environment: 'node',
    // SQLite's native part and worker threads are safest in processes of their own.
    pool: 'forks',
    // The test machine has two cores; one would stand still.
    maxWorkers: '100%',
    // The longest test takes 39 s beside another one: a limit tells what hangs, not how busy the machine is.
    testTimeout: 180_000,
    hookTimeout: 120_000,
    projects: [
      {
        extends: true,
        // Pure functions of plain data keep no state: a process loads them once for all its test files.
        test: { name: 'pure', include: pure, isolate: false },
      },
      {
        extends: true,
        test: {
          name: 'shell',
          include: ['tests/**/*.test.ts'],
          exclude: [...pure, ...inTheWindow, '**/node_modules/**'],
        },
      },
    ],
  },
});
