/** `npm run package`: builds the installer for this system, or says in a sentence why it cannot. */
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { buildDemo, buildDesktop, buildWindow } from '../launch/compile.js';
import { electronDist, tryElectronDownload } from '../launch/electron-binary.js';
import { openly } from '../launch/run.js';
import { writeNotices } from './notices.ts';
import { missingToSign } from './signing.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));

/** Arguments go to electron-builder, for example `npm run package -- --dir`. */
async function main(args: string[]): Promise<number> {
  await tryElectronDownload();
  const dist = electronDist();
  if (!dist) {
    process.stderr.write(
      'Electron’s program is not on this machine and could not be downloaded, so no package was made. ' +
        'Run `npx install-electron` where the network allows it, or name a folder that holds it in ELECTRON_OVERRIDE_DIST_PATH; then start again.\n',
    );
    return 2;
  }
  await buildWindow();
  await buildDemo();
  await buildDesktop();
  writeNotices();
  const unsigned = missingToSign(process.env, process.platform);
  if (unsigned) process.stderr.write(`${unsigned}\n`);
  const builder = path.join(root, 'node_modules/electron-builder/cli.js');
  const config = path.join(root, 'build/package/electron-builder.config.cjs');
  return openly(
    process.execPath,
    [builder, '--config', config, `-c.electronDist=${dist}`, '--publish', 'never', ...args],
    { cwd: root, env: { CUSTOM_FPM_PATH: path.join(root, 'build/package/fpm.js'), ...process.env } },
  );
}

process.exitCode = await main(process.argv.slice(2));
