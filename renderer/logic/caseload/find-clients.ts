import type { CaseloadEntry } from '../../../electron/contract/caseload.ts';

const plain = (text: string): string => text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();

/** Clients whose name, code, birth year or diagnosis has every typed word in it; accents and case do not matter. */
export function findClients(clients: readonly CaseloadEntry[], typed: string): CaseloadEntry[] {
  const words = plain(typed).split(/\s+/).filter(Boolean);
  return clients.filter((c) => {
    const text = plain(`${c.name} ${c.code} ${c.birthYear ?? ''} ${c.diagnoses}`);
    return words.every((w) => text.includes(w));
  });
}
