/** `npm run test:electron`: the same end-to-end tests in Electron's own window, where its program is there. */
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { buildDemo, buildDesktop, buildWindow } from './launch/compile.js';
import { hasDisplay, hiddenDisplay } from './launch/display.js';
import { electronProgram, tryElectronDownload } from './launch/electron-binary.js';
import { emptyTally, forgetTally, lastLine, readTally, succeeded } from './reporters/tally.ts';
import { openly } from './launch/run.js';

const root = fileURLToPath(new URL('../', import.meta.url));
const print = (line: string) => void process.stdout.write(`${line}\n`);

async function main(args: string[]): Promise<number> {
  await tryElectronDownload();
  const program = electronProgram();
  if (!program) {
    const reason = 'Electron’s program is not on this machine and could not be downloaded';
    print(`Skipped:\n  end-to-end tests in Electron: ${reason}\n`);
    print(lastLine({ ...emptyTally(), skipped: [{ name: 'end-to-end tests in Electron', reason }] }));
    return 0;
  }
  await Promise.all([buildWindow(), buildDemo()]);
  await buildDesktop();
  forgetTally('electron');
  const display = hasDisplay() ? null : await hiddenDisplay();
  try {
    await openly(
      process.execPath,
      [path.join(root, 'node_modules/@playwright/test/cli.js'), 'test', '-c', 'build/playwright.config.ts', ...args],
      { cwd: root, env: { ...process.env, ...display?.env, FAIRHAND_TEST_SHELL: program } },
    );
  } finally {
    display?.stop();
  }
  const tally = readTally('electron');
  for (const { name, reason } of tally.skipped) print(`  skipped ${name}: ${reason}`);
  print(`\n${lastLine(tally)}`);
  return succeeded(tally) ? 0 : 1;
}

process.exitCode = await main(process.argv.slice(2));
