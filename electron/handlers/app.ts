import { cp, mkdir } from 'node:fs/promises';
import { caseloadExists, changePassphrase, createCaseload, openCaseload } from '../../db/index.ts';
import type { appRequests } from '../contract/app.ts';
import { Refusal } from '../contract/envelope.ts';
import type { Handler } from './handler.ts';
import type { Services } from './services.ts';

/** The demo's passphrase is public: its clients are invented. */
export const demoPassphrase = 'invented clients only';

/** After this many wrong passphrases every further one waits, longer each time. */
const freeTries = 3;

const nowIso = (services: Services) => services.options.now().toISOString();

async function unlock(services: Services, secret: string): Promise<void> {
  const now = services.options.now().getTime();
  if (now < services.waitUntil)
    throw new Refusal('wait-before-retry', String(Math.ceil((services.waitUntil - now) / 1000)));
  let opened = await openCaseload({ folder: services.folder, passphrase: secret, now: nowIso(services) });
  if (!opened.ok && opened.code === 'wrong-passphrase' && looksLikeRecoveryKey(secret)) {
    opened = await openCaseload({ folder: services.folder, recoveryKey: secret.trim(), now: nowIso(services) });
  }
  if (!opened.ok) {
    if (opened.code === 'wrong-passphrase') {
      services.wrongTries++;
      if (services.wrongTries >= freeTries)
        services.waitUntil = now + Math.min(60, 2 ** (services.wrongTries - freeTries)) * 1000;
    }
    throw new Refusal(opened.code);
  }
  services.wrongTries = 0;
  services.caseload?.close();
  services.caseload = opened.caseload;
}

const looksLikeRecoveryKey = (secret: string): boolean =>
  /^age-secret-key-/i.test(secret.trim()) || /^[A-Z0-9-\s]{30,}$/i.test(secret.trim());

export const appHandlers: { [N in keyof typeof appRequests]: Handler<N> } = {
  'app.status': (services) => services.status(),

  'app.create': async (services, { passphrase, initials, clinic }) => {
    if (services.demo) throw new Refusal('caseload-exists');
    const created = await createCaseload({ folder: services.options.folder, passphrase, now: nowIso(services) });
    if (!created.ok) throw new Refusal(created.code);
    services.caseload = created.caseload;
    created.caseload.putSetting(
      'therapist',
      { initials, clinic, credentials: '' },
      { at: nowIso(services), by: initials },
    );
    return { status: services.status(), recoveryKey: created.recoveryKey };
  },

  'app.unlock': async (services, { passphrase }) => {
    await unlock(services, passphrase);
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
      services.waitUntil = 0;
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
    await services.removeDemo();
    return services.status();
  },

  'app.therapist': (services, therapist) => {
    services.need().putSetting('therapist', therapist, services.doing());
    return services.status();
  },

  'app.changePassphrase': async (services, { current, next }) => {
    services.need();
    if (services.demo) throw new Refusal('wrong-passphrase');
    const done = await changePassphrase({ folder: services.folder, passphrase: current, next, now: nowIso(services) });
    if (!done.ok) throw new Refusal(done.code);
    return {};
  },
};
