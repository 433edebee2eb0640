/** The window built so that each element knows its line in the source: Svelte's development build says it. */
import { spawnSync } from 'node:child_process';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../../../', import.meta.url));

/** Answers the folder of the built window. @throws when it cannot be built */
export function windowThatKnowsItsLines(): string {
  const folder = path.join(root, '.cache', 'leaks-window');
  const vite = path.join(root, 'node_modules', 'vite', 'bin', 'vite.js');
  const config = path.join(root, 'build', 'vite.config.ts');
  const args = ['build', '--config', config, '--outDir', folder, '--emptyOutDir', '--mode', 'development'];
  const { status, stderr } = spawnSync(process.execPath, [vite, ...args, '--logLevel', 'error'], {
    cwd: root,
    encoding: 'utf8',
    env: { ...process.env, NODE_ENV: 'development' },
  });
  if (status !== 0) throw new Error(`The window for the walk could not be built:\n${stderr}`);
  return folder;
}
