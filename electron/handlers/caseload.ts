import { isUnreadable, type Caseload } from '../../db/index.ts';
import type { RulesInUse } from '../../db/types/rules-in-use.ts';
import { coSignOf } from '../../renderer/logic/record/co-sign.ts';
import { workFactsOf } from '../../renderer/logic/caseload/work-facts.ts';
import { limitsOf } from '../../renderer/logic/rules/limits.ts';
import { flagsOf } from '../../renderer/logic/program/facts/from-record.ts';
import type { caseloadRequests, WorkFacts } from '../contract/caseload.ts';
import { Refusal } from '../contract/envelope.ts';
import type { Handler } from './handler.ts';
import { clinicRulesKnown, clinicRulesSoon, meetPairs, readOn } from './clinic-rules.ts';
import { refuseFuture, saveFact } from './saving.ts';
import type { Services } from './services.ts';

interface Looked {
  mark: string;
  pairs: RulesInUse['repeatPairs'];
  /** Nothing is compared yet: no pair can change what was found. */
  withoutPairs: boolean;
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
  'caseload.work': async (services, { clientIds, soon }) => {
    const caseload = services.need();
    const rules = soon ? clinicRulesKnown(services) : await clinicRulesSoon(services);
    const limits = limitsOf(rules);
    const pairs = rules.repeatPairs;
    const today = services.today();
    const known = looked.get(caseload) ?? new Map<string, Looked>();
    looked.set(caseload, known);
    const found: WorkFacts[] = [];
    let read = 0;
    for (const clientId of clientIds) {
      const mark = `${caseload.lastChange(clientId)} ${today} ${rules.version}`;
      const before = known.get(clientId);
      if (before?.mark === mark && (before.withoutPairs || before.pairs === pairs)) {
        found.push(before.facts);
        continue;
      }
      try {
        const record = caseload.record(clientId);
        const facts = workFactsOf(record, flagsOf(record, rules).open.length, today);
        known.set(clientId, { mark, pairs, withoutPairs: record.readings.length < 2, facts });
        meetPairs(caseload, record, limits);
        found.push(facts);
      } catch (error) {
        if (!isUnreadable(error)) throw error;
      }
      await readOn(services, caseload, ++read);
    }
    return found;
  },
  'client.open': (services, { clientId }) => services.need().record(clientId),
  'client.save': (services, client) => {
    for (const d of client.diagnoses) refuseFuture(services, d.onset);
    return saveFact('client')(services, client);
  },
  'visit.save': (services, visit) => {
    refuseFuture(services, visit.date);
    const who = { ...services.doing(), assistant: services.therapist().assistant };
    const judged = coSignOf(services.need().get('visit', visit.id), visit, who);
    if ('refused' in judged) throw new Refusal(judged.refused);
    const { coSign: _sent, ...own } = visit;
    return saveFact('visit')(services, judged.coSign ? { ...own, coSign: judged.coSign } : own);
  },
  'fact.remove': (services, { kind, id }) => {
    if (kind === 'client') throw new Refusal('not-found');
    // Taking the answer away would clear the flag as well.
    if (kind === 'redFlag') services.signedIn.refuseAssistant('assistant-clears');
    if (kind === 'issuedPage') throw new Refusal('already-issued');
    if (kind === 'program' && services.need().get('program', id)?.status === 'approved')
      throw new Refusal('already-approved');
    services.need().remove(kind, id, services.doing());
    return {};
  },
  'client.undo': (services, { clientId }) => travel(services, clientId, 'undo'),
  'client.redo': (services, { clientId }) => travel(services, clientId, 'redo'),
  'typed.keep': (services, words) => {
    const place = services.signedIn.wordsPlace(words.place);
    services.need().keepWords({ ...words, place }, services.doing());
    return {};
  },
  'typed.kept': (services, { place }) => ({ fields: services.need().wordsKept(services.signedIn.wordsPlace(place)) }),
};
