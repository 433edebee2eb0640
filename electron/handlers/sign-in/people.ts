import { randomUUID } from 'node:crypto';
import { addSignIn, rekeyCaseload, settleSignIns, signInsIn } from '../../../db/index.ts';
import { MOST_PEOPLE } from '../../../db/keys/key-wraps.ts';
import { normalInitials, PEOPLE, type Person } from '../../../db/types/clinic/people.ts';
import { Refusal } from '../../contract/envelope.ts';
import type { peopleRequests } from '../../contract/sign-in/people.ts';
import { forgetSystemKey } from '../../files/system-key.ts';
import type { Handler } from '../handler.ts';
import type { Services } from '../services.ts';
import { openFolder, proveMine, refuseGuessable } from './prove.ts';

/** Everybody; with one sign-in for all, whoever Settings name. */
function listed(services: Services): Person[] {
  const people = services.signedIn.people();
  if (people) return people;
  const { name, initials, credentials, assistant } = services.therapist();
  // A restored caseload from before others came: its wrap has an id already.
  const id = signInsIn(services.folder)[0] ?? randomUUID();
  return [{ id, name, initials, credentials, role: assistant ? 'assistant' : 'therapist', removedOn: null }];
}

/** With one sign-in for all whoever is listed is meant. */
const isMe = ({ signedIn }: Services, id: string): boolean => signedIn.id === null || signedIn.id === id;

function peopleNow(services: Services) {
  const wrapped = services.signedIn.people() ? signInsIn(services.folder) : [];
  return {
    people: listed(services).map((one) => ({
      ...one,
      me: isMe(services, one.id),
      unfinished: one.removedOn !== null && wrapped.includes(one.id),
    })),
  };
}

/** Only a therapist manages people, and not in the demo, whose passphrase is public. */
function refuseOthers(services: Services): void {
  services.need();
  if (services.demo) throw new Refusal('people-not-in-demo');
  services.signedIn.refuseAssistant('assistant-manages');
}

function keep(services: Services, people: Person[]): void {
  services.need().putSetting(PEOPLE, people, services.doing());
}

function found(people: readonly Person[], id: string): Person {
  const one = people.find((each) => each.id === id);
  if (!one) throw new Refusal('not-found');
  return one;
}

export const peopleHandlers: { [N in keyof typeof peopleRequests]: Handler<N> } = {
  'people.list': (services) => peopleNow(services),

  'people.add': async (services, { passphrase, name, initials, role, first }) => {
    refuseOthers(services);
    const people = listed(services);
    const me = services.signedIn.me() ?? people[0]!;
    if (me.initials === '') throw new Refusal('initials-missing');
    const taken = people.some((one) => normalInitials(one.initials) === normalInitials(initials));
    if (taken) throw new Refusal('initials-taken', initials);
    if (people.length >= MOST_PEOPLE) throw new Refusal('people-too-many', String(MOST_PEOPLE));
    await refuseGuessable(first, [initials, name, services.therapist().clinic]);
    await proveMine(services, passphrase);
    const caseload = services.need();
    const doing = services.doing();
    const added: Person = { id: randomUUID(), name, initials, role, credentials: '', removedOn: null };
    const alone = services.signedIn.people() === null;
    const founder = alone ? { id: me.id, initials: me.initials, passphrase } : null;
    const { recoveryKey } = await addSignIn(caseload, { ...added, passphrase: first }, founder, {
      now: doing.at,
      workFactor: services.options.workFactor,
    });
    // It may have been locked meanwhile: the wrap then counts for nothing.
    if (services.caseload !== caseload) throw new Refusal('locked');
    if (alone) services.signedIn.id = me.id;
    caseload.putSetting(PEOPLE, [...people, added], doing);
    settleSignIns(services.folder);
    // It would let in whoever uses this computer account, as whoever set it up.
    forgetSystemKey(services.folder);
    return { ...peopleNow(services), status: services.status(), recoveryKey };
  },

  'people.change': (services, { id, name, role }) => {
    refuseOthers(services);
    const people = listed(services);
    const one = found(people, id);
    if (role !== one.role && isMe(services, id)) throw new Refusal('not-oneself');
    keep(
      services,
      people.map((each) => (each.id === id ? { ...each, name, role } : each)),
    );
    return peopleNow(services);
  },

  'people.remove': async (services, { id, passphrase }) => {
    refuseOthers(services);
    const people = listed(services);
    const one = found(people, id);
    const me = services.signedIn.me();
    if (!me || one.id === me.id) throw new Refusal('not-oneself');
    await proveMine(services, passphrase);
    // First the list, so that she is refused even where the change of the key is cut off.
    const without = people.map((each) =>
      each.id === id ? { ...each, removedOn: each.removedOn ?? services.today() } : each,
    );
    keep(services, without);
    services.lock('asked');
    // In turn with whoever unlocks meanwhile.
    await services.slowed(async () => {
      const done = await rekeyCaseload({
        folder: services.folder,
        passphrase,
        person: me.id,
        without: without.filter(({ removedOn }) => removedOn !== null).map((each) => each.id),
        now: services.options.now().toISOString(),
        onNewKey: services.reseal,
      });
      if (!done.ok) throw new Refusal(done.code);
      await openFolder(services, { passphrase, person: me.id });
    }, me.initials);
    return services.status();
  },
};
