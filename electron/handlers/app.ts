import { cp, mkdir, rmdir } from 'node:fs/promises';
import { caseloadExists, createCaseload, openCaseload, peopleIn, rekeyCaseload, signInsIn } from '../../db/index.ts';
import { normalInitials, PEOPLE, type Person } from '../../db/types/clinic/people.ts';
import type { appRequests } from '../contract/app.ts';
import { Refusal } from '../contract/envelope.ts';
import { removeCaseload } from '../files/remove-caseload.ts';
import { forgetSystemKey, hasSystemKey, keepSystemKey, openSystemKey } from '../files/system-key.ts';
import type { Handler } from './handler.ts';
import { printWindow } from './pages.ts';
import type { Services } from './services.ts';
import { openFolder, prove, proveMine, refuseGuessable } from './sign-in/prove.ts';

/** The demo's passphrase is public: its clients are invented. */
export const demoPassphrase = 'invented clients only';

const nowIso = (services: Services) => services.options.now().toISOString();

/** Gives the file a new key by the recovery key, which is used up, and opens it; answers the new recovery key. */
async function recover(services: Services, recoveryKey: string, next: string, initials?: string): Promise<string> {
  const { folder } = services;
  await refuseGuessable(next, []);
  services.lock('asked');
  const [alone] = signInsIn(folder);
  const person = services.several ? await personBy(services, recoveryKey, initials) : alone;
  const { workFactor } = services.options;
  const at = { folder, now: nowIso(services), workFactor };
  const done = await rekeyCaseload({ ...at, recoveryKey, next, person, onNewKey: services.reseal });
  if (!done.ok) throw new Refusal(done.code === 'wrong-passphrase' ? 'wrong-recovery-key' : done.code);
  forgetSystemKey(folder);
  await openFolder(services, { passphrase: next, person });
  return done.recoveryKey;
}

/** Whose passphrase the recovery key sets anew. @throws Refusal wrong-recovery-key, initials-missing, initials-unknown */
async function personBy(services: Services, recoveryKey: string, initials?: string): Promise<string> {
  if (!initials) throw new Refusal('initials-missing');
  const opened = await openCaseload({ folder: services.folder, now: nowIso(services), recoveryKey });
  if (!opened.ok) throw new Refusal(opened.code === 'wrong-passphrase' ? 'wrong-recovery-key' : opened.code);
  const people = peopleIn(opened.caseload.setting(PEOPLE)) ?? [];
  opened.caseload.close();
  const same = (one: Person) => normalInitials(one.initials) === normalInitials(initials) && one.removedOn === null;
  const found = people.find(same);
  if (!found) throw new Refusal('initials-unknown', initials);
  return found.id;
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
    await services.took(created.caseload, null);
    created.caseload.putSetting(
      'therapist',
      { initials, clinic, credentials: '' },
      { at: nowIso(services), by: initials },
    );
    // A sealed note that is taken away later is missed.
    created.caseload.putSetting('sealed', true, { at: nowIso(services), by: initials });
    return { status: services.status(), recoveryKey: created.recoveryKey };
  },

  'app.unlock': async (services, { passphrase, initials }) => {
    if (services.several && !initials) throw new Refusal('initials-missing');
    const secret = services.several ? { passphrase, initials } : { passphrase };
    await services.slowed(() => openFolder(services, secret), initials);
    return services.status();
  },

  'app.recover': async (services, { recoveryKey, next, initials }) => {
    const key = await services.slowed(() => recover(services, recoveryKey, next, initials));
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
    if (services.demo || keyStore === null || services.several) throw new Refusal('system-key-unusable');
    const identity = await openSystemKey(services.folder, keyStore);
    try {
      await openFolder(services, { identity });
    } finally {
      identity.fill(0);
    }
    return services.status();
  },

  'app.systemKey': async (services) => {
    const { keyStore } = services.options.port;
    if (keyStore === null || services.demo) return { state: 'not-in-this-window' };
    // It opens for whoever uses this computer account: which of the people that is it cannot tell.
    if (services.several) return { state: 'several' };
    const state = await keyStore.state();
    if (state !== 'usable') return { state };
    return { state: hasSystemKey(services.folder) ? 'on' : 'off' };
  },

  'app.keepSystemKey': async (services, { passphrase }) => {
    const caseload = services.need();
    const { keyStore } = services.options.port;
    if (services.demo || keyStore === null || services.several) throw new Refusal('system-key-unusable');
    // Who only finds the window open must not get in again later.
    await proveMine(services, passphrase);
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
      await services.slowed(() => openFolder(services, { passphrase: demoPassphrase }));
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

  'app.therapist': (services, { assistant, ...therapist }) => {
    const { signedIn } = services;
    const me = signedIn.me();
    const doing = services.doing();
    if (!me) {
      services.need().putSetting('therapist', { ...therapist, ...(assistant !== undefined && { assistant }) }, doing);
      return services.status();
    }
    const { initials, clinic, credentials } = therapist;
    const other = assistant !== undefined && assistant !== (me.role === 'assistant');
    if (initials !== me.initials || other) throw new Refusal('sign-in-decides');
    const people = (signedIn.people() ?? []).map((one) => (one.id === me.id ? { ...one, credentials } : one));
    services.need().putSetting(PEOPLE, people, doing);
    const kept = services.need().setting('therapist') as object | null;
    services.need().putSetting('therapist', { ...kept, clinic }, doing);
    return services.status();
  },

  'app.prefer': (services, preferences) => {
    services.signedIn.prefer(preferences, services.doing());
    return services.status();
  },

  'app.rekey': async (services, { passphrase, next }) => {
    services.need();
    if (services.demo) throw new Refusal('wrong-passphrase');
    const { initials, clinic, credentials } = services.therapist();
    const { id } = services.signedIn;
    const newSheet = next === passphrase;
    // The sheet sets anybody's passphrase.
    if (newSheet && id !== null) services.signedIn.refuseAssistant('assistant-manages');
    await refuseGuessable(next, [initials, clinic, credentials]);
    // What is refused leaves the caseload open.
    await proveMine(services, passphrase);
    services.lock('asked');
    return services.slowed(async () => {
      const done = await rekeyCaseload({
        folder: services.folder,
        passphrase,
        next,
        person: id ?? signInsIn(services.folder)[0],
        newSheet,
        now: nowIso(services),
        workFactor: services.options.workFactor,
        onNewKey: services.reseal,
      });
      if (!done.ok) throw new Refusal(done.code);
      forgetSystemKey(services.folder);
      return { recoveryKey: done.recoveryKey };
    }, initials);
  },
};
