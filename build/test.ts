/**
 * `npm test`: installs what the tests need, runs every check and every test, and ends with one line that says how
 * it went. Type check, lint, component check and import walls count as one test each.
 */
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { electronProgram } from './launch/electron-binary.js';
import { hasDisplay, hiddenDisplay } from './launch/display.js';
import { findBrowser } from '../electron/browser/find.js';
import { buildDemo, buildWindow } from './launch/compile.js';
import { canInstallSystemPackages, installSystemPackages } from './launch/install.js';
import { addTallies, emptyTally, forgetTally, lastLine, readTally, succeeded } from './reporters/tally.ts';
import type { Tally } from './reporters/tally.ts';
import { openly, quietly } from './launch/run.js';
import { during } from './launch/console.js';

const root = fileURLToPath(new URL('../', import.meta.url));
const bin = (tool: string, entry: string) => path.join(root, 'node_modules', tool, entry);
const print = (line: string) => void process.stdout.write(`${line}\n`);

/** Runs a tool of node_modules on this same Node, from the repository's root. */
const tool = (entry: string, args: string[], env: NodeJS.ProcessEnv = process.env) =>
  openly(process.execPath, [entry, ...args], { cwd: root, env });

/** A check that says nothing while all is well; what it says is printed when it ends. */
async function check(name: string, entry: string, args: string[]): Promise<Tally> {
  const { code, output } = await quietly(process.execPath, [entry, ...args], { cwd: root });
  print(`\n── ${name}`);
  if (output.trim()) print(output.trimEnd());
  return code === 0 ? { ...emptyTally(), passed: 1 } : { ...emptyTally(), failed: [name] };
}

/** A build that fails is one failure; the tests then still tell what else is wrong. */
async function build(): Promise<Tally> {
  try {
    await buildWindow();
    await buildDemo();
    return emptyTally();
  } catch (error) {
    print(String(error instanceof Error ? error.message : error));
    return { ...emptyTally(), failed: ['build'] };
  }
}

/** Two at a time: each check uses one core only. */
async function checks(): Promise<Tally> {
  const types = async (): Promise<Tally[]> => [
    await check('types (tsc)', bin('typescript', 'bin/tsc'), ['-p', 'tsconfig.json']),
    await check('components (svelte-check)', bin('svelte-check', 'bin/svelte-check'), [
      ...['--tsconfig', './tsconfig.json', '--fail-on-warnings', '--output', 'human'],
    ]),
  ];
  const style = async (): Promise<Tally[]> => [
    await check('lint (eslint)', bin('eslint', 'bin/eslint.js'), ['-c', 'build/eslint.config.js', '.']),
    await check('import walls (dependency-cruiser)', bin('dependency-cruiser', 'bin/dependency-cruise.mjs'), [
      ...['--config', 'build/import-walls.cjs', 'electron', 'db', 'renderer'],
    ]),
  ];
  return addTallies(
    (await during('\n── types, components, lint, import walls', () => Promise.all([types(), style()]))).flat(),
  );
}

async function unitTests(): Promise<Tally> {
  print('\n── unit tests (vitest)');
  forgetTally('unit');
  const code = await tool(bin('vitest', 'vitest.mjs'), [
    'run',
    '--config',
    'build/vitest.config.ts',
    '--reporter=dot',
    '--reporter=./build/reporters/unit.ts',
  ]);
  return crashIsFailure(readTally('unit'), code, 'unit tests');
}

async function windowTests(): Promise<Tally> {
  print('\n── end-to-end tests in the real window (playwright)');
  if (!findBrowser()) return skip('end-to-end tests', 'no Chromium, Chrome or Edge is installed');
  const display = hasDisplay() ? null : await hiddenDisplay();
  if (!hasDisplay() && !display) return skip('end-to-end tests', 'there is no display and no Xvfb');
  forgetTally('window');
  try {
    const code = await tool(bin('@playwright/test', 'cli.js'), ['test', '-c', 'build/playwright.config.ts'], {
      ...process.env,
      ...display?.env,
    });
    return crashIsFailure(readTally('window'), code, 'end-to-end tests');
  } finally {
    display?.stop();
  }
}

function desktopTests(): Tally {
  return electronProgram()
    ? skip('end-to-end tests in Electron', 'run them with `npm run test:electron`')
    : skip('end-to-end tests in Electron', 'Electron’s program is not on this machine');
}

const skip = (name: string, reason: string): Tally => ({ ...emptyTally(), skipped: [{ name, reason }] });

/** A runner that ends badly without naming a failure (a crash after its last test) is a failure all the same. */
function crashIsFailure(tally: Tally, code: number, name: string): Tally {
  if (code === 0 || tally.failed.length > 0) return tally;
  return { ...tally, failed: [`${name} ended with code ${code}`] };
}

/** What windows, PDFs and the comparison with OpenCV need of the system. */
const NEEDED = ['chromium', 'xvfb', 'poppler-utils', 'fonts-liberation', 'fonts-dejavu-core'];
const COMPARED = ['python3-opencv', 'python3-skimage', 'opencv-doc'];

async function install(): Promise<void> {
  if (!canInstallSystemPackages()) return;
  await installSystemPackages([...NEEDED, ...COMPARED], 'for windows, PDFs and the comparison with OpenCV');
}

async function main(): Promise<void> {
  await install();
  const all = addTallies([await build(), await checks(), await unitTests(), await windowTests(), desktopTests()]);
  if (all.skipped.length > 0) print('\nSkipped:');
  for (const { name, reason } of all.skipped) print(`  ${name}: ${reason}`);
  if (all.failed.length > 0) print('\nFailed:');
  for (const name of all.failed) print(`  ${name}`);
  print(`\n${lastLine(all)}`);
  process.exitCode = succeeded(all) ? 0 : 1;
}

await main();
