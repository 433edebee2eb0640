import { defineConfig } from '@playwright/test';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../', import.meta.url));

/** End-to-end paths in the app's own window. Each test starts the app on an empty caseload folder of its own. */
export default defineConfig({
  testDir: `${root}tests/window`,
  testMatch: '**/*.test.ts',
  outputDir: `${root}.cache/playwright`,
  fullyParallel: true,
  workers: 2,
  // Limits tell what hangs, not how busy the machine is: the longest path takes 40 s on a quiet one.
  timeout: 180_000,
  expect: { timeout: 60_000 },
  forbidOnly: true,
  globalSetup: `${root}build/playwright-setup.js`,
  retries: 0,
  // Both shells run the same tests; each leaves its own count.
  reporter: [
    ['line'],
    [`${root}build/reporters/window.ts`, { runner: process.env['FAIRHAND_TEST_SHELL'] ? 'electron' : 'window' }],
  ],
});
