import type { caseloadRequests } from '../contract/caseload.ts';
import { Refusal } from '../contract/envelope.ts';
import type { Handler } from './handler.ts';
import { refuseFuture, saveFact } from './saving.ts';
import type { Services } from './services.ts';

const travel = (services: Services, clientId: string, way: 'undo' | 'redo') => {
  const record = services.need()[way](clientId, services.doing());
  if (!record) throw new Refusal('not-found');
  return record;
};

export const caseloadHandlers: { [N in keyof typeof caseloadRequests]: Handler<N> } = {
  'caseload.list': (services) => services.need().clients(),
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
};
