import { randomUUID } from 'node:crypto';
import path from 'node:path';
import { z } from 'zod';
import type { Caseload } from '../../../db/index.ts';
import { partOf } from '../../../db/handover/part-of.ts';
import { differences } from '../../../renderer/logic/exchange/both-changed.ts';
import { Refusal } from '../../contract/envelope.ts';
import type { handoverRequests, HandoverState } from '../../contract/sharing/handover.ts';
import {
  asHandoverRefusal,
  readHandover,
  writeHandover,
  type ReadHandover,
} from '../../files/handover/handover-file.ts';
import {
  colleagueKey,
  colleagues,
  identityToRead,
  knownRecipient,
  ownKeys,
  shortKey,
} from '../../files/handover/keys.ts';
import {
  handoverName,
  isThere,
  LARGEST_HANDOVER,
  noteWatch,
  putIntoShare,
  readFromShare,
  waitingInShare,
} from '../../files/handover/share.ts';
import type { Handler } from '../handler.ts';
import { kindWord } from '../../trail-words.ts';
import type { Services } from '../services.ts';
import { toldEnglish } from '../../../renderer/logic/texts/screens/told-english.ts';

/** The hand-over that was looked into last; it goes with its caseload when that is locked. */
const lookedInto = new WeakMap<Caseload, { token: string; name: string; read: ReadHandover }>();

/** Names of files that were taken in: they are not shown as waiting any more. */
const MOST_NAMES = 2000;
const takenNames = (caseload: Caseload): string[] => {
  const known = z.array(z.string()).safeParse(caseload.setting('handoverSeen'));
  return known.success ? known.data : [];
};

const folderOf = (services: Services): string => (services.need().setting('handoverFolder') as string | null) ?? '';

/** What waits in the shared folder for this key; `there` is false while it does not answer. */
async function look(services: Services, recipient: string | null) {
  const folder = folderOf(services);
  const nothing = { there: false, waiting: [] as string[], arriving: 0 };
  if (folder === '') return nothing;
  try {
    const taken = new Set(takenNames(services.need()));
    const now = services.options.now().getTime();
    const { whole, arriving } = await waitingInShare(folder, recipient ?? '', { taken, now });
    return { there: true, waiting: recipient === null ? [] : whole, arriving };
  } catch {
    return nothing;
  }
}

async function stateOf(services: Services): Promise<HandoverState> {
  const caseload = services.need();
  const { recipient } = await ownKeys(caseload, services.doing());
  const folder = folderOf(services);
  const { there: folderThere, waiting, arriving } = await look(services, recipient);
  let alsoWatched: string | null = null;
  if (folderThere) {
    const now = services.options.now().getTime();
    // A share may go between two looks: the next one tells it.
    alsoWatched = await noteWatch(folder, recipient, laptopOf(services), now).catch(() => null);
  }
  const words = services.told().trail;
  const names = new Map(caseload.clients().map(({ id, code, name }) => [id, { id, code, name }]));
  return {
    recipient,
    short: shortKey(recipient),
    colleagues: colleagues(caseload).map((each) => ({ ...each, short: shortKey(each.recipient) })),
    folder,
    folderThere,
    alsoWatched,
    waiting,
    arriving,
    bothChanged: caseload.handover.bothChanged(services.doing()).map(({ id, kind, clientId, kept, other }) => ({
      id,
      clientId,
      code: names.get(clientId)?.code ?? '',
      what: kindWord(kind, words),
      kept: { by: kept.by, at: kept.at },
      other: { by: other.by, at: other.at },
      fields: differences(kept.after, other.after, words),
    })),
    twins: caseload.handover.twins().flatMap(({ id, ofId }) => {
      const [one, other] = [names.get(id), names.get(ofId)];
      return one && other ? [{ one, other }] : [];
    }),
  };
}

/** The name of this laptop in hand-overs. */
const laptopOf = (services: Services): string => services.need().handover.laptop(services.doing());

async function bytesAndName(
  services: Services,
  name: string | null,
): Promise<{ name: string; bytes: Uint8Array } | null> {
  if (name !== null) {
    const folder = folderOf(services);
    if (path.basename(name) !== name || folder === '') throw new Refusal('not-found');
    return { name, bytes: await readFromShare(folder, name) };
  }
  const title = 'Choose a hand-over';
  const chosen = await services.options.port.chooseOpen({ title, endings: ['age'], maxBytes: LARGEST_HANDOVER });
  return chosen && { name: chosen.name, bytes: await chosen.read() };
}

