import { isUnreadable, type Caseload } from '../../db/index.ts';
import type { RulesInUse } from '../../db/types/rules-in-use.ts';
import { workFactsOf } from '../../renderer/logic/caseload/work-facts.ts';
import { flagsOf } from '../../renderer/logic/program/facts/from-record.ts';
import type { caseloadRequests, WorkFacts } from '../contract/caseload.ts';
import { Refusal } from '../contract/envelope.ts';
import type { Handler } from './handler.ts';
import { clinicRulesSoon } from './clinic-rules.ts';
import { refuseFuture, saveFact } from './saving.ts';
import type { Services } from './services.ts';

interface Looked {
  mark: string;
  pairs: RulesInUse['repeatPairs'];
  facts: WorkFacts;
}
/** What was found at the last look: gone with the caseload when it is locked. */
const looked = new WeakMap<Caseload, Map<string, Looked>>();

const travel = (services: Services, clientId: string, way: 'undo' | 'redo') => {
  const record = services.need()[way](clientId, services.doing());
  if (!record) throw new Refusal('not-found');
  return record;
};

export const caseloadHandlers: { [N in keyof typeof caseloadRequests]: Handler<N> } = {
  'caseload.list': (services) => services.need().clients(),
  'caseload.work': async (services, { clientIds }) => {
    const caseload = services.need();
    const rules = await clinicRulesSoon(services);
    const pairs = rules.repeatPairs;
    const today = services.today();
    const known = looked.get(caseload) ?? new Map<string, Looked>();
    looked.set(caseload, known);
    return clientIds.flatMap((clientId) => {
      const mark = `${caseload.lastChange(clientId)} ${today} ${rules.version}`;
      const before = known.get(clientId);
      if (before?.mark === mark && before.pairs === pairs) return [before.facts];
      try {
        const record = caseload.record(clientId);
        const facts = workFactsOf(record, flagsOf(record, rules).open.length, today);
        known.set(clientId, { mark, pairs, facts });
        return [facts];
      } catch (error) {
        if (isUnreadable(error)) return [];
        throw error;
      }
    });
  },
  'client.open': (services, { clientId }) => services.need().record(clientId),
  'client.save': (services, client) => {
    for (const d of client.diagnoses) refuseFuture(services, d.onset);
    return saveFact('client')(services, client);
  },
  'visit.save': (services, visit) => {
    refuseFuture(services, visit.date);
    return saveFact('visit')(services, visit);
  },
  'fact.remove': (services, { kind, id }) => {
    if (kind === 'client') throw new Refusal('not-found');
    if (kind === 'issuedPage') throw new Refusal('already-issued');
    if (kind === 'program' && services.need().get('program', id)?.status === 'approved')
      throw new Refusal('already-approved');
    services.need().remove(kind, id, services.doing());
    return {};
  },
  'client.undo': (services, { clientId }) => travel(services, clientId, 'undo'),
  'client.redo': (services, { clientId }) => travel(services, clientId, 'redo'),
  'typed.keep': (services, words) => {
    services.need().keepWords(words, services.doing());
    return {};
  },
  'typed.kept': (services, { place }) => ({ fields: services.need().wordsKept(place) }),
};
