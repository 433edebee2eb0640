import type { Fact, FactKind } from '../../db/types/record.ts';
import type { Unstamped } from '../contract/request.ts';
import { Refusal } from '../contract/envelope.ts';
import type { Services } from './services.ts';

/** The plain case: store the fact as it came, stamped with time and initials. */
export const saveFact =
  <K extends FactKind>(kind: K) =>
  (services: Services, fact: Unstamped<K>): Fact<K> =>
    services.need().put(kind, fact, services.doing());

/** Nobody who is seen today was seen before this day: an older date is a slip of the keyboard. */
const OLDEST = '1950-01-01';

/** So is a day after tomorrow's midnight somewhere on earth. @throws Refusal date-in-future, date-too-old */
export function refuseFuture(services: Services, date: string | null): void {
  if (date === null) return;
  const latest = new Date(services.options.now().getTime() + 14 * 3_600_000).toISOString().slice(0, 10);
  if (date.slice(0, 10) > latest) throw new Refusal('date-in-future');
  if (date.slice(0, 10) < OLDEST) throw new Refusal('date-too-old');
}
