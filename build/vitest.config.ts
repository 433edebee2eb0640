import { svelte } from '@sveltejs/vite-plugin-svelte';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

const root = fileURLToPath(new URL('../', import.meta.url));

const pure = ['tests/{change,logic,statistics}/**/*.test.ts'];
const inTheWindow = ['tests/window/**', 'tests/electron/window/**'];

/** What takes from half a minute to three, longest first. */
const long = [
  'db/torture/',
  'measure/snapshot',
  'measure/pages/',
  'build/package',
  'outside/engine',
  'electron/contract',
];
/** Long files start first, so that no worker is left with one at the end: a fresh machine has no times of earlier runs. */
class LongFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const place = ({ moduleId }: TestSpecification): number => {
      const at = long.findIndex((part) => moduleId.includes(`/tests/${part}`));
      return at < 0 ? long.length : at;
    };
    return (await super.sort(files)).toSorted((a, b) => place(a) - place(b));
  }
}

/** Unit tests: everything under tests/ except what needs the real window (Playwright runs that). */
export default defineConfig({
  root,
  cacheDir: `${root}.cache/vitest`,
  plugins: [svelte({ configFile: false })],
  test: {
    environment: 'node',
    // SQLite's native part and worker threads are safest in processes of their own.
    pool: 'forks',
    sequence: { sequencer: LongFirst },
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
