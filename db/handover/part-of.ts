/** Some clients of a hand-over, with the records that are joined with theirs. */
import type { Handed } from './handover-types.ts';

export function partOf(handed: Handed, chosen: readonly string[]): Handed {
  const clientsOf = new Map<string, Set<string>>();
  for (const { fact_id, client_id } of handed.entries) {
    const known = clientsOf.get(fact_id);
    if (known) known.add(client_id);
    else clientsOf.set(fact_id, new Set([client_id]));
  }
  const joined = [...clientsOf.values()].filter((clients) => clients.size > 1);
  const wanted = new Set(chosen);
  for (let grew = true; grew;) {
    grew = false;
    for (const clients of joined) {
      if (![...clients].some((id) => wanted.has(id))) continue;
      for (const id of clients) {
        grew = grew || !wanted.has(id);
        wanted.add(id);
      }
    }
  }
  return {
    clientIds: handed.clientIds.filter((id) => wanted.has(id)),
    entries: handed.entries.filter((entry) => wanted.has(entry.client_id)),
    grown: handed.grown,
    pictures: handed.pictures.filter((picture) => wanted.has(picture.clientId)),
  };
}
