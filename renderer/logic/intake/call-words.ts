import type { RedFlag } from '../../../db/types/items.ts';

/** Whom to call, in words. */
export const callWords: Record<RedFlag['call'], string> = {
  'emergency-number': 'your local emergency number, now.',
  'crisis-service': 'the crisis service or the doctor, together with the client, before the client leaves.',
  'doctor-today': "the client's doctor, today.",
  'referrer-today': 'whoever referred the client, today.',
  neurology: "the client's doctor today, with a request for a neurologist's opinion.",
};
