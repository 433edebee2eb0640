/** The measures for seat and table that count now, as the calculator takes them: for findings, pages and the screen. */
import type { SetupMeasures } from '../../../db/types/intake.ts';
import type { ClientRecord } from '../../../db/types/record.ts';
import type { SetupInput } from '../setup/setup-types.ts';
import { latestAnswers } from './latest-answers.ts';

type Facts = Pick<ClientRecord, 'client' | 'visits' | 'setups' | 'intakeAnswers'>;

/** Of the latest visit that has any, the one saved last; null while nobody has measured. */
export function latestSetUp({ visits, setups }: Pick<ClientRecord, 'visits' | 'setups'>): SetupMeasures | null {
  const dayOf = new Map(visits.map((visit) => [visit.id, visit.date]));
  const key = (setup: SetupMeasures): string => `${dayOf.get(setup.visitId) ?? ''} ${setup.at}`;
  return setups.reduce<SetupMeasures | null>(
    (latest, setup) => (latest === null || key(setup) >= key(latest) ? setup : latest),
    null,
  );
}

/** Measures with what else the calculator has to know: the hand that writes now, and the cautions of the client. */
export function setUpInput(record: Facts, measures: Omit<SetupInput, 'cautions'>): SetupInput {
  const has = (code: string): boolean => record.client.precautions.some((each) => each.code === code);
  const field = latestAnswers(record.intakeAnswers).some(
    ({ item, grade }) => item === 'field' && grade !== null && grade <= 1,
  );
  return {
    ...measures,
    // The record says which hand writes; what was chosen here counts only while it does not.
    hand: record.client.handNow ?? measures.hand,
    cautions: [
      ...(has('hip-precautions') ? (['hip'] as const) : []),
      ...(has('wheelchair') ? (['wheelchair'] as const) : []),
      ...(field ? (['neglect-or-field'] as const) : []),
    ],
  };
}
