import type { Client } from '../../../db/types/client.ts';

/** An empty client: a name and a code are all that is needed to begin. */
export const newClient = (id: string, name: string, code: string): Omit<Client, 'at' | 'by'> => ({
  id,
  code,
  name,
  birthYear: null,
  handBefore: null,
  handNow: null,
  diagnoses: [],
  precautions: [],
  medicines: [],
  referrer: '',
  readers: '',
  wants: '',
  interests: '',
  callName: '',
  callNumber: '',
  language: 'en',
  largePrint: '14',
  familyConsent: false,
  familyConsentOn: null,
  note: '',
  archivedOn: null,
});

/** The next free code of the form C-001, C-002 … */
export function nextCode(codes: readonly string[]): string {
  const used = new Set(codes);
  for (let n = codes.length + 1; ; n++) {
    const code = `C-${String(n).padStart(3, '0')}`;
    if (!used.has(code)) return code;
  }
}
