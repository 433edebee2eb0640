import { recordsDue } from '../../../renderer/logic/caseload/retention.ts';
import { Refusal } from '../../contract/envelope.ts';
import { RetentionRule, type retentionRequests, type RetentionState } from '../../contract/years/retention.ts';
import type { Handler } from '../handler.ts';
import { stillHolding } from '../records.ts';
import type { Services } from '../services.ts';

const NO_RULE: RetentionRule = { years: null, source: 'law', words: '' };

function ruleOf(services: Services): RetentionRule {
  const kept = RetentionRule.safeParse(services.need().setting('retention'));
  return kept.success ? kept.data : NO_RULE;
}

function stateOf(services: Services): RetentionState {
  const caseload = services.need();
  const rule = ruleOf(services);
  const records = caseload.clients().map((row) => ({
    ...row,
    // Asked only where it counts: a record with a visit is judged by that.
    lastChange: row.lastVisit ?? caseload.get('client', row.id)?.at.slice(0, 10) ?? services.today(),
  }));
  const due = recordsDue(records, rule.years, services.today()).map(({ record, since, why, until }) => {
    const { id, code, name, visits, archivedOn } = record;
    return { id, code, name, visits, since, why, until, archivedOn };
  });
  return { rule, due };
}

export const retentionHandlers: { [N in keyof typeof retentionRequests]: Handler<N> } = {
  'retention.state': stateOf,
  'retention.set': (services, rule) => {
    services.need().putSetting('retention', rule, services.doing());
    return stateOf(services);
  },
  'retention.archive': (services, { clientIds, on }) => {
    const day = on ? services.today() : null;
    // All or none.
    const known = new Set(
      services
        .need()
        .clients()
        .map(({ id }) => id),
    );
    if (!clientIds.every((id) => known.has(id))) throw new Refusal('not-found');
    for (const id of clientIds) services.need().archive(id, day, services.doing());
    return stateOf(services);
  },
  'retention.erase': async (services, { clientIds, typed }) => {
    services.signedIn.refuseAssistant('assistant-erases');
    const due = new Set(stateOf(services).due.map(({ id }) => id));
    if (!clientIds.every((id) => due.has(id))) throw new Refusal('not-due');
    if (Number(typed.trim()) !== new Set(clientIds).size) throw new Refusal('erase-not-confirmed');
    services.need().erase(clientIds, services.doing());
    return { erased: clientIds.length, ...(await stillHolding(services, clientIds)) };
  },
};
