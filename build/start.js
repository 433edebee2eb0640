/**
 * `npm start` and every other verb: installs what is missing, builds what has changed, picks the shell.
 * Plain JavaScript without dependencies: the very first run is on the machine's own Node, before anything is
 * installed. It then runs itself again through npm, which puts the pinned Node first.
 */
import path from 'node:path';
import { say } from './launch/console.js';
import { buildDemo, buildDesktop, buildWindow } from './launch/compile.js';
import { hasDisplay, hiddenDisplay } from './launch/display.js';
import { electronProgram, tryElectronDownload } from './launch/electron-binary.js';
import { findBrowser } from '../electron/browser/find.js';
import { installPackages, installSystemPackages, root } from './launch/install.js';
import { npm, openly } from './launch/run.js';

const at = (...parts) => path.join(root, ...parts);

/** The oldest Node that runs TypeScript as it is and the database's native part (better-sqlite3 13 needs 22). */
const runsEverything = () => {
  const [major, minor] = process.versions.node.split('.').map(Number);
  return major > 22 || (major === 22 && minor >= 18);
};

/** Runs the same verb again through npm, on the pinned Node. */
function again(verb, args) {
  const [program, npmArgs] = npm(['run', '--silent', verb, '--', ...args]);
  return openly(program, npmArgs, { env: { ...process.env, FAIRHAND_INSTALLED: '1' } });
}

const node = (file, args, env = process.env) => openly(process.execPath, ['--no-warnings', at(file), ...args], { env });

async function browserOrInstall() {
  if (findBrowser()) return true;
  await installSystemPackages(['chromium', 'fonts-liberation', 'fonts-dejavu-core'], 'to open the window');
  return findBrowser() !== null;
}

async function start(args) {
  await tryElectronDownload();
  const electron = electronProgram();
  await Promise.all([buildWindow(), buildDemo()]);
  if (electron) await buildDesktop();
  else if (!(await browserOrInstall())) {
    say('No Chromium, Chrome or Edge was found to open the window with. Install one of them and start again.');
    return 2;
  }
  if (process.getuid?.() === 0) {
    say(
      'Started as root: the browser’s operating-system sandbox is off. Start Fairhand as an ordinary user for daily work.',
    );
  }
  if (!hasDisplay()) return withoutDisplay(args);
  if (!electron) return node('electron/browser/main.ts', args);
  const asRoot = process.getuid?.() === 0 ? ['--no-sandbox'] : [];
  return openly(electron, [...asRoot, at('dist/app/electron/desktop/start.js'), ...args]);
}

/** Nobody can see a window here: the demo visit runs in a hidden one and leaves its pages and pictures in out/. */
async function withoutDisplay(args) {
  say(
    'There is no display here, so nobody could see a window. Fairhand runs its demo visit in a hidden window instead',
  );
  say('and leaves the summary, program and practice PDFs and a picture of every screen in out/.');
  if (!(await browserOrInstall())) {
    say('No Chromium, Chrome or Edge was found for the hidden window. Install one of them and start again.');
    return 2;
  }
  const display = await hiddenDisplay();
  try {
    return await node('electron/browser/demo-run.ts', ['--out', at('out'), ...args], display?.env);
  } finally {
    display?.stop();
  }
}

async function withWindow(file, args) {
  const needsDemo = args[0] === 'demo' || file === 'build/bench/bench.ts' || file === 'build/torture.ts';
  await Promise.all([buildWindow(), needsDemo ? buildDemo() : undefined]);
  await browserOrInstall();
  const display = hasDisplay() ? null : await hiddenDisplay();
  try {
    return await node(file, args, display?.env);
  } finally {
    display?.stop();
  }
}

async function command(args) {
  // Only these two print, and printing needs the window; everything else starts at once.
  return args[0] === 'summary' || args[0] === 'demo'
    ? withWindow('electron/command-line.ts', args)
    : node('electron/command-line.ts', args);
}

const verbs = {
  start,
  fairhand: command,
  test: (args) => node('build/test.ts', args),
  'test:electron': (args) => node('build/test-electron.ts', args),
  package: (args) => node('build/package/package.ts', args),
  bench: (args) => withWindow('build/bench/bench.ts', args),
  cases: (args) => node('build/bench/program-cases.ts', args),
  mutate: (args) => node('build/bench/mutate.ts', args),
  verdicts: (args) => node('build/bench/verdicts.ts', args),
  accuracy: (args) => node('build/bench/accuracy.ts', args),
  torture: (args) => withWindow('build/torture.ts', args),
};

async function main([verb = 'start', ...args]) {
  // `npm start -- --data X` arrives as `start.js --data X`: the first word is then not a verb.
  const known = Object.hasOwn(verbs, verb);
  const [name, rest] = known ? [verb, args] : ['start', [verb, ...args]];
  await installPackages();
  if (!runsEverything() && !process.env.FAIRHAND_INSTALLED) return again(name, rest);
  if (!runsEverything()) {
    say(`Fairhand needs Node 22.18 or newer; this is ${process.versions.node}. Install a newer Node and start again.`);
    return 2;
  }
  return verbs[name](rest);
}

main(process.argv.slice(2)).then(
  (code) => (process.exitCode = code),
  (error) => {
    say(error.message);
    process.exitCode = 1;
  },
);