export const handoverHandlers: { [N in keyof typeof handoverRequests]: Handler<N> } = {
  'handover.state': stateOf,
  'handover.waiting': async (services) => {
    const folder = folderOf(services);
    const { there, waiting, arriving } = await look(services, knownRecipient(services.need()));
    return { folder: folder !== '', there, waiting: waiting.length, arriving };
  },
  'handover.addColleague': (services, { name, key }) => {
    const caseload = services.need();
    const recipient = colleagueKey(key, knownRecipient(caseload));
    const others = colleagues(caseload).filter((each) => each.recipient !== recipient);
    caseload.putSetting('colleagues', [...others, { name: name.trim(), recipient }], services.doing());
    return stateOf(services);
  },
  'handover.removeColleague': (services, { recipient }) => {
    const left = colleagues(services.need()).filter((each) => each.recipient !== recipient);
    services.need().putSetting('colleagues', left, services.doing());
    return stateOf(services);
  },
  'handover.setFolder': async (services, { folder }) => {
    const place = folder.trim();
    if (place !== '' && !(path.isAbsolute(place) && (await isThere(place)))) throw new Refusal('share-gone');
    services.need().putSetting('handoverFolder', place, services.doing());
    return stateOf(services);
  },
  'handover.make': async (services, { clientIds, to, into }) => {
    const caseload = services.need();
    const colleague = colleagues(caseload).find((each) => each.recipient === to);
    if (!colleague) throw new Refusal('key-not-one');
    const ids = clientIds ?? caseload.clients().map(({ id }) => id);
    if (ids.length === 0) throw new Refusal('not-found');
    const { initials, clinic } = services.therapist();
    const { recipient } = await ownKeys(caseload, services.doing());
    const bytes = await writeHandover(caseload, ids, to, { initials, clinic, recipient }, services.doing());
    const name = handoverName(to, services.today());
    if (into === 'folder') {
      const folder = folderOf(services);
      if (folder === '' || !(await isThere(folder))) throw new Refusal('share-gone');
      await putIntoShare(folder, name, bytes);
    } else {
      const mime = 'application/octet-stream';
      const saved = await services.options.port
        .chooseSave({ suggestedName: name, bytes, mime })
        .catch(() => Promise.reject(new Refusal('save-failed')));
      if (!saved.saved) return { saved: false, name, clients: ids.length };
    }
    services.need().noteExport(ids, toldEnglish.trail.exports.handover(colleague.name), services.doing());
    return { saved: true, name, clients: ids.length };
  },
  'handover.look': async (services, { name }) => {
    const caseload = services.need();
    const file = await bytesAndName(services, name);
    if (!file) return { token: null, name: '', madeAt: '', from: '', clients: [] };
    const read = await readHandover(file.bytes, await identityToRead(caseload), caseload.schemaVersion);
    const { head, handed } = read;
    try {
      const clients = caseload.handover.expect(handed, services.doing());
      const token = randomUUID();
      lookedInto.set(caseload, { token, name: file.name, read });
      const from = [head.from.initials, head.from.clinic].filter(Boolean).join(', ');
      return { token, name: file.name, madeAt: head.madeAt, from, clients };
    } catch (error) {
      throw asHandoverRefusal(error, head, caseload.schemaVersion);
    }
  },
  'handover.take': (services, { token, clientIds }) => {
    const caseload = services.need();
    const looked = lookedInto.get(caseload);
    if (looked?.token !== token) throw new Refusal('not-found');
    const { handed, bytesOf, head } = looked.read;
    try {
      const { entries, recoded } = caseload.handover.takeIn(partOf(handed, clientIds), bytesOf, services.doing());
      const all = handed.clientIds.every((id) => clientIds.includes(id));
      if (all) {
        const names = [...new Set([...takenNames(caseload), looked.name])].slice(-MOST_NAMES);
        caseload.putSetting('handoverSeen', names, services.doing());
      }
      return { changes: entries, recoded: recoded.map(({ code }) => code) };
    } catch (error) {
      throw asHandoverRefusal(error, head, caseload.schemaVersion);
    }
  },
  'handover.settle': (services, { id, take }) => {
    services.need().handover.settle(id, take, services.doing());
    return stateOf(services);
  },
};
