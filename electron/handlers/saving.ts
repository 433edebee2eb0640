import type { Fact, FactKind } from '../../db/types/record.ts';
import type { Unstamped } from '../contract/request.ts';
import { Refusal } from '../contract/envelope.ts';
import { coSignOf, waitsForCoSign } from '../../renderer/logic/record/co-sign.ts';
import type { Services } from './services.ts';

/**
 * The plain case: store the fact as it came, stamped with time and initials. What an assistant or student adds to a
 * visit makes the visit wait for a co-signature, also where its note was never touched.
 */
export const saveFact =
  <K extends FactKind>(kind: K) =>
  (services: Services, fact: Unstamped<K>): Fact<K> => {
    const doing = services.doing();
    const visitId = 'visitId' in fact && typeof fact.visitId === 'string' ? fact.visitId : null;
    const visit = services.therapist().assistant && visitId ? services.need().get('visit', visitId) : null;
    const judged = visit && coSignOf(visit, visit, { ...doing, assistant: true });
    if (!visit || !judged || 'refused' in judged || waitsForCoSign(visit))
      return services.need().put(kind, fact, doing);
    return services.need().together(doing, (write) => {
      const { at: _at, by: _by, coSign: _before, ...note } = visit;
      write.put('visit', { ...note, ...(judged.coSign && { coSign: judged.coSign }) });
      return write.put(kind, fact);
    });
  };

/** Nobody who is seen today was seen before this day: an older date is a slip of the keyboard. */
const OLDEST = '1950-01-01';

/** So is a day after tomorrow's midnight somewhere on earth. @throws Refusal date-in-future, date-too-old */
export function refuseFuture(services: Services, date: string | null): void {
  if (date === null) return;
  const latest = new Date(services.options.now().getTime() + 14 * 3_600_000).toISOString().slice(0, 10);
  if (date.slice(0, 10) > latest) throw new Refusal('date-in-future');
  if (date.slice(0, 10) < OLDEST) throw new Refusal('date-too-old');
}
