import { cp, mkdir, rmdir } from 'node:fs/promises';
import {
  SHORTEST_PASSPHRASE,
  caseloadExists,
  createCaseload,
  openCaseload,
  rekeyCaseload,
  type Secret,
} from '../../db/index.ts';
import { isWeak } from '../../db/weak-passphrase.ts';
import type { appRequests } from '../contract/app.ts';
import { Refusal } from '../contract/envelope.ts';
import { isGuessable } from '../files/passphrase-guess.ts';
import { removeCaseload } from '../files/remove-caseload.ts';
import { forgetSystemKey, hasSystemKey, keepSystemKey, openSystemKey } from '../files/system-key.ts';
import type { Handler } from './handler.ts';
import { printWindow } from './pages.ts';
import { prove } from './prove.ts';
import type { Services } from './services.ts';

/** The demo's passphrase is public: its clients are invented. */
export const demoPassphrase = 'invented clients only';

const nowIso = (services: Services) => services.options.now().toISOString();

const unlock = (services: Services, passphrase: string): Promise<void> =>
  services.slowed(() => open(services, { passphrase }));

async function open(services: Services, secret: Secret): Promise<void> {
  const opened = await openCaseload({ folder: services.folder, now: nowIso(services), ...secret });
  if (!opened.ok) throw new Refusal(opened.code);
  await services.took(opened.caseload);
}

/** Of a new passphrase. @throws Refusal passphrase-too-short, passphrase-too-weak */
async function refuseGuessable(passphrase: string, words: readonly string[]): Promise<void> {
  if ([...passphrase].length < SHORTEST_PASSPHRASE) throw new Refusal('passphrase-too-short');
  if (isWeak(passphrase) || (await isGuessable(passphrase, words))) throw new Refusal('passphrase-too-weak');
}

/** Gives the file a new key by the recovery key, which is used up, and opens it; answers the new recovery key. */
async function recover(services: Services, recoveryKey: string, next: string): Promise<string> {
  const { folder } = services;
  await refuseGuessable(next, []);
  services.lock('asked');
  const done = await rekeyCaseload({ folder, now: nowIso(services), recoveryKey, next, onNewKey: services.reseal });
  if (!done.ok) throw new Refusal(done.code === 'wrong-passphrase' ? 'wrong-recovery-key' : done.code);
  forgetSystemKey(folder);
  await open(services, { passphrase: next });
  return done.recoveryKey;
}

/** Deletes what the demo consists of, and its folder when nothing else is in it. @throws Refusal demo-not-ours */
async function removeDemo(services: Services): Promise<void> {
  const folder = services.demoFolder;
  if (caseloadExists(folder)) {
    // The demo's passphrase is public: what it does not open is somebody's own.
    await prove(folder, demoPassphrase).catch(() => {
      throw new Refusal('demo-not-ours');
    });
  }
  services.leaveDemo();
  if (!caseloadExists(folder)) return;
  await removeCaseload(folder);
  await rmdir(folder).catch(() => undefined);
}

