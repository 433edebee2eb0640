import type { Caseload } from '../../db/index.ts';
import { CaseloadError } from '../../db/index.ts';
import { workFactsOf } from '../../renderer/logic/caseload/work-facts.ts';
import { flagsOf } from '../../renderer/logic/program/facts/from-record.ts';
import type { WorkFacts, workRequests } from '../contract/work.ts';
import type { Handler } from './handler.ts';
import { currentRules } from './rules.ts';

interface Looked {
  mark: string;
  facts: WorkFacts;
}
/** What was found at the last look: gone with the caseload when it is locked. */
const looked = new WeakMap<Caseload, Map<string, Looked>>();

export const workHandlers: { [N in keyof typeof workRequests]: Handler<N> } = {
  'caseload.work': (services, { clientIds }) => {
    const caseload = services.need();
    const rules = currentRules(services);
    const today = services.today();
    const known = looked.get(caseload) ?? new Map<string, Looked>();
    looked.set(caseload, known);
    return clientIds.flatMap((clientId) => {
      const mark = `${caseload.lastChange(clientId)} ${today} ${rules.version}`;
      const before = known.get(clientId);
      if (before?.mark === mark) return [before.facts];
      try {
        const record = caseload.record(clientId);
        const facts = workFactsOf(record, flagsOf(record, rules).open.length, today);
        known.set(clientId, { mark, facts });
        return [facts];
      } catch (error) {
        // One record that cannot be read must not hide what is due for the others; opening it says what is wrong.
        if (error instanceof CaseloadError && (error.code === 'not-found' || error.code === 'damaged')) return [];
        throw error;
      }
    });
  },
};
