/**
 * One session for several clients: each gets a visit of her own, which tells how many took part and nothing of the
 * others (common practice, no source). Pure: ids come from outside.
 */
import { GROUP } from '../../../db/types/visit.ts';
import type { CaseloadEntry } from '../../../electron/contract/caseload.ts';
import type { Unstamped } from '../../../electron/contract/request.ts';

/** Who can take part: not archived, and no visit of today yet. */
export const mayJoin = (clients: readonly CaseloadEntry[], today: string): CaseloadEntry[] =>
  clients.filter((one) => one.archivedOn === null && one.lastVisit !== today);

/**
 * The visits of one session, one for each client.
 * @param today ISO date
 * @throws RangeError outside the sizes of GROUP
 */
export function groupVisits(
  members: readonly Pick<CaseloadEntry, 'id' | 'visits'>[],
  today: string,
  newId: () => string,
): Unstamped<'visit'>[] {
  if (members.length < GROUP.least || members.length > GROUP.most)
    throw new RangeError(`a group has ${GROUP.least} to ${GROUP.most} clients`);
  const empty = { minutes: null, nextVisit: '', told: '', skilled: '', response: '', taughtBack: '', plan: '' };
  return members.map(({ id, visits }) => ({
    id: newId(),
    clientId: id,
    date: today,
    kind: visits === 0 ? 'first' : 'treatment',
    ...empty,
    groupOf: members.length,
  }));
}
