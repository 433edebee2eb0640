import type { CaseloadEntry } from '../../../electron/contract/caseload.ts';
import { onceFor } from '../../../db/types/rule-table/once-for.ts';

const plain = (text: string): string => text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();

/** What a client is found by. Asked of thousands at each key, so made once for each row of the list. */
const soughtIn = onceFor((c: CaseloadEntry): string =>
  plain(`${c.name} ${c.code} ${c.birthYear ?? ''} ${c.diagnoses}`),
);

/** Clients whose name, code, birth year or diagnosis has every typed word in it; accents and case do not matter. */
export function findClients(clients: readonly CaseloadEntry[], typed: string): CaseloadEntry[] {
  const words = plain(typed).split(/\s+/).filter(Boolean);
  return clients.filter((client) => words.every((word) => soughtIn(client).includes(word)));
}