export const appHandlers: { [N in keyof typeof appRequests]: Handler<N> } = {
  'app.status': (services) => services.status(),

  'app.create': async (services, { passphrase, initials, clinic }) => {
    if (services.demo) throw new Refusal('caseload-exists');
    await refuseGuessable(passphrase, [initials, clinic]);
    const created = await createCaseload({ folder: services.options.folder, passphrase, now: nowIso(services) });
    if (!created.ok) throw new Refusal(created.code);
    // A note of a caseload that lay here once says nothing about this one.
    services.sealAtNextOpening();
    await services.took(created.caseload);
    created.caseload.putSetting(
      'therapist',
      { initials, clinic, credentials: '' },
      { at: nowIso(services), by: initials },
    );
    // A sealed note that is taken away later is missed.
    created.caseload.putSetting('sealed', true, { at: nowIso(services), by: initials });
    return { status: services.status(), recoveryKey: created.recoveryKey };
  },

  'app.unlock': async (services, { passphrase }) => {
    await unlock(services, passphrase);
    return services.status();
  },

  'app.recover': async (services, { recoveryKey, next }) => {
    const key = await services.slowed(() => recover(services, recoveryKey, next));
    return { status: services.status(), recoveryKey: key };
  },

  'app.used': (services) => {
    services.used();
    return {};
  },

  'app.handed': ({ handed }) => ({ file: handed && { name: handed.name, kind: handed.kind } }),
  'app.putHandedAway': (services) => {
    services.handed = null;
    return {};
  },

  'app.unlockWithSystem': async (services) => {
    const { keyStore } = services.options.port;
    if (services.demo || keyStore === null) throw new Refusal('system-key-unusable');
    const identity = await openSystemKey(services.folder, keyStore);
    try {
      await open(services, { identity });
    } finally {
      identity.fill(0);
    }
    return services.status();
  },

  'app.systemKey': async (services) => {
    const { keyStore } = services.options.port;
    if (keyStore === null || services.demo) return { state: 'not-in-this-window' };
    const state = await keyStore.state();
    if (state !== 'usable') return { state };
    return { state: hasSystemKey(services.folder) ? 'on' : 'off' };
  },

  'app.keepSystemKey': async (services, { passphrase }) => {
    const caseload = services.need();
    const { keyStore } = services.options.port;
    if (services.demo || keyStore === null) throw new Refusal('system-key-unusable');
    // Who only finds the window open must not get in again later.
    await services.slowed(() => prove(services.folder, passphrase));
    await caseload.withKey(async (copy) => {
      const identity = Buffer.from(copy);
      try {
        await keepSystemKey(services.folder, identity, keyStore);
      } finally {
        identity.fill(0);
      }
    });
    return services.status();
  },

  'app.forgetSystemKey': (services) => {
    forgetSystemKey(services.folder);
    return services.status();
  },

  'app.printRecoverySheet': printWindow,
  'app.acknowledge': (services) => {
    services.acknowledge();
    return services.status();
  },

  'app.lock': (services) => {
    services.lock('asked');
    services.demo = false;
    return services.status();
  },

  'app.openDemo': async (services) => {
    const source = services.options.demoSource;
    if (source === null) throw new Refusal('demo-missing');
    services.lock('asked');
    services.demo = true;
    try {
      if (!caseloadExists(services.demoFolder)) {
        await mkdir(services.demoFolder, { recursive: true });
        await cp(source, services.demoFolder, { recursive: true });
      }
      await unlock(services, demoPassphrase);
    } catch (error) {
      services.demo = false;
      throw error;
    }
    return services.status();
  },

  'app.leaveDemo': (services) => {
    if (services.demo) services.lock('asked');
    services.demo = false;
    return services.status();
  },

  'app.removeDemo': async (services) => {
    await removeDemo(services);
    return services.status();
  },

  'app.therapist': (services, therapist) => {
    services.need().putSetting('therapist', therapist, services.doing());
    return services.status();
  },

  'app.prefer': (services, preferences) => {
    services.need().putSetting('preferences', preferences, services.doing());
    return services.status();
  },

  'app.rekey': async (services, { passphrase, next }) => {
    services.need();
    if (services.demo) throw new Refusal('wrong-passphrase');
    const { initials, clinic, credentials } = services.therapist();
    await refuseGuessable(next, [initials, clinic, credentials]);
    // What is refused leaves the caseload open.
    await services.slowed(() => prove(services.folder, passphrase));
    services.lock('asked');
    return services.slowed(async () => {
      const done = await rekeyCaseload({
        folder: services.folder,
        passphrase,
        next,
        now: nowIso(services),
        onNewKey: services.reseal,
      });
      if (!done.ok) throw new Refusal(done.code);
      forgetSystemKey(services.folder);
      return { recoveryKey: done.recoveryKey };
    });
  },
};
