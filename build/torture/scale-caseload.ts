/** An invented caseload of any size, for the runs that ask whether large ones stay quick. */
import { randomUUID } from 'node:crypto';
import type { Caseload } from '../../db/index.ts';
import { newClient } from '../../renderer/logic/caseload/new-client.ts';
import { visit } from '../../tests/db/plain-facts.ts';
import { NOW } from './children.ts';
import { pick } from './random.ts';

const FIRST = ['Ada', 'Bruno', 'Célia', 'Dorit', 'Emre', 'Fiona', 'Goran', 'Hana', 'Iris', 'Jonas'];
const LAST = ['Abel', 'Brook', 'Cerny', 'Dahl', 'Eder', 'Frost', 'Gallo', 'Hart', 'Ilves', 'Jung'];

export const visitOf = (clientId: string, date: string) => visit(clientId, { date, kind: 'treatment', minutes: 45 });

/** Fills it in steps of 50 clients. Answers the clients' ids. */
export function fillCaseload(caseload: Caseload, clients: number, visitsEach: number, random: () => number): string[] {
  const ids: string[] = [];
  for (let n = 0; n < clients; n += 50) {
    caseload.together({ at: NOW, by: 'TY' }, (write) => {
      for (let m = n; m < Math.min(clients, n + 50); m++) {
        const id = randomUUID();
        ids.push(id);
        const name = `${pick(random, FIRST)} ${pick(random, LAST)}-${pick(random, LAST)}`;
        write.put('client', { ...newClient(id, name, `C${m}`), birthYear: 1950 });
        for (let v = 0; v < visitsEach; v++) {
          const date = new Date(Date.UTC(2025, 0, 1 + Math.floor(random() * 500))).toISOString().slice(0, 10);
          write.put('visit', visitOf(id, date));
        }
      }
    });
  }
  return ids;
}
