import { existsSync, statSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import path from 'node:path';
import { Refusal } from '../../contract/envelope.ts';
import type { movingRequests } from '../../contract/years/moving.ts';
import { makeBackup } from '../../files/backup/backup.ts';
import { removeCaseload } from '../../files/remove-caseload.ts';
import { freeName } from '../../files/save-into.ts';
import type { Handler } from '../handler.ts';
import { proveMine } from '../sign-in/prove.ts';

export const movingHandlers: { [N in keyof typeof movingRequests]: Handler<N> } = {
  'moving.write': async (services, { folder, sheet }) => {
    services.signedIn.refuseAssistant('assistant-erases');
    const caseload = services.need();
    const to = folder.trim();
    if (!path.isAbsolute(to) || !existsSync(to) || !statSync(to).isDirectory()) {
      throw new Refusal('folder-not-writable');
    }
    const now = services.options.now().toISOString();
    const onProgress = (stage: string, done: number) => {
      const half = stage === 'checking' ? 0.5 + done / 2 : done / 2;
      services.options.emit({ kind: 'progress', task: stage, id: 'moving', done: half });
    };
    const made = await caseload.withKey((identity) =>
      makeBackup({ folder: services.folder, identity, now, to, onProgress }),
    );
    try {
      const name = freeName('fairhand-what-to-do.txt', (taken) => existsSync(path.join(to, taken)));
      await writeFile(path.join(to, name), `${sheet.trim()}\n`, { mode: 0o600, flag: 'wx' });
    } catch {
      throw new Refusal('save-failed');
    }
    // After the file was made: what is opened on the other laptop carries no mark.
    caseload.putSetting('moved', { on: services.today(), file: made.name }, services.doing());
    return {
      file: path.join(to, made.name),
      bytes: made.bytes,
      clients: made.clients ?? 0,
      lastVisit: made.lastVisit,
      entries: made.entries ?? 0,
    };
  },
  'moving.stay': (services) => {
    services.need().putSetting('moved', null, services.doing());
    return services.status();
  },
  'moving.eraseHere': async (services, { passphrase }) => {
    services.signedIn.refuseAssistant('assistant-erases');
    services.need();
    if (services.demo || services.status().movedOn === null) throw new Refusal('not-moved');
    await proveMine(services, passphrase);
    services.lock('asked');
    await removeCaseload(services.folder);
    return services.status();
  },
};
