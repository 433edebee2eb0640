/** A print queue of our own (CUPS, as root): it keeps what it is sent, so that the way to the printer can be watched. */
import { spawn, spawnSync } from 'node:child_process';
import { chmodSync, existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import path from 'node:path';

const CUPSD = '/usr/sbin/cupsd';

export interface PrintQueue {
  /** For the environment of whoever prints: CUPS_SERVER. */
  server: string;
  /** The queue's own files: what was printed may lie there. */
  folder: string;
  /** Files that were printed, as the printer would get them. */
  printed(): string[];
  stop(): void;
}

/** What the queue takes as it comes: a printer that understands PDF (PPD specification 4.3). */
const printer = (filter: string): string => `*PPD-Adobe: "4.3"
*FormatVersion: "4.3"
*FileVersion: "1.0"
*LanguageVersion: English
*LanguageEncoding: ISOLatin1
*PCFileName: "KEPT.PPD"
*Manufacturer: "None"
*Product: "(None)"
*ModelName: "Kept"
*ShortNickName: "Kept"
*NickName: "Kept"
*PSVersion: "(3010.000) 0"
*LanguageLevel: "3"
*ColorDevice: True
*DefaultColorSpace: RGB
*cupsVersion: 2.2
*cupsFilter2: "application/pdf application/vnd.x-kept 0 ${filter}"
*OpenUI *PageSize/Media Size: PickOne
*OrderDependency: 10 AnySetup *PageSize
*DefaultPageSize: A4
*PageSize A4/A4: "<</PageSize[595 842]>>setpagedevice"
*CloseUI: *PageSize
*OpenUI *PageRegion/Media Size: PickOne
*OrderDependency: 10 AnySetup *PageRegion
*DefaultPageRegion: A4
*PageRegion A4/A4: "<</PageSize[595 842]>>setpagedevice"
*CloseUI: *PageRegion
*DefaultImageableArea: A4
*ImageableArea A4/A4: "0 0 595 842"
*DefaultPaperDimension: A4
*PaperDimension A4/A4: "595 842"
`;

const openToAll = ['Order allow,deny', 'Allow all'].join('\n');

async function freePort(): Promise<number> {
  const server = createServer();
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as { port: number };
  await new Promise((resolve) => server.close(resolve));
  return port;
}

export const canQueue = (): boolean => existsSync(CUPSD) && process.getuid?.() === 0;

/** @throws when the queue does not start */
export async function startQueue(): Promise<PrintQueue> {
  const folder = mkdtempSync(path.join(tmpdir(), 'fairhand-queue-'));
  const inside = (...names: string[]) => path.join(folder, ...names);
  chmodSync(folder, 0o755);
  for (const name of ['root', 'state', 'spool', 'cache', 'tmp', 'log', 'printed']) mkdirSync(inside(name));
  const port = await freePort();
  const server = `127.0.0.1:${port}`;
  writeFileSync(
    inside('files.conf'),
    `SystemGroup root\nUser lp\nGroup lp\nFileDevice Yes\nServerRoot ${inside('root')}\nStateDir ${inside('state')}\n` +
      `RequestRoot ${inside('spool')}\nCacheDir ${inside('cache')}\nTempDir ${inside('tmp')}\n` +
      ['Error', 'Access', 'Page'].map((log) => `${log}Log ${inside('log', log)}\n`).join(''),
  );
  writeFileSync(
    inside('queue.conf'),
    `Listen ${server}\nDefaultAuthType None\nBrowsing Off\nWebInterface No\nPreserveJobHistory No\nPreserveJobFiles No\n` +
      `<Location />\n${openToAll}\n</Location>\n<Location /admin>\n${openToAll}\n</Location>\n` +
      `<Policy default>\n<Limit All>\n${openToAll}\n</Limit>\n</Policy>\n`,
  );
  writeFileSync(
    inside('keep'),
    `#!/bin/sh\nif [ -n "$6" ]; then cat "$6"; else cat; fi | tee ${inside('printed')}/job-$1\n`,
  );
  chmodSync(inside('keep'), 0o755);
  writeFileSync(inside('kept.ppd'), printer(inside('keep')));
  spawnSync('chown', [
    '-R',
    'lp:lp',
    ...['state', 'spool', 'cache', 'tmp', 'log', 'printed'].map((name) => inside(name)),
  ]);
  const daemon = spawn(CUPSD, ['-f', '-c', inside('queue.conf'), '-s', inside('files.conf')], { stdio: 'ignore' });
  const stop = (): void => {
    daemon.kill();
    rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
  };
  const env = { ...process.env, CUPS_SERVER: server };
  const device = ['-p', 'Kept', '-E', '-v', 'file:/dev/null', '-P', inside('kept.ppd')];
  for (let tries = 0; spawnSync('lpadmin', device, { env }).status !== 0; tries++) {
    if (tries > 40) {
      stop();
      throw new Error('The print queue did not start.');
    }
    await new Promise((resolve) => setTimeout(resolve, 250));
  }
  spawnSync('lpadmin', ['-d', 'Kept'], { env });
  return {
    ...{ server, folder, stop },
    printed: () => readdirSync(inside('printed')).map((name) => inside('printed', name)),
  };
}
