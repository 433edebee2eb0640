/** Builds the window, and where it is needed the Electron shell, only when their sources have changed. */
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { during } from './console.js';
import { root } from './install.js';
import { quietly } from './run.js';

function* filesUnder(place) {
  const full = path.join(root, place);
  if (!existsSync(full)) return;
  if (!statSync(full).isDirectory()) {
    yield place;
    return;
  }
  for (const entry of readdirSync(full, { withFileTypes: true })) yield* filesUnder(path.join(place, entry.name));
}

/** Sums up names, sizes and times of the sources: one look at each, no reading. */
function mark(places) {
  const sum = createHash('sha256');
  for (const place of places) {
    for (const file of [...filesUnder(place)].sort()) {
      const { size, mtimeMs } = statSync(path.join(root, file));
      sum.update(`${file} ${size} ${mtimeMs}\n`);
    }
  }
  return sum.digest('hex');
}

/** What a tool said, without the trace through its own inside. */
const untilTrace = (output) => output.split(/\n {4}at /)[0].trim();

async function buildIfChanged(name, product, places, build) {
  const markFile = path.join(root, '.cache', `built-${name}`);
  const now = mark(places);
  if (existsSync(path.join(root, product)) && existsSync(markFile) && readFileSync(markFile, 'utf8') === now) return;
  await build();
  mkdirSync(path.dirname(markFile), { recursive: true });
  writeFileSync(markFile, now);
}

/** dist/renderer: what the window shows, the same for both shells. */
export function buildWindow() {
  const sources = [
    'renderer',
    'db/types',
    'db/rules',
    'electron/contract',
    'build/vite.config.ts',
    'package-lock.json',
  ];
  return buildIfChanged('window', 'dist/renderer/index.html', sources, () =>
    during('Building the window (its sources have changed)', async () => {
      // Into a folder of its own first: a build that is stopped halfway never becomes the window.
      const made = path.join(root, 'dist', `renderer-${process.pid}`);
      const vite = path.join(root, 'node_modules/vite/bin/vite.js');
      const config = path.join(root, 'build/vite.config.ts');
      const args = ['build', '--config', config, '--outDir', made, '--emptyOutDir', '--logLevel', 'warn'];
      const env = { ...process.env, NO_COLOR: '1' };
      const { code, output } = await quietly(process.execPath, [vite, ...args], { cwd: root, env });
      if (code !== 0) throw new Error(`The window could not be built:\n${untilTrace(output)}`);
      rmSync(path.join(root, 'dist/renderer'), { recursive: true, force: true });
      renameSync(made, path.join(root, 'dist/renderer'));
    }),
  );
}

/** dist/app: the rest of the app as plain JavaScript, for Electron, which reads no TypeScript. */
export function buildDesktop() {
  const sources = ['electron', 'db', 'renderer', 'build/launch/desktop.js', 'package-lock.json'];
  return buildIfChanged('desktop', 'dist/app/electron/desktop/start.js', sources, () =>
    during('Building the desktop shell (its sources have changed)', async () => {
      const { compileDesktop } = await import('./desktop.js');
      await compileDesktop(root);
    }),
  );
}

/** dist/demo: the invented caseload. It is made by the same code that keeps a real one. */
export function buildDemo() {
  const logic = ['logic', 'measure', 'statistics'].map((room) => `renderer/${room}`);
  const sources = ['build/demo', 'db', ...logic, 'package-lock.json'];
  if (!existsSync(path.join(root, 'build/demo/make.ts'))) return Promise.resolve();
  return buildIfChanged('demo', 'dist/demo/caseload.db', sources, () =>
    during('Making the demo caseload (its sources have changed)', async () => {
      const made = path.join(root, 'dist', `demo-${process.pid}`);
      const { code, output } = await quietly(process.execPath, [
        '--no-warnings',
        path.join(root, 'build/demo/make.ts'),
        '--out',
        made,
      ]);
      if (code !== 0) throw new Error(`The demo caseload could not be made:\n${untilTrace(output)}`);
      rmSync(path.join(root, 'dist/demo'), { recursive: true, force: true });
      renameSync(made, path.join(root, 'dist/demo'));
    }),
  );
}
